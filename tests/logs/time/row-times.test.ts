import { describe, expect, it } from 'vitest';
import { type RowTime, resolveTimes } from '../../../src/logs/time/row-times.ts';
import { zoneOf } from '../../../src/logs/time/zone.ts';

// Clocks of central Europe go back at 03:00 CEST on 26 October 2025 and forward at 02:00 CET on 29 March 2026; those of
// Adelaide (half an hour, southern) back at 03:00 on 5 April 2026: IANA tz database, from memory.
const berlin = zoneOf('Europe/Berlin')!;
const rows = (...times: string[]): RowTime[] =>
  times.map((time, i) => ({
    wall: Date.parse(`${time.replace(' ', 'T')}Z`),
    fraction: '',
    offset: null,
    place: { line: i + 2, column: 1 },
  }));

describe('resolveTimes', () => {
  it('tells the two times round by the step back', () => {
    const times = resolveTimes(
      rows(
        '2025-10-26 01:59:59',
        '2025-10-26 02:00:00',
        '2025-10-26 02:59:59',
        '2025-10-26 02:00:00',
        '2025-10-26 02:59:59',
        '2025-10-26 03:00:00',
      ),
      berlin,
    );
    expect(times.iso.map((time) => time!.slice(11))).toEqual([
      '01:59:59+02:00',
      '02:00:00+02:00',
      '02:59:59+02:00',
      '02:00:00+01:00',
      '02:59:59+01:00',
      '03:00:00+01:00',
    ]);
    expect(times).toMatchObject({ open: [], back: [], impossible: [] });
  });

  it('gives no offset where nothing says which time round it was', () => {
    const times = resolveTimes(
      rows('2025-10-26 01:50:00', '2025-10-26 02:10:00', '2025-10-26 02:40:00', '2025-10-26 03:10:00'),
      berlin,
    );
    expect(times.iso.map((time) => time!.slice(11))).toEqual([
      '01:50:00+02:00',
      '02:10:00',
      '02:40:00',
      '03:10:00+01:00',
    ]);
    expect(times.open).toHaveLength(2);
  });

  it('orders 3,600 doubled stamps at one a second', () => {
    const second = (from: string, i: number) =>
      new Date(Date.parse(`${from}Z`) + i * 1000).toISOString().slice(0, 19);
    const hour = Array.from({ length: 3600 }, (_, i) => second('2025-10-26T02:00:00', i));
    const { iso } = resolveTimes(rows(...hour, ...hour), berlin);
    const instants = iso.map((time) => Date.parse(time!));
    expect(instants.every((instant, i) => i === 0 || instant === instants[i - 1]! + 1000)).toBe(true);
  });

  it('finds the hour that spring leaves out, and no gap over it', () => {
    const times = resolveTimes(
      rows('2026-03-29 01:59:59', '2026-03-29 03:00:00', '2026-03-29 02:30:00'),
      berlin,
    );
    expect(Date.parse(times.iso[1]!) - Date.parse(times.iso[0]!)).toBe(1000);
    expect(times.impossible.map(({ place }) => place.line)).toEqual([4]);
  });

  it('knows half hours and the southern autumn', () => {
    const { iso } = resolveTimes(
      rows('2026-04-05 02:45:00', '2026-04-05 02:15:00'),
      zoneOf('Australia/Adelaide')!,
    );
    expect(iso).toEqual(['2026-04-05T02:45:00+10:30', '2026-04-05T02:15:00+09:30']);
  });

  it('says where the clock goes back for no reason', () => {
    const times = resolveTimes(rows('2026-03-09 08:06:00', '1980-01-01 00:00:00'), berlin);
    expect(times.back.map(({ place }) => place.line)).toEqual([3]);
  });
});

describe('zoneOf', () => {
  it.each(['Europe/Nowhere', '+1', 'CEST', ''])('knows no %s', (name) => {
    // CEST is an abbreviation that several zones share.
    expect(zoneOf(name)).toBeNull();
  });
});
