import { describe, expect, it } from 'vitest';
import { nightEntries, signEntries, stripEntries } from '../../src/endurance/course-entries.ts';
import { passDrumLogs } from '../../src/endurance/drum-pass.ts';
import { zoneOf } from '../../src/logs/time/zone.ts';
import { logFolder } from '../logs/samples/log-files.ts';
import { block } from './drum-log.ts';

// Invented: a row every ten seconds, 100 m each at 36 km/h. What a sign is: rules.ts (common practice, no source).
const folder = logFolder();
const SCHEDULE = [
  block('main', {
    distance: 1000,
    speed: '36 km/h ± 2 %',
    load: '650 N ± 2 %',
    pressure: '2.5 bar ± 0.1 bar',
  }),
];
/** 12:00 by the clock of Berlin. */
const NOON = Date.UTC(2026, 2, 2, 11);
const HOUR = 360;

interface Row {
  speed: number;
  load: number;
  pressure: number;
  temperature: number;
  height: number;
  vibration: number;
  state: string;
}
const STEADY: Row = {
  speed: 36,
  load: 650,
  pressure: 2.5,
  temperature: 40,
  height: 310,
  vibration: 4,
  state: 'run',
};

async function pass(hours: number, change: (i: number) => Partial<Row>) {
  const header =
    'time,speed [km/h],load [N],pressure [bar],tyre temperature [°C],axle height [mm],vibration [m/s2],distance [km],state';
  let metres = 0;
  const rows = Array.from({ length: hours * HOUR }, (_, i) => {
    const row = { ...STEADY, ...change(i) };
    if (i > 0 && row.speed > 0) metres += 100;
    const time = new Date(NOON + i * 10_000).toISOString();
    const { speed, load, pressure, temperature, height, vibration, state } = row;
    return [
      time,
      speed,
      load,
      pressure.toFixed(4),
      temperature,
      height,
      vibration,
      metres / 1000,
      state,
    ].join();
  });
  const path = folder.write('course.csv', [header, ...rows, ''].join('\n'));
  return passDrumLogs([path], { schedule: SCHEDULE, sampling: 0.1, zone: zoneOf('Europe/Berlin') });
}

const signs = async (hours: number, change: (i: number) => Partial<Row>) => {
  const { count, listed } = signEntries(await pass(hours, change));
  expect(count).toBe(listed.length);
  return listed.map(({ sign, line, distance }) => [sign, line, distance]);
};

describe('signs of failure', () => {
  it('are none in a steady log, nor where a cold tyre warms up, nor where a block begins', async () => {
    expect(await signs(2, (i) => ({ temperature: Math.min(45, 22 + i / 8) }))).toEqual([]);
  });

  it('are told once each, with the minute in which they begin and the kilometres up to it', async () => {
    // Row i stands on line i + 2; two hours in is row 720, 72 km, at the begin of a minute.
    expect(await signs(3, (i) => (i >= 720 ? { load: 560 } : {}))).toEqual([['load jumps', 722, 71.9]]);
    expect(await signs(3, (i) => (i >= 720 ? { height: 305 } : {}))).toEqual([
      ['axle height jumps', 722, 71.9],
    ]);
    expect(await signs(3, (i) => (i >= 720 ? { vibration: 9 } : {}))).toEqual([
      ['vibration rises', 722, 71.9],
    ]);
    expect(await signs(3, (i) => (i >= 720 ? { temperature: 52 } : {}))).toEqual([
      ['temperature rises', 722, 71.9],
    ]);
    // 2.5 bar that loses a tenth of a bar an hour is slow; three a quarter of an hour is not.
    expect(await signs(3, (i) => ({ pressure: 2.5 - i / 3600 }))).toEqual([]);
    const [leak] = await signs(3, (i) => ({ pressure: 2.5 - Math.max(0, i - 720) / 300 }));
    expect(leak![0]).toBe('pressure falls');
    expect(leak![1]).toBeGreaterThanOrEqual(722);
    expect(leak![1]).toBeLessThanOrEqual(722 + 18);
  });

  it('are not told of a stop, behind which the levels begin anew', async () => {
    expect(
      await signs(3, (i) =>
        i >= 720 && i < 760 ? { speed: 0, height: 320 } : i >= 760 ? { height: 305 } : {},
      ),
    ).toEqual([]);
  });
});

describe('strips', () => {
  it('show where a channel lay, with what was outside before what was within', async () => {
    const strips = stripEntries(
      await pass(1, (i) =>
        i >= 60 && i < 66
          ? { load: 690 }
          : i >= 120 && i < 180
            ? { speed: 0 }
            : i === 200
              ? { pressure: 2.3 }
              : {},
      ),
    );
    const cells = (name: string) => strips.find(({ channel }) => channel === name)!.cells;
    expect(cells('load')).toHaveLength(60);
    expect(cells('load')[10]).toBe('above');
    expect(cells('load')[9]).toBe('within');
    // Rows 120 to 179 are minutes 20 to 29.
    expect(cells('load').slice(19, 31)).toEqual(['within', ...Array(10).fill('standing'), 'within']);
    expect(cells('pressure')[33]).toBe('below');
    expect(strips.find(({ channel }) => channel === 'load')).toMatchObject({
      limits: ['650 N ± 2 %'],
      outside: 0.6,
      max: 690,
    });
  });

  it('keep to 64 cells whatever the length, and forget nothing that was outside', async () => {
    const strips = stripEntries(await pass(70, (i) => (i === 12_345 ? { load: 690 } : {})));
    const { cells, minutesPerCell } = strips.find(({ channel }) => channel === 'load')!;
    // 4,200 minutes in cells of 128.
    expect([cells.length, minutesPerCell]).toEqual([33, 128]);
    expect(cells.map((state, i) => (state === 'within' ? -1 : i)).filter((i) => i >= 0)).toEqual([
      Math.floor(12_345 / 6 / 128),
    ]);
  });
});

describe('nights', () => {
  it('are from 22 to 6 h by the clock of the laboratory, with what began in them', async () => {
    // From noon for 42 hours: the nights of 2 and 3 March. 23:00 is 11 h in, row 3,960.
    const nights = nightEntries(
      await pass(42, (i) =>
        i >= 3960 && i < 4320
          ? { speed: 0, state: 'trip' }
          : i >= 1800 && i < 1900
            ? { load: 690 }
            : i === 5040 || i === 5100
              ? { load: 690 }
              : {},
      ),
    );
    expect(nights.map(({ day }) => day)).toEqual(['2026-03-02', '2026-03-03']);
    expect(nights[0]!.stood).toBe(3600);
    // Eight hours at 36 km/h less the hour that the drum stood.
    expect(nights[0]!.distance).toBeCloseTo(7 * 36, 6);
    expect(nights[0]!.alarms).toMatchObject([
      { what: 'the drum stood', count: 1, clock: '23:00', line: 3962 },
      { what: 'load above its limits', count: 2, clock: '02:00', line: 5042 },
    ]);
    expect(nights[1]).toMatchObject({ alarms: [], stood: 0 });
    expect(nights[1]!.distance).toBeCloseTo(8 * 36, 6);
  });
});
