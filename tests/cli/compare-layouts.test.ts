import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { randomStream } from '../../src/statistics/random/random-stream.ts';
import { tirelab } from './command.ts';
import { dropLog, type InventedDrop, inventedRun } from './invented-runs.ts';

// Layouts of several samples: what is compared with what. Invented data; the statistics are held to R elsewhere.
const folder = mkdtempSync(join(tmpdir(), 'tirelab-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const UP_AND_DOWN = ['method: up-and-down', 'failure: cut', 'mass: 8 kg', 'start: 500 mm', 'step: 25 mm'];

/** An up-and-down series on tyres of normal strength (mm), a fresh tyre a drop. */
function series(
  name: string,
  median: number,
  seed: number,
  more: Partial<InventedDrop> = {},
  drops = 30,
): InventedDrop[] {
  const stream = randomStream(seed, 1);
  let height = 500;
  return Array.from({ length: drops }, (_, i) => {
    const failed = median + 30 * stream.normal() <= height;
    const drop = { specimen: `${name}-${i}`, height, failed, ...more };
    height += failed ? -25 : 25;
    return drop;
  });
}

let count = 0;
const fresh = () => join(folder, String(count++));
const run = (id: string, drops: readonly InventedDrop[], more: object = {}, into = fresh()) =>
  inventedRun(into, { id, protocol: UP_AND_DOWN, log: dropLog(drops), ...more });
const register = (rows: readonly (readonly string[])[]) =>
  `specimen,construction,role\n${rows.map((row) => row.join(',')).join('\n')}\n`;

async function json(...args: string[]) {
  const { status, out, err } = await tirelab(['compare', '--json', ...args]);
  return { status, err, document: JSON.parse(out) };
}

describe('compare over several layouts', () => {
  it('takes the samples of one session', async () => {
    const drops = [...series('A', 560, 1), ...series('B', 640, 2)];
    const rows = drops.map(({ specimen }) => [specimen, specimen.startsWith('A') ? 'A' : 'B', '']);
    const withSeries = drops.map((drop) => drop);
    const session = run('A', withSeries, { also: ['B'], specimens: register(rows) });
    const { status, document } = await json(session);
    expect(status).toBe(0);
    expect(document.samples.map(({ label }: { label: string }) => label)).toEqual(['A@1', 'B@1']);
    expect(document.pairs[0].differences[0].ratio.value).toBeGreaterThan(1);
  });

  it('tells constructions of two days as ratios to the references of their own days', async () => {
    const day = (id: string, reference: number, candidate: number, date: string, seed: number) => {
      const at = { time: `${date}T10:00:00+01:00`, operator: 'T1' };
      const drops = [...series('R', reference, seed, at), ...series(id, candidate, seed + 1, at)];
      const rows = drops.map(({ specimen }) =>
        specimen.startsWith('R') ? [specimen, 'R', 'reference'] : [specimen, id, ''],
      );
      return run(id, drops, { also: ['R'], specimens: register(rows) });
    };
    // The second day is 10 % weaker for all: the day goes with the construction, the ratio of ratios does not.
    const runs = [day('A', 600, 600, '2026-03-09', 11), day('B', 540, 594, '2026-03-10', 21)];
    const { document, status } = await json('--margin', '20 %', ...runs);
    expect(document.refused).toEqual([]);
    expect(document.pairs).toEqual([]);
    expect(document.relative).toHaveLength(2);
    const [across] = document.ratiosOfRatios;
    expect(across.lower).toBeLessThan(1.1);
    expect(across.upper).toBeGreaterThan(1.1);
    const named = document.factors.find(({ name }: { name: string }) => name === 'day');
    expect(named).toMatchObject({
      state: 'differs',
      despite: expect.stringContaining('reference of its own day'),
    });
    const aliased = document.aliasing.find(({ factor }: { factor: string }) => factor === 'day');
    expect(aliased.state).not.toBe('constant');
    expect([0, 3]).toContain(status);
    for (const { nonInferiority } of document.relative) {
      const { lower, upper, verdict } = nonInferiority;
      expect(verdict).toBe(lower >= 0.8 ? 'not-inferior' : upper < 0.8 ? 'inferior' : 'undecided');
    }
  });

  it('judges a margin: 0 where nothing is lost, 1 where too much, 3 where it is open', async () => {
    const reference = run('R', series('R', 600, 31));
    const same = run('S', series('S', 640, 32));
    const weak = run('W', series('W', 480, 33));
    expect((await tirelab(['compare', '--reference', 'R', '--margin', '25 %', same, reference])).status).toBe(
      0,
    );
    const failed = await tirelab(['compare', '--reference', 'R', '--margin', '5 %', weak, reference]);
    expect(failed.status).toBe(1);
    expect(failed.out).toContain('W@1 is inferior to R@1 by a margin of 5 %');
    expect(
      (await tirelab(['compare', '--margin', '1 %', reference, run('N', series('N', 600, 34))])).status,
    ).toBe(3);
    expect((await tirelab(['compare', '--reference', 'X', reference, same])).status).toBe(2);
    expect((await tirelab(['compare', '--margin', '5', reference, same])).status).toBe(2);
  });

  it('pools runs of one construction, tests whether they agree, and pools nothing that differs', async () => {
    const [a, b] = [run('A', series('A', 560, 41)), run('A', series('A2', 560, 42))];
    const other = run('B', series('B', 600, 43));
    const { document } = await json('--pool', a, b, other);
    expect(document.samples.map(({ specimens }: { specimens: number }) => specimens)).toEqual([60, 30]);
    expect(document.notes.join()).toMatch(
      /runs run-A and run-A of A@1 are pooled; that their medians agree has p = /,
    );
    const later = run('A', series('A3', 560, 44, { operator: 'T9' }));
    const one = run('A', series('A4', 560, 45, { operator: 'T1' }));
    const { status, document: refused } = await json('--pool', one, later, other);
    expect(status).toBe(3);
    expect(refused.refused.join()).toContain('cannot be pooled: operator differs');
  });

  it('allows for covariates and blocks on one likelihood', async () => {
    const mixed = (name: string, median: number, seed: number) =>
      series(name, median, seed).map((drop, i) => ({
        ...drop,
        operator: i % 3 === 0 ? 'T1' : 'T2',
        pressure: 2 + 0.01 * (i % 5),
      }));
    const runs = [run('A', mixed('A', 560, 51)), run('B', mixed('B', 640, 52))];
    const { document } = await json('--covariates', 'operator,pressure', ...runs);
    const { adjusted, pairs } = document;
    expect(adjusted.covariates).toEqual(['operator', 'pressure']);
    // Neither moves the strength here: the adjusted difference is near the plain one.
    const plain = pairs[0].differences.find((one: { spreads: string }) => one.spreads === 'common').difference
      .value;
    expect(adjusted.differences[0].value / plain).toBeGreaterThan(0.8);
    expect(adjusted.differences[0].value / plain).toBeLessThan(1.2);
    expect(adjusted.test.degrees).toBe(1);
    const { document: without } = await json('--covariates', 'temperature', ...runs);
    expect(without.adjusted.why).toContain('temperature');
  });

  it('compares rising heights from different starts by single hits, or says why it cannot', async () => {
    const rising = (id: string, start: number, seed: number, law = 'normal') => {
      const [median, tyres] = [560, 60];
      const stream = randomStream(seed, 1);
      const drops = Array.from({ length: tyres }, (_, tyre) => {
        const own = median + 12 * stream.normal();
        const hits: InventedDrop[] = [];
        for (let height = start; ; height += 25) {
          const failed = own + 45 * stream.normal() <= height;
          hits.push({ specimen: `${id}-${tyre}`, height, failed });
          if (failed) return hits;
        }
      }).flat();
      const protocol = [
        'method: rising-height',
        'failure: cut',
        'mass: 8 kg',
        `start: ${start} mm`,
        'step: 25 mm',
        `distribution: ${law}`,
      ];
      return inventedRun(fresh(), { id, protocol, log: dropLog(drops) });
    };
    const refused = await json(rising('A', 400, 61, 'logistic'), rising('B', 475, 62, 'logistic'));
    expect(refused.status).toBe(3);
    expect(refused.document.refused.join()).toContain('different starts');
    expect(refused.document.refused.join()).toContain('fitted for normal and lognormal strength');
    const many = await json(rising('A', 400, 63), rising('B', 475, 64));
    expect(many.document.refused).toEqual([]);
    const [pair] = many.document.pairs;
    expect(
      pair.differences.every(({ interval }: { interval: string }) => interval === 'specimen-effect'),
    ).toBe(true);
    expect(pair.differences[0].ratio.lower).toBeLessThan(1);
    expect(pair.differences[0].ratio.upper).toBeGreaterThan(1);
  });

  it('names a run that cannot be read and compares the others', async () => {
    const [a, b] = [run('A', series('A', 560, 71)), run('B', series('B', 640, 72))];
    const { status, err, document } = await json(a, 'none.yaml', b);
    expect(status).toBe(3);
    expect(err).toContain('none.yaml: no such file');
    expect(document.unread.map(({ path }: { path: string }) => path)).toEqual(['none.yaml']);
    expect(document.pairs).toHaveLength(1);
    const lines = await tirelab(['compare', '--ndjson', a, b]);
    expect(JSON.parse(lines.out)).toMatchObject({ first: 'A@1', second: 'B@1', unit: 'J' });
  });

  it('says what goes together with the construction, mass and energy, and which verdicts turn', async () => {
    const { document } = await json(
      ...['--despite', 'day=one week', '--despite', 'mass=cloth'],
      ...['demo', 'demo-fail', 'demo-undecided'].map((name) => `fixtures/${name}/run.yaml`),
    );
    const state = (factor: string) =>
      document.aliasing.find((one: { factor: string }) => one.factor === factor).state;
    expect(state('day')).toBe('aliased');
    expect(state('order')).toBe('aliased');
    expect(state('rig')).toBe('constant');
    const [lightest, ...others] = document.tradeOff;
    expect(others.every(({ mass }: { mass: number }) => mass >= lightest.mass)).toBe(true);
    const dominated = document.tradeOff.filter(
      ({ dominatedBy }: { dominatedBy: number[] }) => dominatedBy.length > 0,
    );
    for (const { mass, median, dominatedBy } of dominated) {
      const better = document.tradeOff.find(({ sample }: { sample: number }) => sample === dominatedBy[0]);
      expect(better.mass <= mass && better.median >= median).toBe(true);
    }
    const [turned] = document.verdictInfluence;
    expect(turned).toMatchObject({ criterion: 'median', whole: 'inconclusive', without: 'pass' });
  });
});
