import { describe, expect, it } from 'vitest';
import { readNumber } from '../../src/logs/number.ts';

describe('readNumber', () => {
  it.each([
    ['0', 0],
    ['-1.50', -1.5],
    ['+2', 2],
    ['.5', 0.5],
    ['5.', 5],
    ['1e3', 1000],
    ['2.5E-2', 0.025],
    ['007', 7],
  ])('reads %s', (text, value) => {
    expect(readNumber(text, '.')).toBe(value);
  });

  it.each([
    'NaN',
    'Infinity',
    '-inf',
    '1e999',
    '0x10',
    '1_000',
    '12,5',
    '1,250.5',
    '1 250',
    "1'250",
    '--',
    '1.2.3',
    '٣',
    '½',
    '5 mm',
    '#DIV/0!',
    '1e',
  ])('refuses %s', (text) => {
    expect(readNumber(text, '.')).toHaveProperty('wrong');
  });

  it('reads one decimal mark only', () => {
    expect(readNumber('12,5', ',')).toBe(12.5);
    expect(readNumber('12.5', ',')).toHaveProperty('wrong');
  });
});
