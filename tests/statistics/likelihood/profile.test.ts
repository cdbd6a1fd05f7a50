import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { laws } from '../../../src/statistics/laws/laws.ts';
import { prepareProfile } from '../../../src/statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../../../src/statistics/likelihood/critical.ts';
import { gatherObservations, type Observation } from '../../../src/statistics/likelihood/observation.ts';
import { profileFailure, profileQuantile, testQuantile } from '../../../src/statistics/likelihood/profile.ts';
import { drops, titleOf } from '../../reference/likelihood/case.ts';
import sen06 from '../../reference/sen-06/SEN-06-updown-degenerate-two-level.json' with { type: 'json' };
import sen19 from '../../reference/sen-19/SEN-19-mle-existence-tiny-sets.json' with { type: 'json' };
import { naiveLaws, naiveLogLikelihood } from './naive.ts';

const basisOf = (observations: readonly Observation[], law = laws.normal) =>
  prepareProfile(gatherObservations(observations, law.scale), law.standard);
const c95 = likelihoodRatioCritical(0.95, 2);

interface Printed {
  sup: number;
  lo: number | null;
  hi: number | null;
}

describe.each(Object.entries(sen19.data.sets))(`${titleOf(sen19)}: %s`, (_, set) => {
  const basis = basisOf(drops(set.levels, set.fail));
  const expectEnd = (value: number | null, printed: number | null) =>
    printed === null ? expect(value).toBeNull() : expect(value).toBeCloseTo(printed, 8);

  test.each([
    [0.95, set.lr95],
    [0.8, set.lr80],
  ] as [number, Printed | null][])('interval of the median at %d', (level, printed) => {
    const { lower, upper } = profileQuantile(basis, 0.5, likelihoodRatioCritical(level, 2));
    // One level, half failed: the case prints nothing; no median is rejected.
    const { lo, hi, sup } = printed ?? { lo: null, hi: null, sup: 4 * Math.log(0.5) };
    expectEnd(lower.value, lo);
    expectEnd(upper.value, hi);
    expect(basis.supremum).toBeCloseTo(sup, 10);
    if (lo === null) expect(lower.why).toBe('constant-probability');
    if (hi === null) expect(upper.why).toBe('constant-probability');
  });
});

test(`${titleOf(sen06)}: open interval between the two levels`, () => {
  const { lower, upper } = profileQuantile(basisOf(drops(sen06.data.levels, sen06.data.fail)), 0.5, c95);
  expect(lower).toEqual({ value: 10, why: 'level' });
  expect(upper).toEqual({ value: 11, why: 'level' });
});

// From the note of SEN-19, put for any p: compare the binomial likelihood of one probability with the supremum.
test('unbounded upward exactly when a constant failure probability of at most p is not rejected', () => {
  const drop = fc.tuple(fc.integer({ min: 0, max: 3 }), fc.boolean());
  const binomial = (failed: number, of: number, p: number) =>
    (failed > 0 ? failed * Math.log(p) : 0) + (of > failed ? (of - failed) * Math.log(1 - p) : 0);
  fc.assert(
    fc.property(
      fc.array(drop, { minLength: 1, maxLength: 12 }),
      fc.constantFrom(0.1, 0.5, 0.8),
      fc.constantFrom(...Object.values(laws).filter((law) => law.scale === 'identity')),
      (series, p, law) => {
        const basis = basisOf(
          series.map(([x, failed]) => (failed ? fail(x) : pass(x))),
          law,
        );
        const { lower, upper } = profileQuantile(basis, p, c95);
        const failed = series.filter(([, f]) => f).length;
        const share = failed / series.length;
        const up = binomial(failed, series.length, Math.min(share, p));
        const down = binomial(failed, series.length, Math.max(share, p));
        expect(upper.value === null).toBe(2 * (basis.supremum - up) <= c95);
        expect(lower.value === null).toBe(2 * (basis.supremum - down) <= c95);
      },
    ),
    { numRuns: 300, seed: 19 },
  );
});

const fail = (x: number, count = 1) => ({ lower: -Infinity, upper: x, count });
const pass = (x: number, count = 1) => ({ lower: x, upper: Infinity, count });

/** Statistic of "a share p has failed at x" by a scan over scales, as the definition has it. */
function scannedStatistic(
  observations: readonly Observation[],
  name: 'logistic' | 'weibull',
  supremum: number,
  p: number,
  y: number,
): number {
  const z = name === 'logistic' ? Math.log(p / (1 - p)) : Math.log(-Math.log(1 - p));
  let best = -Infinity;
  for (let i = -1000; i <= 2000; i++) {
    const scale = 10 ** (i / 500);
    best = Math.max(best, naiveLogLikelihood(observations, naiveLaws[name], y - z * scale, scale));
  }
  return 2 * (supremum - best);
}

const level = fc.integer({ min: 0, max: 4 });
const observation = fc.oneof(
  level.map((x) => fail(x)),
  level.map((x) => pass(x)),
  fc
    .tuple(level, fc.integer({ min: 1, max: 3 }))
    .map(([x, width]) => ({ lower: x, upper: x + width, count: 1 })),
);

