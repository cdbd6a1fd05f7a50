import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import ewmaCase from '../reference/ctl-02/CTL-02-nist-ewma.json' with { type: 'json' };
import cusumCase from '../reference/ctl-03/CTL-03-nist-cusum.json' with { type: 'json' };
import wafers from '../reference/ctl-05/CTL-05-wafer-xbarR.json' with { type: 'json' };
import runLengths from '../reference/ctl-06/CTL-06-ARL.json' with { type: 'json' };
import rules from '../reference/ctl-07/CTL-07-run-rules.json' with { type: 'json' };
import { expectNumber, titleOf } from '../reference/published.ts';
import { tirelab } from './command.ts';

const folder = mkdtempSync(join(tmpdir(), 'monitor-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Point {
  readonly signals: readonly string[];
  readonly ewma: { readonly value: number; readonly lower: number; readonly upper: number };
  readonly cusum: { readonly high: number; readonly low: number };
}

async function monitor(table: string, ...options: string[]) {
  const { status, out, err } = await tirelab(['monitor', '-', '--json', ...options], { input: table });
  return { status, result: JSON.parse(out), err };
}

/** A day for each place, so that the order is that of the list. */
function day(place: number): string {
  return new Date(Date.UTC(2026, 0, 1 + place)).toISOString().slice(0, 10);
}

/**
 * Ten points about a centre whose moving ranges are 1.128 379 sigma (d2 of two, Montgomery appendix VI), so that limits are centre ± 3
 * sigma to 9 digits; the last is settled, so that sums and runs begin with the values.
 */
function withKnownLimits(centre: number, sigma: number, values: readonly number[]): string {
  const half = 0.564189583547756 * sigma;
  const base = Array.from({ length: 10 }, (_, i) => centre + (i % 2 === 0 ? half : -half));
  const rows = [...base, ...values].map(
    (value, i) => `${day(i)},${value},${i === 9 ? 'base period closed' : ''}`,
  );
  return `time,value [J],settled\n${rows.join('\n')}\n`;
}

const BASE = 10;

describe('tirelab monitor', () => {
  it(titleOf(ewmaCase), async () => {
    const { lambda, ewma0, s, x } = ewmaCase.data;
    const table = withKnownLimits(ewma0, s, x);
    const { result } = await monitor(table, '--base', '10', '--ewma', `${lambda},3`, '--rules', 'none');
    const points: Point[] = result.standards[0].points.slice(BASE);
    for (const [i, { ewma }] of points.entries()) {
      expect(ewma.value).toBeCloseTo(ewmaCase.expected[i]!.value, 9);
    }
    for (const t of [1, 2, 3, 5])
      expectNumber(ewmaCase, `exact (start-up) UCL at t=${t}`, points[t - 1]!.ewma.upper);
  });

  it(titleOf(cusumCase), async () => {
    const { target, k, h, sigma_xbar: sigma, x } = cusumCase.data;
    const table = withKnownLimits(target, sigma, x);
    const { result, status } = await monitor(table, '--base', '10', '--cusum', `${k / sigma},${h / sigma}`);
    expect(status).toBe(1);
    for (const [i, { cusum }] of (result.standards[0].points.slice(BASE) as Point[]).entries()) {
      const of = (side: string) =>
        cusumCase.expected.find(({ name }) => name === `${side} ${i + 1}`)!.value as number;
      expect(cusum.high).toBeCloseTo(of('Shi'), 8);
      expect(cusum.low).toBeCloseTo(of('Slo'), 8);
    }
    // 4.94 at the fourteenth point is the first sum above h = 4.1959 (same source); 0 stood last at the twelfth.
    expect(result.standards[0].drift).toMatchObject({ byCusum: day(BASE + 12) });
  });

  it(titleOf(wafers), async () => {
    const rows = wafers.data.groups.flatMap((group, i) =>
      group.map((value) => `${day(i)},${i + 1},${value}`),
    );
    const table = `date,subgroup,thickness [um]\n${rows.join('\n')}\n`;
    const range = (await monitor(table, '--base', '20')).result.standards[0];
    expect(range.chart).toBe('mean-range');
    expectNumber(wafers, 'grand mean', range.limits.value.centre);
    expectNumber(wafers, 'mean range', range.limits.spread.centre);
    expectNumber(wafers, 'Xbar UCL (A2 Rbar)', range.limits.value.upper);
    expectNumber(wafers, 'Xbar LCL', range.limits.value.lower);
    expectNumber(wafers, 'R UCL', range.limits.spread.upper);
    const signalling = (name: string) =>
      (range.points as Point[]).flatMap(({ signals }, i) => (signals.includes(name) ? [i + 1] : []));
    expect(signalling('value')).toEqual([20]);
    expect(signalling('spread')).toEqual([20]);
    const spread = (await monitor(table, '--base', '20', '--chart', 'mean-spread')).result.standards[0];
    expectNumber(wafers, 'mean SD', spread.limits.spread.centre);
    expectNumber(wafers, 'Xbar UCL (A3 sbar)', spread.limits.value.upper);
    expectNumber(wafers, 'S UCL', spread.limits.spread.upper);
  });

  it(titleOf(runLengths), async () => {
    const { result } = await monitor(withKnownLimits(50, 1, [50]), '--base', '10');
    const { runLength } = result.standards[0];
    expectNumber(runLengths, 'Shewhart 3-sigma ARL0', runLength.limits);
    expectNumber(runLengths, 'CUSUM k=0.5 h=5 shift 0', runLength.cusum);
    expectNumber(runLengths, 'EWMA lambda=0.2 L=2.962 shift 0', runLength.ewma);
    expectNumber(rules, 'ARL0 with rule 1 + 2of3+4of5+8 in a row', runLength.limitsAndRules);
  });

  it.each(Object.entries(rules.data.sequences_z))(`${rules.id}: the sequence of %s`, async (name, z) => {
    const table = withKnownLimits(0, 1, z);
    const found: Record<string, number[]> = {};
    for (const set of ['nelson', 'western-electric']) {
      const { result } = await monitor(table, '--base', '10', '--rules', set);
      for (const [i, { signals }] of (result.standards[0].points.slice(BASE) as Point[]).entries()) {
        for (const by of signals.filter((one) => !['spread', 'ewma', 'cusum'].includes(one))) {
          const places = found[by === 'value' ? 'N1' : by] ?? [];
          found[by === 'value' ? 'N1' : by] = [...new Set([...places, i + 1])];
        }
      }
    }
    const expected = rules.expected.find((one) => one.name === `sequence ${name}: all signals`)!.value;
    // The case names Western Electric's rules only where they differ from Nelson's.
    for (const [rule, places] of Object.entries(expected)) expect(found[rule], rule).toEqual(places);
    for (const rule of Object.keys(found).filter((one) => one.startsWith('N'))) {
      expect(Object.keys(expected)).toContain(rule);
    }
  });

  it('is quiet on a quiet rig', async () => {
    // Alternating about 50 within one standard deviation: no limit, sum or rule of one side can be met.
    const values = Array.from({ length: 24 }, (_, i) => 50 + (i % 2 === 0 ? 0.5 : -0.5) * (1 + (i % 3) / 10));
    const table = `time,value [J]\n${values.map((value, i) => `${day(i)},${value}`).join('\n')}\n`;
    const { status, result } = await monitor(table);
    expect(status).toBe(0);
    expect(result.standing).toBe('in-control');
    expect(result.standards[0].signals).toEqual([]);
  });

  it('finds the day from which the rig is off, through a new batch of reference tyres', async () => {
    const { status, out } = await tirelab(['monitor', 'fixtures/monitor/checks.csv', '--json']);
    expect(status).toBe(1);
    const [standard] = JSON.parse(out).standards;
    // The generator lowers every reading from 2026-03-16 on, and makes R2 1.2 mm higher than R1.
    expect(standard.drift.began.slice(0, 10)).toBe('2026-03-16');
    const [bridge] = standard.bridges;
    expect(bridge.interval.lower).toBeLessThan(1.2);
    expect(bridge.interval.upper).toBeGreaterThan(1.2);
    const { out: text } = await tirelab(['monitor', 'fixtures/monitor/checks.csv']);
    expect(text).toContain('most likely began on 2026-03-16');
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  it('is set as a report with its chart, and as Markdown', async () => {
    const { status, out } = await tirelab(['monitor', 'fixtures/monitor/checks.csv', '--format', 'html']);
    expect(status).toBe(1);
    expect(out.match(/<svg/gu)).toHaveLength(1);
    // A circle a point, filled where one signals: 2026-03-20 to 2026-03-27 are the last six of sixty working days.
    const filled = out.match(/<circle [^>]*fill="#9a3412"/gu) ?? [];
    expect(out.match(/<circle /gu)).toHaveLength(60);
    expect(filled).toHaveLength(6);
    const markdown = await tirelab(['monitor', 'fixtures/monitor/checks.csv', '--format', 'markdown']);
    expect(markdown.out).toContain('most likely began on 2026-03-16');
  });

  it('names the stored results that a drift touches', async () => {
    const quiet = Array.from({ length: 20 }, (_, i) => 50 + (i % 2 === 0 ? 0.5 : -0.5) * (1 + (i % 3) / 10));
    const off = [53, 53.2, 52.9];
    const table = `time,value [J],rig\n${[...quiet, ...off].map((v, i) => `${day(i)},${v},drop-2`).join('\n')}\n`;
    const store = (name: string, from: string | null, rig = 'drop-2') => {
      const document = {
        schema: 'tirelab.result/1',
        kind: 'impact',
        run: name,
        rig: { id: rig, config: '2026-03' },
        inputs: [],
        ...(from === null ? {} : { period: { from, to: from, gauges: [] } }),
      };
      writeFileSync(join(folder, `${name}.json`), JSON.stringify(document));
    };
    store('before', `${day(15)}T09:00:00Z`);
    store('after', `${day(21)}T09:00:00Z`);
    store('other-rig', `${day(21)}T09:00:00Z`, 'drop-3');
    store('undated', null);
    const { status, result } = await monitor(table, '--results', folder);
    expect(status).toBe(1);
    expect(
      result.touched.map(({ run, standing }: { run: string; standing: string }) => [run, standing]),
    ).toEqual([
      ['after', 'touched'],
      ['before', 'clear'],
      ['other-rig', 'clear'],
      ['undated', 'unknown'],
    ]);
  });

  it('settles a signal by its cause, and starts the sums anew behind it', async () => {
    const quiet = Array.from({ length: 20 }, (_, i) => 50 + (i % 2 === 0 ? 0.5 : -0.5) * (1 + (i % 3) / 10));
    const rows = [...quiet, 54, ...quiet.slice(0, 5)].map(
      (value, i) => `${day(i)},${value},${i === 20 ? 'latch replaced' : ''}`,
    );
    const { status, result } = await monitor(`time,value [J],settled\n${rows.join('\n')}\n`);
    expect(status).toBe(0);
    const [standard] = result.standards;
    expect(standard.signals.length).toBeGreaterThan(0);
    for (const { settled } of standard.signals) expect(settled).toBe('latch replaced');
    expect(standard.points[21].cusum.high).toBeLessThan(1);
  });

  it.each([
    [
      'nine points',
      Array.from({ length: 9 }, (_, i) => `${day(i)},${50 + (i % 2)}`),
      'base-too-short',
      /:10: found 9 point/,
    ],
    [
      'points that do not differ',
      Array.from({ length: 12 }, (_, i) => `${day(i)},50`),
      'no-limits',
      /do not differ/,
    ],
    ['a time that is none', ['yesterday,50'], 'not-a-time', /-:2:1: time: found "yesterday"/],
    ['no value', [`${day(0)},`], 'no-readings', /found no reading/],
  ])('refuses %s', async (_, rows, code, message) => {
    const { status, result, err } = await monitor(`time,value [J]\n${rows.join('\n')}\n`);
    expect(status).toBe(2);
    expect(result.problems[0].code).toBe(code);
    expect(err).toMatch(message);
  });

  it('refuses a new batch that was not read beside the old one', async () => {
    const rows = Array.from({ length: 24 }, (_, i) => `${day(i)},${50 + (i % 2)},${i < 20 ? 'R1' : 'R2'}`);
    const { status, result } = await monitor(`time,value [J],batch\n${rows.join('\n')}\n`);
    expect(status).toBe(2);
    expect(result.problems[0]).toMatchObject({ code: 'batches-not-bridged', line: 22 });
  });

  it('refuses a base that is neither a number nor days', async () => {
    const { status } = await tirelab(['monitor', 'fixtures/monitor/checks.csv', '--base', 'spring']);
    expect(status).toBe(2);
  });
});
