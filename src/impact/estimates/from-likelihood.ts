import type { Estimate } from '../../result/estimate.ts';
import { type LevelScale, scaled } from './asked-for.ts';
import { CALIBRATION_SEED } from './calibrated.ts';
import type { Basis } from './from-count.ts';
import type { StrengthEstimate, StrengthFit } from './strength.ts';

/** The 10 % and 50 % points are always given, beside those that a specification asks for. */
const ALWAYS = [0.1, 0.5];

/**
 * The entries of the censored likelihood: median first, then spread, low percentiles, and the median as a level. Where
 * their intervals are calibrated, the same quantities follow with those of the profile likelihood.
 *
 * @param probabilities shares failed that are asked for beside the usual ones.
 * @param level what the median is as a height or a falling mass; null where no level stands for an energy.
 */
export function estimatesFromLikelihood(
  fit: StrengthFit,
  { confidence, specimens, drops }: Basis,
  probabilities: readonly number[],
  level: LevelScale | null,
): Estimate[] {
  const entry = (
    quantity: string,
    unit: string,
    found: StrengthEstimate,
    probability?: number,
  ): Estimate => ({
    quantity,
    method: 'censored-likelihood',
    distribution: fit.distribution,
    ...(probability === undefined ? {} : { probability }),
    unit,
    value: found.value,
    standardError: found.standardError,
    interval: {
      level: confidence,
      sides: 2,
      lower: found.lower,
      upper: found.upper,
      method: found.interval,
      ...(found.interval === 'calibrated' ? { seed: CALIBRATION_SEED } : {}),
    },
    specimens,
    drops,
    why: found.why ?? unboundedSentence(found, level?.unit === 'kg' ? 'mass' : 'height'),
  });
  const shares = [...new Set([...ALWAYS, ...probabilities])].sort((a, b) => a - b);
  const spreadUnit = fit.distribution === 'normal' || fit.distribution === 'logistic' ? 'J' : '1';
  const quantiles = (quantile: StrengthFit['quantile']) => {
    const median = quantile(0.5, confidence, 2);
    return {
      median: entry('medianFailureEnergy', 'J', median),
      shares: shares.map((share) =>
        entry('failureEnergyQuantile', 'J', quantile(share, confidence, 2), share),
      ),
      level:
        level === null
          ? { ...entry('medianFailureHeight', 'mm', NOTHING), interval: null, why: NO_HEIGHT }
          : entry(level.quantity, level.unit, scaled(median, level.perEnergy)),
    };
  };
  const spread = entry('energySpread', spreadUnit, fit.spread(confidence, 2));
  const first = quantiles(fit.quantile);
  const headline = [first.median, spread, ...first.shares, first.level];
  if (first.median.interval?.method !== 'calibrated') return headline;
  const second = quantiles(fit.profileQuantile);
  const beside = level === null ? [] : [second.level];
  return [...headline, second.median, ...second.shares, ...beside];
}

const NO_HEIGHT =
  'the drops were made with several masses, or by speed, so that no height stands for an energy';

const NOTHING: StrengthEstimate = {
  value: null,
  standardError: null,
  lower: null,
  upper: null,
  interval: 'profile-likelihood',
  why: null,
};

function unboundedSentence(
  { lower, upper, interval }: StrengthEstimate,
  noun: 'height' | 'mass',
): string | null {
  if (lower !== null && upper !== null) return null;
  const side = lower === null && upper === null ? 'on both sides' : lower === null ? 'downwards' : 'upwards';
  const also = interval === 'calibrated' ? ', or a strength so far off that no limit can be named' : '';
  return `the interval is unbounded ${side}: these drops do not exclude that the chance of failure is the same at every ${noun}${also}`;
}
