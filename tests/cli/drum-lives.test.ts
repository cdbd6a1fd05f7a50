import { describe, expect, it } from 'vitest';
import aml from '../reference/km-01/KM-01-aml.json' with { type: 'json' };
import turnbull from '../reference/km-03/KM-03-turnbull.json' with { type: 'json' };
import bearings from '../reference/lif-01/LIF-01-ballbearing.json' with { type: 'json' };
import shocks from '../reference/lif-02/LIF-02-shock.json' with { type: 'json' };
import nist from '../reference/lif-03/LIF-03-nist8413.json' with { type: 'json' };
import mann from '../reference/lif-05/LIF-05-mannfertig.json' with { type: 'json' };
import abernethy from '../reference/lif-08/LIF-08-aberC5.json' with { type: 'json' };
import johnson from '../reference/lif-09/LIF-09-johnson-ranks.json' with { type: 'json' };
import fans from '../reference/lif-12/LIF-12-fans.json' with { type: 'json' };
import truck from '../reference/lif-13/LIF-13-bury-trucktyres.json' with { type: 'json' };
import composite from '../reference/lif-15/LIF-15-bury-composite.json' with { type: 'json' };
import { estimateOf, tirelab } from './command.ts';

interface Case {
  readonly expected: readonly { readonly name: string; readonly value: unknown }[];
}

const WEIBULL = 'fixtures/drum-published/protocol.yaml';
const LOGNORMAL = 'fixtures/drum-published/protocol-lognormal.yaml';

const expected = (of: Case, name: string): number => {
  const found = of.expected.find((entry) => entry.name === name);
  if (!found) throw new Error(`the case has no ${name}`);
  return found.value as number;
};

/** A table of outcomes from published times: equal ends failed, an open end was taken off. */
const outcomes = (
  rows: readonly (readonly [survived: number | null, failed: number | null, cause?: string])[],
) =>
  `specimen,survived [km],failed [km],cause\n${rows
    .map(([survived, failed, cause], i) => `S-${i + 1},${survived ?? ''},${failed ?? ''},${cause ?? ''}\n`)
    .join('')}`;

const ofTimes = (times: readonly number[], failed: readonly number[]) =>
  outcomes(times.map((time, i) => [time, failed[i] ? time : null]));

async function analysed(table: string, protocol = WEIBULL, more: readonly string[] = []) {
  const { status, out } = await tirelab(['analyze', '--json', '--protocol', protocol, ...more, '-'], {
    input: table,
  });
  return { status, result: JSON.parse(out) };
}

const exactly = (times: readonly number[]) => times.map((time) => [time, time] as const);
const takenOff = (count: number, at: number) => Array.from({ length: count }, () => [at, null] as const);

// Each case names where its data were printed; its values were computed twice, by R's survreg (profile limits with it) and
// by Python, in tests/reference.
const TABLES: readonly (readonly [string, Case, string])[] = [
  ['LIF-01-ballbearing', bearings, outcomes(exactly(bearings.data.lives))],
  ['LIF-02-shock', shocks, ofTimes(shocks.data.distance, shocks.data.failed)],
  [
    'LIF-03-nist8413',
    nist,
    outcomes([...exactly(nist.data.failures), ...takenOff(nist.data.n_censored, nist.data.censored_at)]),
  ],
  [
    'LIF-05-mannfertig',
    mann,
    outcomes([
      ...exactly(mann.data.failures),
      ...takenOff(mann.data.n_on_test - mann.data.failures.length, mann.data.censored_at),
    ]),
  ],
  ['LIF-12-fans', fans, ofTimes(fans.data.hours, fans.data.failed)],
  ['LIF-13-bury-trucktyres', truck, ofTimes(truck.data.times, truck.data.failed)],
  ['LIF-15-bury-composite', composite, ofTimes(composite.data.times, composite.data.failed)],
];

describe.each(TABLES)('the whole command on %s, a Weibull law', (_, of, table) => {
  it('agrees on scale and shape, their errors, and the limits of the lives', async () => {
    const { status, result } = await analysed(table);
    expect(status).toBe(0);
    const near = (value: number | null, name: string, relative = 2e-6) =>
      expect(Math.abs(value! / expected(of, name) - 1)).toBeLessThan(relative);
    const scale = estimateOf(result, 'characteristicLife', 'censored-likelihood');
    const shape = estimateOf(result, 'weibullShape', 'censored-likelihood');
    near(scale.value, 'weibull.eta');
    near(shape.value, 'weibull.beta');
    // The case has the errors of ln scale and of 1/shape: the delta method takes them to what is printed.
    near(scale.standardError! / scale.value!, 'weibull.se_mu', 1e-4);
    near(shape.standardError! / shape.value! ** 2, 'weibull.se_sigma', 1e-4);
    near(1 / shape.interval!.lower!, 'weibull.sigma.prof_hi', 5e-5);
    near(1 / shape.interval!.upper!, 'weibull.sigma.prof_lo', 5e-5);
    for (const share of [0.1, 0.5]) {
      const life = estimateOf(result, 'lifeQuantile', 'censored-likelihood', share);
      near(life.value, `weibull.t${share}`);
      near(life.interval!.lower, `weibull.t${share}.prof_lo`, 5e-5);
      near(life.interval!.upper, `weibull.t${share}.prof_hi`, 5e-5);
      expect(life.interval).toMatchObject({ level: 0.95, sides: 2, method: 'profile-likelihood' });
    }
    near(
      estimateOf(result, 'lifeQuantile', 'censored-likelihood', 0.1).standardError! /
        estimateOf(result, 'lifeQuantile', 'censored-likelihood', 0.1).value!,
      'weibull.se_log_t0.1',
      1e-4,
    );
  });
});

