import type { ComparedPair, PercentileDifference, WithInterval } from '../result/comparison.ts';
import { chiSquaredLaw } from '../statistics/laws/gamma.ts';
import type { Law } from '../statistics/laws/laws.ts';
import { normal } from '../statistics/laws/normal.ts';
import { prepareProfile } from '../statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../statistics/likelihood/critical.ts';
import { gatherObservations, type Observation, toScale } from '../statistics/likelihood/observation.ts';
import { testQuantile } from '../statistics/likelihood/profile.ts';
import { fitRegression, type RegressionFit } from '../statistics/regression/fit.ts';
import { predictQuantile } from '../statistics/regression/predict.ts';
import { ratioTest } from '../statistics/regression/ratio-test.ts';
import { explainRefusal } from '../statistics/regression/refusal.ts';
import { DIFFERENCE, likelihoodInterval, profileOf, RATIO, type Statistic } from './intervals.ts';
import { throughQuantiles } from './profile.ts';

/** Shares failed that are compared: the median is the headline. */
export const SHARES = [0.5, 0.1] as const;

/** One construction's looks at its strength, J. */
export type Looks = readonly Observation[];

export type PairDifferences = Pick<ComparedPair, 'differences' | 'equalSpreads' | 'smallestRatio' | 'p'>;

/**
 * Two constructions by one censored likelihood, second against first: with the construction as factor and one spread,
 * and with a spread each. Intervals are those of the profile likelihood of the ratio or difference itself.
 */
export function comparePair(first: Looks, second: Looks, law: Law, confidence: number): PairDifferences {
  const common = fitPair(first, second, law, false);
  const separate = fitPair(first, second, law, true);
  const critical = likelihoodRatioCritical(confidence, 2);
  const differences = SHARES.flatMap((share) => [
    differenceAt(share, 'common', common, statisticCommon(first, second, law, share), critical),
    differenceAt(share, 'separate', separate, statisticSeparate(first, second, law, share), critical),
  ]);
  const bothFit = common.kind === 'exists' && separate.kind === 'exists';
  const test = bothFit ? ratioTest(common, separate) : null;
  return {
    differences,
    p: differences[0]!.p,
    equalSpreads: test && { statistic: test.statistic, p: test.p },
    smallestRatio: common.kind === 'exists' ? smallestRatio(common, confidence) : null,
  };
}

/** p of the hypothesis that both medians are equal, under a common spread; null where there is no estimate. */
export function equalMedians(first: Looks, second: Looks, law: Law) {
  const common = fitPair(first, second, law, false);
  if (common.kind !== 'exists') return null;
  const values = [quantileOf(common, 0.5, 'first'), quantileOf(common, 0.5, 'second')] as const;
  const same = fitRegression({ observations: [...first, ...second], covariates: [], terms: [] }, law);
  return { values, p: same.kind === 'exists' ? ratioTest(same, common).p : null };
}

/** Ratio of the medians under a common spread, with two-sided limits or with bounds that hold one by one. */
export function ratioOfMedians(
  first: Looks,
  second: Looks,
  law: Law,
  confidence: number,
  sides: 1 | 2,
): Omit<WithInterval, 'why'> {
  const critical = likelihoodRatioCritical(confidence, sides);
  const of = statisticCommon(first, second, law, 0.5);
  return differenceAt(0.5, 'common', fitPair(first, second, law, false), of, critical).ratio;
}

type PairFit = ReturnType<typeof fitRegression>;

function fitPair(first: Looks, second: Looks, law: Law, apart: boolean): PairFit {
  const values = [...first.map(() => 'first'), ...second.map(() => 'second')];
  return fitRegression(
    {
      observations: [...first, ...second],
      covariates: [{ name: 'construction', kind: 'factor', values }],
      terms: [['construction']],
      ...(apart ? { scaleBy: 'construction' } : {}),
    },
    law,
  );
}

function quantileOf(fit: RegressionFit, share: number, construction: string): number {
  const group = fit.scales.length > 1 ? construction : null;
  return predictQuantile(fit, share, { construction }, group).value;
}

function differenceAt(
  probability: number,
  spreads: 'common' | 'separate',
  fit: PairFit,
  statistic: (best: readonly [number, number]) => Statistic,
  critical: number,
): PercentileDifference {
  const head = { probability, spreads, interval: 'profile-likelihood' } as const;
  const none = (why: string): WithInterval => ({ value: null, lower: null, upper: null, why });
  if (fit.kind !== 'exists') {
    const why = none(explainRefusal(fit).replaceAll('construction second', 'the construction'));
    return { ...head, values: [null, null], ratio: why, difference: why, p: null };
  }
  const best = [quantileOf(fit, probability, 'first'), quantileOf(fit, probability, 'second')] as [
    number,
    number,
  ];
  if (best.some((energy) => energy <= 0)) {
    const why = none('the law puts this point at or below 0 J: no ratio can be told');
    return { ...head, values: best, ratio: why, difference: why, p: null };
  }
  const of = statistic(best);
  return {
    ...head,
    values: best,
    ratio: likelihoodInterval(of, best, RATIO, critical),
    difference: likelihoodInterval(of, best, DIFFERENCE, critical),
    p: chiSquaredLaw(1).sf(profileOf(of, best, RATIO)(1)),
  };
}

function statisticCommon(first: Looks, second: Looks, law: Law, share: number) {
  const samples = [first, second].map((looks) => gatherObservations(looks, law.scale));
  const z = law.standard.quantile(share);
  const ends = [...first, ...second]
    .flatMap(({ lower, upper }) => [lower, upper])
    .filter((end) => Number.isFinite(end) && end > 0)
    .map((end) => toScale(end, law.scale));
  const range = Math.max(...ends) - Math.min(...ends) || 1;
  const at = (places: readonly number[]) =>
    throughQuantiles(
      samples,
      places.map((place) => toScale(place, law.scale)),
      law.standard,
      z,
      range,
    );
  return (best: readonly [number, number]): Statistic => {
    const most = at(best);
    return (a, b) => 2 * (most - at([a, b]));
  };
}

function statisticSeparate(first: Looks, second: Looks, law: Law, share: number) {
  const [a, b] = [first, second].map((looks) =>
    prepareProfile(gatherObservations(looks, law.scale), law.standard),
  );
  return (): Statistic => (x, y) =>
    testQuantile(a!, share, x).statistic + testQuantile(b!, share, y).statistic;
}

/**
 * The smallest ratio of medians above one that a test at this confidence would have found with a chance of 80 %: by the
 * standard error s of the logarithm of the ratio, exp((z(1 − α/2) + z(0.8))·s), s by the delta method.
 */
function smallestRatio(fit: RegressionFit, confidence: number): number | null {
  const [a, b] = [quantileOf(fit, 0.5, 'first'), quantileOf(fit, 0.5, 'second')];
  if (a <= 0 || b <= 0) return null;
  const z = fit.law.standard.quantile(0.5);
  // ln m = ln of the fitted median on the identity scale, the fitted median itself on the log scale.
  const [va, vb] = fit.law.scale === 'log' ? [1, 1] : [1 / a, 1 / b];
  const spread = fit.scales[0]!.value;
  const gradient = [vb - va, vb, (vb - va) * spread * z];
  let variance = 0;
  for (const [i, g] of gradient.entries())
    for (const [k, h] of gradient.entries()) variance += g * h * fit.covariance[i * gradient.length + k]!;
  const both = normal.quantile(0.5 + confidence / 2) + normal.quantile(0.8);
  return Math.exp(both * Math.sqrt(variance));
}
