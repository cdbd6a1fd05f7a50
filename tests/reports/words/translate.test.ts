import { describe, expect, it } from 'vitest';
import { translator } from '../../../src/reports/words/translate.ts';

const say = translator(
  [
    ['it holds', 'es gilt'],
    ['{} of {} are out', '{1} von {2~} fehlen'],
    ['{}: {}', '{1}: {2}'],
  ],
  (gap, isDative) => (isDative ? `${gap}n` : gap),
);

describe('translator', () => {
  it('fills the gaps, in any order and with the case that the template asks for', () => {
    expect(say('It holds.')).toBe('es gilt.');
    expect(say('1 of 3 are out')).toBe('1 von 3n fehlen');
    expect(say('a: b: c')).toBe('a: b: c');
  });

  it('says nothing where no template fits or a gap is empty', () => {
    expect(say('it held')).toBeNull();
    expect(say(' of 3 are out')).toBeNull();
    expect(say('')).toBeNull();
  });

  it('passes over long texts, and takes no time over texts made to be slow', () => {
    expect(say(`${'a'.repeat(2000)}: b`)).toBeNull();
    const start = performance.now();
    for (let i = 0; i < 200; i += 1) say(`${' of '.repeat(370)}x`);
    expect(performance.now() - start).toBeLessThan(1000);
  });
});
