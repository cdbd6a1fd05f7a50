import fc from 'fast-check';
import { expect, test } from 'vitest';
import { laws } from '../../../src/statistics/laws/laws.ts';
import { prepareProfile } from '../../../src/statistics/likelihood/constrained.ts';
import { judgeExistence } from '../../../src/statistics/likelihood/existence.ts';
import { gatherObservations, type Observation } from '../../../src/statistics/likelihood/observation.ts';
import { drops, titleOf } from '../../reference/likelihood/case.ts';
import sen06 from '../../reference/sen-06/SEN-06-updown-degenerate-two-level.json' with { type: 'json' };
import sen19 from '../../reference/sen-19/SEN-19-mle-existence-tiny-sets.json' with { type: 'json' };
import { naiveLaws, naiveLogLikelihood } from './naive.ts';

const judge = (observations: readonly Observation[], scale: 'identity' | 'log' = 'identity') =>
  judgeExistence(gatherObservations(observations, scale));

/** What we call each verdict of the case, by the case's own words. */
const words: Record<string, Record<string, unknown>> = {
  all_nofail: { kind: 'no-failure', highestSurvived: 12 },
  all_fail: { kind: 'all-failed', lowestFailed: 10 },
  single_level_mixed: { kind: 'single-level', level: 10, failed: 2, total: 4 },
  complete_sep_2: { kind: 'gap', highestSurvived: 10, lowestFailed: 11 },
  complete_sep_4: { kind: 'gap', highestSurvived: 10, lowestFailed: 11 },
  complete_sep_12: { kind: 'gap', highestSurvived: 10, lowestFailed: 11 },
  complete_sep_gap: { kind: 'gap', highestSurvived: 10, lowestFailed: 12 },
  quasi_sep: { kind: 'common-level', level: 10, failed: 1, total: 2 },
  overlap_min: { kind: 'exists' },
  overlap_6: { kind: 'exists' },
  reversed: { kind: 'wrong-direction', meanFailed: 9.5, meanSurvived: 11.5 },
  neg_slope_overlap: { kind: 'wrong-direction', meanFailed: 10, meanSurvived: 11 },
  two_level_mixed: { kind: 'exists' },
  two_level_equal: { kind: 'wrong-direction', meanFailed: 11, meanSurvived: 11 },
};

test.each(Object.entries(sen19.data.sets))(`${titleOf(sen19)}: %s`, (name, { levels, fail }) => {
  expect(Object.keys(words)).toHaveLength(sen19.expected.length);
  expect(judge(drops(levels, fail))).toEqual(words[name]);
});

test(titleOf(sen06), () => {
  expect(sen06.expected.find((entry) => entry.name === 'MLE exists')?.value).toBe(false);
  expect(judge(drops(sen06.data.levels, sen06.data.fail)).kind).toBe('gap');
});

test('levels are told on the original scale, in the digits they came in', () => {
  for (const x of [3, 300, 325.5, 9999.75])
    expect(judge(drops([x, 2 * x], [0, 1]), 'log')).toEqual({
      kind: 'gap',
      highestSurvived: x,
      lowestFailed: 2 * x,
    });
});

const row = (lower: number, upper: number) => ({ lower, upper, count: 1 });

// The rule for mixed observations, derived in the docstring; each line is decided by hand.
test.each([
  ['no data', [], 'empty'],
  ['one interval', [row(1, 2)], 'gap'],
  ['intervals with a common part', [row(1, 3), row(2, 4)], 'gap'],
  ['intervals that touch', [row(1, 2), row(2, 3)], 'common-level'],
  ['intervals apart', [row(1, 2), row(3, 4)], 'exists'],
  ['interval and a survival within', [row(1, 3), row(2, Infinity)], 'gap'],
  ['interval and a survival at its end', [row(1, 3), row(3, Infinity)], 'common-level'],
  ['interval and a survival above', [row(1, 3), row(4, Infinity)], 'exists'],
  ['interval and a failure below', [row(1, 3), row(-Infinity, 0)], 'exists'],
  ['failures all, and intervals overlapping', [row(-Infinity, 5), row(1, 3)], 'gap'],
  ['one exact value', [row(2, 2)], 'single-value'],
  ['one exact value, twice, and an interval around', [row(2, 2), row(2, 2), row(1, 3)], 'single-value'],
  ['an exact value and a survival above', [row(2, 2), row(3, Infinity)], 'exists'],
  ['two exact values', [row(2, 2), row(3, 3)], 'exists'],
])('%s', (_, observations, kind) => {
  expect(judge(observations).kind).toBe(kind);
});

const level = fc.integer({ min: 0, max: 4 });
const observation = fc.oneof(
  level.map((x) => row(-Infinity, x)),
  level.map((x) => row(x, Infinity)),
  fc.tuple(level, fc.integer({ min: 1, max: 3 })).map(([x, width]) => row(x, x + width)),
);

// Where a best fit is denied, the supremum comes from the two limits of the scale alone; a maximum inside would lie above
// it. Where one is granted, no point of the grid, which reaches far towards both limits, may lie above the fit.
test.each(['logistic', 'weibull'] as const)('against a grid search over random small sets: %s', (name) => {
  const cdf = naiveLaws[name];
  fc.assert(
    fc.property(fc.array(observation, { minLength: 1, maxLength: 7 }), (observations) => {
      const basis = prepareProfile(gatherObservations(observations, 'identity'), laws[name].standard);
      let best = -Infinity;
      for (let i = 0; i <= 40; i++) {
        const scale = 10 ** (-1.5 + i / 10);
        for (let j = 0; j <= 160; j++) {
          const location = 2 + (j / 80 - 1) * (4 + 4 * scale);
          best = Math.max(best, naiveLogLikelihood(observations, cdf, location, scale));
        }
      }
      const { fit, supremum } = basis;
      expect(best).toBeLessThanOrEqual(supremum + 1e-9);
      // The grid is coarse: it comes near the supremum, it need not reach it.
      expect(best).toBeGreaterThan(supremum - 0.15);
      if (fit.kind === 'exists')
        expect(naiveLogLikelihood(observations, cdf, fit.location, fit.scale)).toBeCloseTo(supremum, 9);
    }),
    { numRuns: 60, seed: 20260 },
  );
});