test.each(['logistic', 'weibull'] as const)('inside and outside by a scan over scales: %s', (name) => {
  const law = { standard: laws[name].standard, scale: 'identity' } as const;
  fc.assert(
    fc.property(
      fc.array(observation, { minLength: 2, maxLength: 10 }),
      fc.constantFrom(0.1, 0.5, 0.7),
      fc.integer({ min: -12, max: 28 }).map((quarter) => quarter / 4),
      (observations, p, y) => {
        const basis = prepareProfile(gatherObservations(observations, 'identity'), law.standard);
        const scanned = scannedStatistic(observations, name, basis.supremum, p, y);
        const { statistic } = testQuantile(basis, p, y);
        // The scan ends at a scale of 10⁴ and 10⁻², short of the limits.
        expect(Math.abs(statistic - scanned)).toBeLessThan(0.02 * (1 + scanned));
        if (Math.abs(scanned - c95) < 0.1) return;
        const { lower, upper } = profileQuantile(basis, p, c95);
        const above = lower.value === null || lower.value < y || (lower.value === y && lower.why !== 'level');
        const below = upper.value === null || upper.value > y || (upper.value === y && upper.why !== 'level');
        expect(above && below).toBe(scanned < c95);
        // The same hypothesis seen from y: the failure probability there is p.
        const { failure } = profileFailure(basis, y, c95);
        expect(failure.lower.value! <= p && p <= failure.upper.value!).toBe(scanned < c95);
      },
    ),
    { numRuns: 60, seed: 33 },
  );
});

test('the restricted fit has the share p at x, and its likelihood gives the statistic', () => {
  const data = [pass(1, 5), fail(2, 2), pass(2, 4), fail(3, 5), pass(3, 1)];
  const basis = prepareProfile(gatherObservations(data, 'identity'), laws.logistic.standard);
  const { statistic, location, scale } = testQuantile(basis, 0.2, 1.2);
  expect(1 / (1 + Math.exp((location - 1.2) / scale))).toBeCloseTo(0.2, 10);
  const { logistic } = naiveLaws;
  expect(2 * (basis.supremum - naiveLogLikelihood(data, logistic, location, scale))).toBeCloseTo(
    statistic,
    9,
  );
});

test('a larger critical value gives a wider interval, and 0 the estimate alone', () => {
  const basis = basisOf([pass(1, 5), fail(2, 2), pass(2, 4), fail(3, 5), pass(3, 1)]);
  const [narrow, wide] = [c95, 6.6].map((critical) => profileQuantile(basis, 0.5, critical));
  expect(wide!.lower.value!).toBeLessThan(narrow!.lower.value!);
  expect(wide!.upper.value!).toBeGreaterThan(narrow!.upper.value!);
});

test('shift, scale and mirror carry the ends along', () => {
  const data = [pass(1, 5), fail(2, 2), pass(2, 4), fail(3, 5), pass(3, 1)];
  const moved = data.map((o) => ({ ...o, lower: 25 * o.lower + 300, upper: 25 * o.upper + 300 }));
  // A failure at x becomes a survival at −x: the quantile p becomes −quantile of 1 − p.
  const mirrored = data.map((o) => ({ ...o, lower: -o.upper, upper: -o.lower }));
  const ends = (observations: readonly Observation[], p: number) => {
    const { lower, upper } = profileQuantile(basisOf(observations), p, c95);
    return [lower.value!, upper.value!];
  };
  const [lower, upper] = ends(data, 0.2) as [number, number];
  const [movedLower, movedUpper] = ends(moved, 0.2) as [number, number];
  expect(movedLower).toBeCloseTo(25 * lower + 300, 8);
  expect(movedUpper).toBeCloseTo(25 * upper + 300, 8);
  const [mirroredLower, mirroredUpper] = ends(mirrored, 0.8) as [number, number];
  expect(mirroredLower).toBeCloseTo(-upper, 9);
  expect(mirroredUpper).toBeCloseTo(-lower, 9);
});

test('no data and a likelihood without bound have no interval, and say so', () => {
  const none = { value: null, why: 'no-supremum' };
  expect(profileQuantile(basisOf([]), 0.5, c95)).toEqual({ lower: none, upper: none });
  const same = basisOf([{ lower: 2, upper: 2, count: 3 }]);
  expect(profileQuantile(same, 0.5, c95)).toEqual({ lower: none, upper: none });
  expect(profileFailure(same, 2, c95).failure).toEqual({ lower: none, upper: none });
});

test('one level: the failure probability there has its binomial likelihood interval', () => {
  const basis = basisOf([fail(10, 3), pass(10, 9)]);
  const { failure } = profileFailure(basis, 10, c95);
  const ratio = (p: number) => 2 * (3 * Math.log(0.25 / p) + 9 * Math.log(0.75 / (1 - p)));
  expect(ratio(failure.lower.value!)).toBeCloseTo(c95, 8);
  expect(ratio(failure.upper.value!)).toBeCloseTo(c95, 8);
  expect(failure.lower.value!).toBeLessThan(0.25);
});

test('laws on the log scale give ends in x', () => {
  const { lower, upper } = profileQuantile(
    basisOf([pass(100, 5), fail(200, 2), pass(200, 4), fail(300, 5), pass(300, 1)], laws.weibull),
    0.5,
    c95,
  );
  expect(lower.value!).toBeGreaterThan(50);
  expect(upper.value!).toBeLessThan(600);
});
