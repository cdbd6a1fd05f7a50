import { describe, expect, it } from 'vitest';
import { nightsBetween } from '../../src/endurance/nights.ts';
import { zoneOf } from '../../src/logs/time/zone.ts';

const at = (text: string) => new Date(text).getTime();
const written = (nights: readonly { from: number; to: number }[]) =>
  nights.map(({ from, to }) => [from, to].map((time) => new Date(time).toISOString().slice(0, 16)));

describe('nightsBetween', () => {
  it('gives 22 to 6 h of a fixed offset, cut at the ends of the log', () => {
    const nights = nightsBetween(at('2026-03-02T23:00Z'), at('2026-03-04T00:00Z'), zoneOf('+01:00')!);
    expect(written(nights)).toEqual([
      ['2026-03-02T23:00', '2026-03-03T05:00'],
      ['2026-03-03T21:00', '2026-03-04T00:00'],
    ]);
  });

  // In the last night of March the clocks of that zone go from 2 to 3 h: common knowledge, IANA time zone database.
  it('is an hour shorter where the clocks are put forward', () => {
    const nights = nightsBetween(at('2026-03-28T12:00Z'), at('2026-03-29T12:00Z'), zoneOf('Europe/Berlin')!);
    expect(written(nights)).toEqual([['2026-03-28T21:00', '2026-03-29T04:00']]);
  });

  it('has none by day', () => {
    expect(nightsBetween(at('2026-03-02T08:00Z'), at('2026-03-02T20:00Z'), zoneOf('Z')!)).toEqual([]);
  });
});
