import { describe, expect, it } from 'vitest';
import { drumDeviations } from '../../src/endurance/deviations.ts';
import { type DrumPassOptions, passDrumLogs } from '../../src/endurance/drum-pass.ts';
import type { Frame } from '../../src/endurance/frame.ts';
import { threadRunner } from '../../src/endurance/part-runner.ts';
import { type Minute, reduceMinute } from '../../src/endurance/reduction.ts';
import { summarise } from '../../src/endurance/summary.ts';
import { PLAIN_SAMPLES } from '../../src/logs/samples/dialect.ts';
import { logFolder } from '../logs/samples/log-files.ts';
import { block, HEADER, lineOf, type PlainRow, randomRows, seeded } from './drum-log.ts';
import { referencePass } from './reference-pass.ts';

const folder = logFolder();
const SCHEDULE = [
  block('run-in', {
    distance: 1.5,
    speed: '30 km/h ± 3 %',
    load: '650 N ± 1 %',
    pressure: '2.5 bar ± 0.04 bar',
  }),
  block('middle', { distance: 2.345, speed: '30 km/h ± 1 %', load: '650 N ± 2 %' }),
  block('main', { distance: 100, speed: '30 km/h ± 2 %', load: '655 N ± 8 N', pressure: '2.52 bar ± 2 %' }),
];

const textOf = (rows: readonly PlainRow[]): string => [HEADER, ...rows.map(lineOf), ''].join('\n');

async function pass(paths: readonly string[], options: Partial<DrumPassOptions> = {}) {
  const frames: Frame[] = [];
  const found = await passDrumLogs(paths, {
    dialect: PLAIN_SAMPLES,
    schedule: SCHEDULE,
    sampling: 1,
    onFrame: (frame) => frames.push(structuredClone({ ...frame, events: null })),
    ...options,
  });
  const summary = summarise(found);
  const minutes = frames.map((frame): Minute => reduceMinute(frame, found.plan));
  return { found, summary, minutes, deviations: drumDeviations(found, summary) };
}

/** All of a result that no cut may change, as bytes. */
const said = ({ summary, minutes, deviations }: Awaited<ReturnType<typeof pass>>): string =>
  JSON.stringify({ summary, minutes, deviations });

describe('passDrumLogs agrees with the plain reference', () => {
  it.each(Array.from({ length: 40 }, (_, seed) => seed + 1))('on random log %i', async (seed) => {
    const rows = randomRows(seed, 1200);
    const path = folder.write(`random-${seed}.csv`, textOf(rows));
    const { found, minutes, summary } = await pass([path]);
    const expected = referencePass(rows, SCHEDULE);
    const kinds = Object.fromEntries(
      [...found.ledger.events.byKind].map(([kind, { count }]) => [kind, count]),
    );
    expect(kinds).toEqual(expected.kinds);
    for (const [b, sums] of expected.blocks.entries()) {
      const got = found.ledger.blocks[b]!;
      expect(got.rows).toBe(sums.rows);
      expect(got.atCondition / 1000).toBeCloseTo(sums.atCondition, 2);
      expect(got.excluded / 1000).toBeCloseTo(sums.excluded, 2);
      expect(got.unverified / 1000).toBeCloseTo(sums.unverified, 2);
      for (const [c, name] of ['speed', 'load', 'pressure'].entries()) {
        expect(got.channels[c]!.within, `${name} ${b}`).toBe(sums.within[name]);
        expect(got.channels[c]!.outside).toBe(sums.outside[name]);
      }
    }
    const { logged, atCondition, excluded, unverified } = summary.distance;
    expect(logged).toBeCloseTo(atCondition + excluded + unverified, 9);
    expect(minutes.length).toBe(expected.minutes.length);
    for (const [i, minute] of expected.minutes.entries()) {
      expect(minutes[i]).toMatchObject({ time: minute.time, state: minute.state, rows: minute.rows });
      for (const [c, channel] of minute.channels.entries()) {
        const got = minutes[i]!.channels[c]!;
        expect([got.n, got.missing]).toEqual([channel.n, channel.missing]);
        if (channel.n === 0) continue;
        for (const key of ['mean', 'min', 'max', 'first', 'last'] as const)
          expect(got[key]).toBeCloseTo(channel[key], 9);
        if (channel.sd === null) expect(got.sd).toBeNull();
        else expect(got.sd).toBeCloseTo(channel.sd, 9);
      }
    }
  });
});

describe('passDrumLogs gives the same bytes', () => {
  const rows = randomRows(77, 3000);
  const text = textOf(rows);
  const path = folder.write('whole.csv', text);

  it('wherever the file is cut into parts, also within a row', async () => {
    const whole = said(await pass([path]));
    const random = seeded(5);
    for (let i = 0; i < 25; i++) {
      const partBytes = 60 + Math.floor(random() ** 3 * 50_000);
      expect(said(await pass([path], { partBytes })), `parts of ${partBytes} bytes`).toBe(whole);
    }
  });

  it('on threads, whatever their number', async () => {
    const whole = said(await pass([path]));
    const entry = new URL('../../dist/drum-worker.js', import.meta.url);
    for (const count of [1, 2, 3]) {
      const runner = threadRunner(entry, count);
      try {
        const threaded = await pass([path], { runner, partBytes: 7001 });
        expect(said(threaded)).toBe(whole);
        expect(threaded.found.logs[0]!.sha256).toMatch(/^[0-9a-f]{64}$/u);
      } finally {
        await runner.close();
      }
    }
  });

  it('from pieces of the log as files of their own, each under its header', async () => {
    const steady = rows.filter(
      (row, i) => i === 0 || row.time > Math.max(...rows.slice(0, i).map(({ time }) => time)),
    );
    const whole = await pass([folder.write('steady.csv', textOf(steady))]);
    const random = seeded(6);
    for (let i = 0; i < 8; i++) {
      const cuts = Array.from({ length: 1 + i }, () => 1 + Math.floor(random() * (steady.length - 1))).sort(
        (a, b) => a - b,
      );
      const borders = [...new Set([0, ...cuts, steady.length])];
      const pieces = borders.slice(1).map((end, k) => {
        const piece = steady.slice(borders[k], end);
        return folder.write(`piece-${i}-${k}.csv`, textOf(piece));
      });
      // Given back to front: logs of one test are ordered by their times.
      const cut = await pass(pieces.toReversed());
      expect(JSON.stringify([cut.summary, cut.minutes])).toBe(JSON.stringify([whole.summary, whole.minutes]));
      const bare = (list: typeof cut.deviations) =>
        list.map(({ code, severity, count }) => [code, severity, count]);
      expect(bare(cut.deviations)).toEqual(bare(whole.deviations));
    }
  });
});
