import { describe, expect, it } from 'vitest';
import { drumDeviations } from '../../src/endurance/deviations.ts';
import { passDrumLogs } from '../../src/endurance/drum-pass.ts';
import { summarise } from '../../src/endurance/summary.ts';
import { PLAIN_SAMPLES } from '../../src/logs/samples/dialect.ts';
import { logFolder } from '../logs/samples/log-files.ts';
import { block, HEADER, lineOf, type PlainRow, seeded } from './drum-log.ts';

const folder = logFolder();
const SCHEDULE = [
  block('main', {
    distance: 100,
    speed: '36 km/h ± 2 %',
    load: '650 N ± 2 %',
    pressure: '2.5 bar ± 0.1 bar',
  }),
];
const START = Date.UTC(2026, 2, 2, 5, 0, 0);

/** An hour at 36 km/h, which is 10 m a second, with a little noise: nothing to report. Invented. */
function steady(count = 3600): PlainRow[] {
  const random = seeded(9);
  return Array.from({ length: count }, (_, i) => ({
    time: START + i * 1000,
    speed: 36 + Math.round((random() - 0.5) * 20) / 100,
    load: 650 + Math.round((random() - 0.5) * 20) / 10,
    pressure: 2.5 + Math.round((random() - 0.5) * 10) / 100,
    distance: i / 100,
    state: 'run',
  }));
}

/** Rows from place `from` on, changed. */
const from = (rows: PlainRow[], at: number, change: (row: PlainRow) => Partial<PlainRow>): PlainRow[] =>
  rows.map((row, i) => (i >= at ? { ...row, ...change(row) } : row));

const between = (
  rows: PlainRow[],
  at: number,
  to: number,
  change: (row: PlainRow) => Partial<PlainRow>,
): PlainRow[] => rows.map((row, i) => (i >= at && i < to ? { ...row, ...change(row) } : row));

async function deviations(rows: readonly PlainRow[]) {
  const path = folder.write('log.csv', [HEADER, ...rows.map(lineOf), ''].join('\n'));
  const pass = await passDrumLogs([path], { dialect: PLAIN_SAMPLES, schedule: SCHEDULE, sampling: 1 });
  const summary = summarise(pass);
  const listed = drumDeviations(pass, summary).map(({ code, line, severity, message }) => ({
    code,
    line,
    severity,
    message,
  }));
  return { listed, codes: listed.map(({ code, line }) => [code, line]), ...summary.distance };
}

