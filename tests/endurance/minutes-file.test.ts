import { appendFileSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { describe, expect, it } from 'vitest';
import { drumDeviations } from '../../src/endurance/deviations.ts';
import { passDrumLogs } from '../../src/endurance/drum-pass.ts';
import { inlineRunner } from '../../src/endurance/part-runner.ts';
import { reduceMinute } from '../../src/endurance/reduction.ts';
import { summarise } from '../../src/endurance/summary.ts';
import { logFolder } from '../logs/samples/log-files.ts';
import { block, HEADER, lineOf, randomRows } from './drum-log.ts';

const folder = logFolder();
const SCHEDULE = [
  block('run-in', {
    distance: 8,
    speed: '30 km/h ± 2 %',
    load: '650 N ± 2 %',
    pressure: '2.5 bar ± 0.05 bar',
  }),
  block('main', { distance: 100, speed: '30 km/h ± 3 %', load: '650 N ± 2 %' }),
];
const text = (seed: number, count = 4000) => [HEADER, ...randomRows(seed, count).map(lineOf), ''].join('\n');

/** A pass over logs whose minutes are kept, and how many parts were read from the logs themselves. */
async function pass(paths: readonly string[], { isKept = true, sampling = 1, partBytes = 5000 } = {}) {
  const inline = inlineRunner();
  let parts = 0;
  const minutes: unknown[] = [];
  const passed = await passDrumLogs(
    paths.map((path) => ({ path, profile: null, beside: path })),
    {
      schedule: SCHEDULE,
      sampling,
      partBytes,
      onFrame: (frame, plan) => minutes.push(reduceMinute(frame, plan)),
      runner: {
        ...inline,
        fold: (task) => {
          parts += 1;
          return inline.fold(task);
        },
      },
      ...(isKept ? { minutes: () => () => {} } : {}),
    },
  );
  const summary = summarise(passed);
  const result = JSON.stringify([summary, drumDeviations(passed, summary), passed.logs, minutes]);
  return { result, parts, minutes, logs: passed.logs };
}

const kept = (path: string) => readdirSync(dirname(path)).filter((name) => name.endsWith('.minutes.jsonl'));

describe('minutes beside a log', () => {
  it('give the same bytes as the log, and the log is read no more', async () => {
    const path = folder.write('a.csv', text(1));
    const plain = await pass([path], { isKept: false });
    const first = await pass([path]);
    const second = await pass([path]);
    expect(first.parts).toBeGreaterThan(30);
    expect(second.parts).toBe(0);
    expect([first.result, second.result]).toEqual([plain.result, plain.result]);
    // Also cut otherwise: what is kept are whole minutes.
    const name = kept(path).find((file) => file.startsWith(first.logs[0]!.sha256))!;
    const before = readFileSync(`${dirname(path)}/${name}`, 'utf8');
    writeFileSync(`${dirname(path)}/${name}`, '');
    await pass([path], { partBytes: 77_777 });
    expect(readFileSync(`${dirname(path)}/${name}`, 'utf8') === before).toBe(true);
  });

  it('are named by the SHA-256 of the log, and hold n, mean, extremes, deviation, first and last of a channel', async () => {
    const rows = [
      '2026-03-02T06:00:00Z,30,650,2.5,0.00,run',
      '2026-03-02T06:00:20Z,31,,2.5,0.1,run',
      '2026-03-02T06:00:40Z,32,656,2.5,0.2,run',
    ];
    const path = folder.write('b.csv', [HEADER, ...rows, ''].join('\n'));
    const { logs } = await pass([path], { sampling: 0.05 });
    const name = kept(path).find((file) => file.startsWith(logs[0]!.sha256))!;
    expect(name).toBe(`${logs[0]!.sha256}.minutes.jsonl`);
    const lines = readFileSync(`${dirname(path)}/${name}`, 'utf8')
      .trimEnd()
      .split('\n');
    expect(lines).toHaveLength(3);
    expect(JSON.parse(lines[0]!)).toMatchObject({
      channels: ['speed', 'load', 'pressure'],
      columns: ['n', 'missing', 'mean', 'min', 'max', 'sd', 'first', 'last'],
    });
    // By hand: 30, 31, 32 have the mean 31 and the deviation 1; 650 and 656 the mean 653, the deviation √18.
    const { time, rows: count, channels } = JSON.parse(lines[1]!);
    expect([time, count]).toEqual([Date.UTC(2026, 2, 2, 6), 3]);
    expect(channels[0]).toEqual([3, 0, 31, 30, 32, 1, 30, 32]);
    expect(channels[1].slice(0, 5)).toEqual([2, 1, 653, 650, 656]);
    expect(channels[1][5]).toBeCloseTo(Math.sqrt(18), 9);
  });

  it('are never used for another log, protocol or interval, nor when they were cut or changed', async () => {
    const path = folder.write('c.csv', text(2));
    const { logs } = await pass([path]);
    const file = `${dirname(path)}/${logs[0]!.sha256}.minutes.jsonl`;
    expect((await pass([path], { sampling: 2 })).parts).toBeGreaterThan(0);
    await pass([path]);
    const whole = readFileSync(file, 'utf8');
    for (const spoilt of [
      whole.slice(0, -20),
      whole.replace('"rows":', '"rows": '),
      whole.split('\n').slice(1).join('\n'),
      '',
    ]) {
      writeFileSync(file, spoilt);
      expect((await pass([path])).parts).toBeGreaterThan(0);
      expect(readFileSync(file, 'utf8') === whole).toBe(true);
    }
    appendFileSync(path, '2026-12-01T00:00:00Z,30,650,2.5,9999,run\n');
    const grown = await pass([path]);
    expect(grown.parts).toBeGreaterThan(0);
    expect(grown.result).toBe((await pass([path], { isKept: false })).result);
  });

  it('of the pieces of a log add up to the whole, whoever read which', async () => {
    const [header, ...rows] = text(3, 3000).trimEnd().split('\n');
    const pieces = [0, 701, 702, 2000].map((from, i, all) =>
      folder.write(`piece-${i}.csv`, [header, ...rows.slice(from, all[i + 1] ?? rows.length), ''].join('\n')),
    );
    const first = await pass(pieces, { isKept: false });
    await pass([pieces[1]!]);
    await pass([pieces[3]!]);
    const merged = await pass(pieces);
    expect(merged.result).toBe(first.result);
    expect((await pass(pieces)).parts).toBe(0);
  });

  it('are not written of a log that is wrong, and leave nothing half done', async () => {
    const path = folder.write('d.csv', `${text(4, 50)}2026-12-01T00:00:00Z,fast,650,2.5,1,run\n`);
    const before = readdirSync(dirname(path));
    await expect(pass([path])).rejects.toThrow('fast');
    expect(readdirSync(dirname(path))).toEqual(before);
  });
});
