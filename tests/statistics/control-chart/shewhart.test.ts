import { expect, test } from 'vitest';
import { checkStandardLimits } from '../../../src/statistics/control-chart/check-standard.ts';
import { individualsLimits, movingRanges } from '../../../src/statistics/control-chart/individuals.ts';
import { outside } from '../../../src/statistics/control-chart/limits.ts';
import {
  meanRangeLimits,
  meanSpreadLimits,
  rangeOf,
} from '../../../src/statistics/control-chart/subgroups.ts';
import { mean } from '../../../src/statistics/summary/moments.ts';
import wafers from '../../reference/ctl-05/CTL-05-wafer-xbarR.json' with { type: 'json' };
import standard from '../../reference/ctl-08/CTL-08-nist-checkstandard.json' with { type: 'json' };
import { expectWhole, titleOf } from '../../reference/published.ts';

const counted = (places: readonly number[]) => places.map((at) => at + 1);

test(titleOf(wafers), () => {
  const { groups } = wafers.data;
  const byRange = meanRangeLimits(groups);
  const bySpread = meanSpreadLimits(groups);
  expectWhole(wafers, {
    'grand mean': byRange.mean.centre,
    'mean range': byRange.spread.centre,
    'mean SD': bySpread.spread.centre,
    'Xbar UCL (A2 Rbar)': byRange.mean.upper,
    'Xbar LCL': byRange.mean.lower,
    'Xbar UCL (A3 sbar)': bySpread.mean.upper,
    'R UCL': byRange.spread.upper,
    'S UCL': bySpread.spread.upper,
    'groups outside Xbar limits': counted(outside(groups.map(mean), byRange.mean)),
    'groups outside R limits': counted(outside(groups.map(rangeOf), byRange.spread)),
  });
});

test(titleOf(standard), () => {
  const { checkstd, short_term_sd, df_each } = standard.data;
  const limits = checkStandardLimits(checkstd, short_term_sd, df_each, 0.95);
  expectWhole(standard, {
    average: limits.value.centre,
    'level-2 SD': limits.levelTwo,
    'pooled level-1 SD': limits.levelOne,
    'UCL mean +- t(0.975,24) s': limits.value.upper,
    LCL: limits.value.lower,
    'UCL of short-term SD, s1*sqrt(F(0.95;5,125))': limits.shortTerm.upper,
    'occasions above that SD limit': counted(
      outside(short_term_sd, { centre: 0, lower: 0, upper: limits.shortTerm.upper }),
    ),
  });
});

// NIST/SEMATECH e-Handbook 6.3.2.2 (from memory): ten flow rates, mean 50.81, mean moving range 1.8778, limits 55.8041 and
// 45.8159 by the rounded d2 = 1.128.
test('individuals and moving ranges of the flow rates of the handbook', () => {
  const flow = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
  const { individuals, movingRange } = individualsLimits(flow);
  expect(individuals.centre).toBeCloseTo(50.81, 10);
  expect(movingRange.centre).toBeCloseTo(1.8778, 4);
  expect(individuals.upper).toBeCloseTo(55.8041, 2);
  expect(individuals.lower).toBeCloseTo(45.8159, 2);
  expect(movingRange.upper).toBeCloseTo(3.267 * 1.8778, 2);
  expect(movingRanges(flow)).toHaveLength(9);
});

test('a base period that is too short, flat or uneven is refused', () => {
  const short = Array.from({ length: 9 }, (_, i) => i);
  expect(() => individualsLimits(short)).toThrow('at least 10 points, found 9');
  expect(() => individualsLimits(new Array(12).fill(5))).toThrow('do not differ');
  expect(() => individualsLimits([...short, Number.NaN])).toThrow('finite');
  const groups = Array.from({ length: 12 }, (_, i) => (i === 4 ? [1, 2] : [1, 2, 3]));
  expect(() => meanRangeLimits(groups)).toThrow('subgroup 5 has 2 values, the first one 3');
});