describe.each(TABLES.filter(([name]) => name !== 'LIF-05-mannfertig'))(
  'the whole command on %s, a lognormal law',
  (_, of, table) => {
    it('agrees on the median, the spread and the limits of the 10 % life', async () => {
      const { result } = await analysed(table, LOGNORMAL);
      const near = (value: number | null, name: string, relative: number) =>
        expect(Math.abs(value! / expected(of, name) - 1)).toBeLessThan(relative);
      const early = estimateOf(result, 'lifeQuantile', 'censored-likelihood', 0.1);
      near(estimateOf(result, 'lifeQuantile', 'censored-likelihood', 0.5).value, 'lognormal.t0.5', 2e-6);
      near(estimateOf(result, 'lifeSpread', 'censored-likelihood').value, 'lognormal.sigma', 2e-6);
      near(early.interval!.lower, 'lognormal.t0.1.prof_lo', 5e-5);
      near(early.interval!.upper, 'lognormal.t0.1.prof_hi', 5e-5);
    });
  },
);

describe('the whole command on further published lives', () => {
  // LIF-08: Abernethy, The New Weibull Handbook, example C-5; scale and shape by maximum likelihood.
  it('agrees on LIF-08', async () => {
    const { failures, censored } = abernethy.data;
    const { result } = await analysed(
      outcomes([...exactly(failures), ...censored.map((at) => [at, null] as const)]),
    );
    const tolerance = 1e-5;
    for (const [quantity, name] of [
      ['characteristicLife', 'eta'],
      ['weibullShape', 'beta'],
    ] as const) {
      const { value } = estimateOf(result, quantity, 'censored-likelihood');
      expect(Math.abs(value! / expected(abernethy, name) - 1)).toBeLessThan(tolerance);
    }
  });

  // KM-01: Miller, Survival Analysis (1981), p. 49, the maintained group.
  it('agrees on the product-limit curve of KM-01 with its errors', async () => {
    const { t, s } = aml.data.maintained;
    const { result } = await analysed(ofTimes(t, s));
    for (const { to, survival, standardError } of result.survival) {
      const found = aml.expected.find(({ name }) => name.startsWith(`Maintained S(${to})`))!;
      expect(survival).toBeCloseTo(found.value as number, 9);
      expect(standardError).toBeCloseTo(expected(aml, `Maintained Greenwood se(${to})`), 9);
    }
    expect(result.survival).toHaveLength(7);
  });

  it('agrees on the curve of KM-03, with lives that ended before the first look', async () => {
    const { time, status_1exact_0right_2left: status, n } = turnbull.data;
    const rows = time.flatMap((at, i) => {
      const row = status[i] === 1 ? [at, at] : status[i] === 0 ? [at, null] : [null, at];
      return Array.from({ length: n[i]! }, () => row as [number | null, number | null]);
    });
    const { result } = await analysed(outcomes(rows));
    for (const at of [1, 2, 3, 4]) {
      const step = result.survival.findLast(({ to }: { to: number | null }) => to !== null && to <= at);
      expect(step.survival).toBeCloseTo(expected(turnbull, `S(${at})`), 5);
    }
  });

  // LIF-09: Johnson (1964) adjusted ranks; exact median ranks from the beta law.
  it('places failures at the adjusted median ranks of LIF-09', async () => {
    const { result } = await analysed(ofTimes(johnson.data.times, johnson.data.failed));
    const ranks = result.lives
      .filter(({ outcome }: { outcome: string }) => outcome === 'failed')
      .sort((a: { upper: number }, b: { upper: number }) => a.upper - b.upper)
      .map(({ medianRank }: { medianRank: number }) => medianRank);
    ranks.forEach((rank: number, i: number) => {
      expect(rank).toBeCloseTo(expected(johnson, `exact median rank (beta) ${i + 1}`), 6);
    });
    expect(ranks).toHaveLength(5);
  });
});

