import { expect, it } from 'vitest';
import { instantOf } from '../../src/logs/instant.ts';

// 1970-01-01T00:00:00Z is 0 by definition; the others are counted from it by days of 86,400,000 ms.
it.each([
  ['1970-01-01T00:00:00Z', 0],
  ['1970-01-02T00:00:00.5+00:00', 86_400_500],
  ['1970-01-01T01:30+01:30', 0],
  ['1970-01-01 00:00:00-0100', 3_600_000],
  ['1972-03-01T00:00:00Z', 790 * 86_400_000],
])('%s is %d ms', (text, instant) => {
  expect(instantOf(text)).toBe(instant);
});

it.each([
  '2026-03-01T08:00:00',
  '2026-02-30T08:00:00Z',
  '2026-13-01T08:00:00Z',
  '2026-03-01T24:00:00Z',
  '2026-03-01T08:60:00Z',
  '03/04/2026 08:00Z',
  '2026-03-01T08:00:00+25:00',
  '08:00',
  '',
])('%s is none', (text) => {
  expect(instantOf(text)).toBeNull();
});