// Rows count from 0, lines from 1 with the header: row i stands on line i + 2.
describe('drumDeviations', () => {
  it('finds nothing where nothing is', async () => {
    const { codes, logged, atCondition } = await deviations(steady());
    expect(codes).toEqual([]);
    // 3,599 steps of 10 m.
    expect([logged, atCondition]).toEqual([35.99, 35.99]);
  });

  it('DRUM-01 and DRUM-02: stretches outside the limits, and their kilometres', async () => {
    const rows = between(
      between(steady(), 100, 130, (row) => ({ speed: row.speed! + 1 })),
      1000,
      1100,
      () => ({ load: 600 }),
    );
    const { codes, excluded, listed } = await deviations(rows);
    expect(codes).toEqual([
      ['DRUM-01', 102],
      ['DRUM-02', 1002],
    ]);
    expect(excluded).toBeCloseTo(0.3 + 1.0, 9);
    expect(listed[0]!.message).toContain(
      'speed above its limits (36 km/h ± 2 %) in 30 rows (lines 102 to 131), 30 s, 0.300 km',
    );
  });

  it('DRUM-01: what lies on the limit is within', async () => {
    expect(
      (await deviations(between(steady(), 100, 120, () => ({ speed: 36.72, load: 637 })))).codes,
    ).toEqual([]);
  });

  it('DRUM-03: the arm lifted while the drum turns', async () => {
    const { codes } = await deviations(between(steady(), 60, 80, () => ({ load: 3 })));
    expect(codes).toEqual([
      ['DRUM-02', 62],
      ['DRUM-03', 62],
    ]);
  });

  it('DRUM-04: kilometres counted in standing, in 600 rows of 10 m less the first, which the drum ran up to', async () => {
    const { codes, listed, excluded, logged } = await deviations(
      between(steady(), 600, 1200, () => ({ speed: 0 })),
    );
    expect(codes).toEqual([
      ['DRUM-04', 603],
      ['DRUM-04', 602],
    ]);
    expect(listed.map(({ severity }) => severity)).toEqual(['minor', 'note']);
    // The first row of the stop answers for 10 m at a speed outside the limits.
    expect(excluded).toBeCloseTo(6, 9);
    expect(logged).toBeCloseTo(35.99, 9);
  });

  it('DRUM-05: a counter 1 % fast is told, one 3 % fast condemns', async () => {
    const fast = (share: number) =>
      deviations(from(steady(), 0, (row) => ({ distance: row.distance! * share })));
    expect((await fast(1.003)).codes).toEqual([]);
    expect((await fast(1.01)).listed).toMatchObject([{ code: 'DRUM-05', severity: 'minor' }]);
    expect((await fast(1.03)).listed).toMatchObject([{ code: 'DRUM-05', severity: 'invalidating' }]);
  });

  it('DRUM-05: a counter that jumps, falls, or runs over', async () => {
    const shifted = (by: number) => from(steady(), 1800, (row) => ({ distance: row.distance! + by }));
    const jumped = await deviations(shifted(500));
    expect(jumped.codes).toEqual([['DRUM-05', 1802]]);
    expect(jumped.logged).toBeCloseTo(35.99, 2);
    const fell = await deviations(shifted(-18));
    expect(fell.listed).toMatchObject([{ code: 'DRUM-05', line: 1802, severity: 'minor' }]);
    expect(fell.logged).toBeCloseTo(35.99, 2);
    const over = await deviations(
      steady().map((row) => ({ ...row, distance: (row.distance! + 985) % 1000 })),
    );
    expect(over.listed).toMatchObject([{ code: 'DRUM-05', line: 1502, severity: 'note' }]);
    expect(over.logged).toBeCloseTo(35.99, 9);
  });

  it('DRUM-10 and DRUM-12: pressure below and above', async () => {
    const rows = between(
      between(steady(), 10, 20, () => ({ pressure: 2.3 })),
      500,
      520,
      () => ({ pressure: 2.61 }),
    );
    expect((await deviations(rows)).codes).toEqual([
      ['DRUM-10', 12],
      ['DRUM-12', 502],
    ]);
  });

  it('DRUM-11: a sensor that freezes for more than ten minutes while it moved before, and one that dies', async () => {
    expect((await deviations(between(steady(), 600, 1100, () => ({ load: 650.3 })))).codes).toEqual([]);
    const frozen = await deviations(between(steady(), 600, 1300, () => ({ load: 650.3 })));
    expect(frozen.codes).toEqual([['DRUM-11', 602]]);
    expect(frozen.listed[0]!.message).toContain('load stood at 650.3 to the last digit for 11');
    const dead = await deviations(from(steady(), 1800, () => ({ pressure: null })));
    expect(dead.codes).toEqual([['DRUM-11', 1802]]);
    expect(dead.unverified).toBeCloseTo(18, 9);
  });

  it('DRUM-17 and DRUM-18: standing for more than an hour, under load', async () => {
    const stand = steady(3 * 3600).map((row, i) => {
      const stood = Math.min(Math.max(i - 1800, 0), 4000);
      return { ...row, distance: (i - stood) / 100, ...(i > 1800 && i <= 5800 ? { speed: 0 } : {}) };
    });
    const { codes } = await deviations(stand);
    expect(codes.map(([code]) => code)).toEqual(['DRUM-17', 'DRUM-18']);
  });

  it('DRUM-19: a gap in which the drum ran on, and 20: one across which the counter began anew', async () => {
    const steps = steady().filter((_, i) => i < 1000 || i >= 1100);
    const { listed, unverified } = await deviations(steps);
    expect(listed).toMatchObject([{ code: 'DRUM-19', line: 1002, severity: 'minor' }]);
    // From row 999 to row 1100.
    expect(unverified).toBeCloseTo(1.01, 9);
    const long = await deviations(steady().filter((_, i) => i < 1000 || i >= 1300));
    expect(long.listed).toMatchObject([{ code: 'DRUM-19', severity: 'invalidating' }]);
    const anew = await deviations(from(steps, 1000, (row) => ({ distance: row.distance! - 11 })));
    expect(anew.codes).toEqual([['DRUM-20', 1002]]);
  });

  it('DRUM-21: the hour that comes twice, and a clock set ahead, are no gap in running', async () => {
    for (const by of [-3600, 3600]) {
      const { codes, logged, unverified } = await deviations(
        from(steady(), 2000, (row) => ({ time: row.time + by * 1000 })),
      );
      expect(codes).toEqual([['DRUM-21', 2002]]);
      expect([logged, unverified]).toEqual([35.99, 0]);
    }
  });

  it('DRUM-45: rows that are written again after a restart count once', async () => {
    const rows = steady();
    const { codes, logged } = await deviations([...rows.slice(0, 2000), ...rows.slice(1900)]);
    expect(codes).toEqual([['DRUM-45', 2002]]);
    expect(logged).toBeCloseTo(35.99, 9);
  });

  it('sums up what comes more than twenty times', async () => {
    const rows = steady().map((row, i) => (i % 120 === 60 ? { ...row, speed: 39 + i / 1000 } : row));
    const { listed } = await deviations(rows);
    expect(listed.length).toBe(21);
    expect(listed[20]!.message).toContain('10 more of this kind');
    expect(listed[20]!.message).toContain('in all 30: 30 rows');
  });
});
