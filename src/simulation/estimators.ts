import type { ImpactProtocol } from '../documents/kinds.ts';
import { laws } from '../statistics/laws/laws.ts';
import type { Grid } from '../statistics/up-and-down/grid.ts';
import { calibratedLimits } from './bounds.ts';
import { countEstimators } from './count-estimators.ts';
import { curveEstimators } from './curve-estimators.ts';
import type { Design } from './design.ts';
import type { Estimator } from './estimator.ts';
import { quantileEstimator, spreadEstimator } from './likelihood-estimators.ts';
import { notedHeights } from './noted-heights.ts';
import { specimenEstimators } from './specimen-estimator.ts';
import type { AssumedStrength } from './strength.ts';

/** What estimators need to know of the tyres. */
export type TrueTyres = Pick<AssumedStrength, 'law' | 'anyOffset'>;

/** What is wanted of the tests. */
export interface Wanted {
  /** False for the errors of the estimates alone, which is several times as fast. */
  readonly withIntervals: boolean;
  /** Whether the specimen effect is fitted too, which takes milliseconds a test. */
  readonly specimenEffect: boolean;
}

export const WHOLE: Wanted = { withIntervals: true, specimenEffect: false };

/**
 * The numbers that `analyze` gives for a test of this design, in its order, each with the intervals whose promise is put
 * to the test.
 */
export function estimatorsFor(design: Design, tyres: TrueTyres, wanted: Wanted = WHOLE): Estimator[] {
  const all = evaluated(design, tyres, wanted);
  if (wanted.withIntervals) return all;
  return all.map((estimator) => ({ ...estimator, intervals: [] }));
}

function evaluated(
  design: Design,
  { law: truth, anyOffset }: TrueTyres,
  { specimenEffect }: Wanted,
): Estimator[] {
  const { protocol, specification } = design;
  const { distribution, confidence, method } = protocol;
  const asked = specification?.criteria.flatMap(({ probability }) => probability ?? []) ?? [];
  const tails = [...new Set([0.1, ...asked])].filter((share) => share !== 0.5).sort((a, b) => a - b);
  const limits = calibratedLimits(design);
  const calibrated = limits && (anyOffset ? limits.besideAny : limits.beside);
  const found = [
    quantileEstimator(distribution, 0.5, confidence, calibrated),
    spreadEstimator(distribution, truth, confidence),
    ...tails.map((share) => quantileEstimator(distribution, share, confidence, calibrated)),
  ];
  const { scale } = laws[distribution];
  const specimen =
    specimenEffect && (distribution === 'normal' || distribution === 'lognormal')
      ? specimenEstimators(confidence, scale, damageOf(protocol))
      : [];
  if (method === 'rising-height') return [...found, ...specimen, notedHeights];
  const isOneSeries = protocol.sites.each !== 'series-per-site';
  const grid = method === 'up-and-down' && isOneSeries ? gridOf(design) : null;
  const counted =
    grid === null || (distribution !== 'normal' && distribution !== 'lognormal')
      ? []
      : countEstimators({ grid, distribution, isTrueLaw: truth === distribution, confidence });
  return [...found, ...specimen, ...counted, ...curveEstimators(confidence, scale)];
}

/** The grid of the count formula, on the scale of the law; null where the levels are not equally spaced on it. */
function gridOf({ protocol, energyPerLevel }: Design): Grid | null {
  const { start, step, distribution } = protocol;
  if (start === null || step === null) return null;
  const origin = start * energyPerLevel;
  if (step.kind === 'additive')
    return distribution === 'normal' ? { origin, step: step.size * energyPerLevel } : null;
  return distribution === 'lognormal' ? { origin: Math.log(origin), step: Math.log1p(step.ratio) } : null;
}

function damageOf({ damagePerHit }: ImpactProtocol): number {
  return typeof damagePerHit === 'number' ? damagePerHit : 0;
}