describe('a demonstration without a failure', () => {
  // n = ln(1 − C)/ln R: 22 tyres without a failure show 90 % with 90 % confidence (ZF-01), 21 do not.
  it.each([
    [22, 0.1 ** (1 / 22)],
    [21, 0.1 ** (1 / 21)],
  ])('shows with %i tyres what Clopper and Pearson give', async (count, shown) => {
    const spec = ['--spec', 'fixtures/drum-published/demonstration.yaml'];
    const { status, result } = await analysed(outcomes(takenOff(count, 20_000)), WEIBULL, spec);
    const [criterion] = result.criteria;
    expect(criterion.bounds.lower).toBeCloseTo(shown, 12);
    expect(criterion).toMatchObject({ estimate: null, basis: { method: 'success-run', interval: 'exact' } });
    expect([criterion.verdict, status]).toEqual(shown >= 0.9 ? ['pass', 0] : ['inconclusive', 3]);
    const entry = estimateOf(result, 'reliability', 'success-run');
    expect(entry.value).toBeNull();
    expect(entry.interval).toMatchObject({ sides: 1, upper: null, method: 'exact' });
    expect(entry.why).toContain('no tyre failed');
    expect(estimateOf(result, 'lifeQuantile', 'success-run', 0.5).interval!.lower).toBe(20_000);
    expect(result.sample).toMatchObject({ specimens: count, failures: 0, censored: count });
  });

  it('is status 0 without a specification, with no value and a reason', async () => {
    const { status, result } = await analysed(outcomes(takenOff(3, 5000)));
    expect(status).toBe(0);
    expect(
      result.estimates.every(({ value, why }: { value: null; why: string }) => value === null && why !== ''),
    ).toBe(true);
  });
});

describe('outcomes', () => {
  it('count a failure of another part as a suspension at the distance survived, and say so', async () => {
    const table = outcomes([
      [3000, 3200, 'tube'],
      [4000, 4000, 'casing'],
      [5000, null],
      [2500, 2500, 'Rim crack'],
      [4500, 4600, 'bead'],
    ]);
    const { result } = await analysed(table);
    expect(result.sample).toMatchObject({ specimens: 5, failures: 2, suspensions: 3, censored: 3 });
    expect(
      result.lives.map(({ outcome, lower, upper }: Record<string, unknown>) => [outcome, lower, upper]),
    ).toEqual([
      ['suspended', 3000, null],
      ['failed', 4000, 4000],
      ['suspended', 5000, null],
      ['suspended', 2500, null],
      ['failed', 4500, 4600],
    ]);
    const codes = result.conformance.deviations.map(({ code, line }: Record<string, unknown>) => [
      code,
      line,
    ]);
    expect(codes).toEqual([
      ['DRUM-28', 2],
      ['DRUM-28', 5],
      ['DRUM-44', null],
    ]);
  });

  it('tell of an interval that is too wide, and that a life before the first look has no lower end', async () => {
    const { result } = await analysed(
      outcomes([
        [null, 900],
        [1000, 2000],
        [3000, 3000],
      ]),
    );
    expect(result.lives[0]).toMatchObject({ lower: null, upper: 900, outcome: 'failed' });
    expect(result.sample.censored).toBe(1);
    expect(result.conformance.deviations.map(({ code }: { code: string }) => code)).toEqual([
      'DRUM-23',
      'DRUM-23',
    ]);
  });

  it.each([
    ['failed before it survived', 'A,500,400,\n', 2, 7, 'failed-before-survived'],
    ['a tyre twice', 'A,500,,\nB,1,,\nA,600,,\n', 4, 1, 'duplicate-specimen'],
    ['no distance', 'A,,,\n', 2, 3, 'no-distance'],
    ['no name', ',500,,\n', 2, 1, 'empty-cell'],
    ['no number', 'A,far,,\n', 2, 3, 'not-a-number'],
    ['a negative distance', 'A,-5,,\n', 2, 3, 'out-of-range'],
    ['nothing but a header', '', 1, null, 'no-rows'],
  ])('are refused with line and column: %s', async (_, rows, line, column, code) => {
    const { status, result } = await analysed(`specimen,survived [km],failed [km],cause\n${rows}`);
    expect(status).toBe(2);
    expect(result.problems[0]).toMatchObject({ file: '-', line, column, code });
  });

  it.each([
    ['an empty file', '', 'empty-file'],
    ['no unit', 'specimen,survived,failed,cause\nA,1,1,\n', 'missing-unit'],
    ['a log of drops', 'specimen,height [mm],outcome\nA,500,failed\n', 'not-a-drum-log'],
    ['a column that is missing', 'specimen,survived [km],cause\nA,1,\n', 'missing-column'],
  ])('are refused: %s', async (_, input, code) => {
    const { status, result } = await analysed(input);
    expect(status).toBe(2);
    expect(result.problems.map((problem: { code: string }) => problem.code)).toContain(code);
  });

  it('may be written in another unit of length', async () => {
    const miles = 'specimen,survived [mi],failed [m],cause\nA,1000,2000000,\nB,2000,,\n';
    const { result } = await analysed(miles);
    // The international mile is 1.609344 km by definition (1959).
    expect(result.lives[0].lower).toBeCloseTo(1609.344, 9);
    expect(result.lives[0].upper).toBeCloseTo(2000, 9);
  });
});
