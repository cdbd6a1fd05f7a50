import { calibratedLimits } from './bounds.ts';
import { countEstimators } from './count-estimators.ts';
import type { Design } from './design.ts';
import type { Estimator } from './estimator.ts';
import { quantileEstimator, spreadEstimator } from './likelihood-estimators.ts';
import { notedHeights } from './noted-heights.ts';
import type { AssumedStrength } from './strength.ts';

/** What estimators need to know of the tyres. */
export type TrueTyres = Pick<AssumedStrength, 'law' | 'anyOffset'>;

/**
 * The numbers that `analyze` gives for a test of this design, in its order, each with the intervals whose promise is put
 * to the test.
 *
 * @param withIntervals false for the errors of the estimates alone, which is several times as fast
 */
export function estimatorsFor(design: Design, tyres: TrueTyres, withIntervals = true): Estimator[] {
  const all = evaluated(design, tyres);
  if (withIntervals) return all;
  return all.map((estimator) => ({ ...estimator, intervals: [] }));
}

function evaluated(design: Design, { law: truth, anyOffset }: TrueTyres): Estimator[] {
  const { protocol, specification, energyPerLevel } = design;
  const { distribution, confidence, method, step, start } = protocol;
  const asked = specification?.criteria.flatMap(({ probability }) => probability ?? []) ?? [];
  const tails = [...new Set([0.1, ...asked])].filter((share) => share !== 0.5).sort((a, b) => a - b);
  const limits = calibratedLimits(design);
  const calibrated = limits && (anyOffset ? limits.besideAny : limits.beside);
  const found = [
    quantileEstimator(distribution, 0.5, confidence, calibrated),
    spreadEstimator(distribution, truth, confidence),
    ...tails.map((share) => quantileEstimator(distribution, share, confidence, calibrated)),
  ];
  if (method === 'rising-height') return [...found, notedHeights];
  if (method !== 'up-and-down' || start === null || step === null) return found;
  const fits = step.kind === 'additive' ? distribution === 'normal' : distribution === 'lognormal';
  if (!fits || (distribution !== 'normal' && distribution !== 'lognormal')) return found;
  const origin = start * energyPerLevel;
  const grid =
    step.kind === 'additive'
      ? { origin, step: step.size * energyPerLevel }
      : { origin: Math.log(origin), step: Math.log1p(step.ratio) };
  return [
    ...found,
    ...countEstimators({ grid, distribution, isTrueLaw: truth === distribution, confidence }),
  ];
}
