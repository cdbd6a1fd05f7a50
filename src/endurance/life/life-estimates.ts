import { significant } from '../../quantity/format.ts';
import type { EnduranceEstimate } from '../../result/endurance.ts';
import type { LawName } from '../../statistics/law.ts';
import { shapeBiasFactor } from '../../statistics/life/shape-bias.ts';
import { countedReliability, shownLife } from './demonstration.ts';
import type { LifeEstimate, LifeFit } from './life-fit.ts';
import type { TyreLife } from './lives.ts';

/** The 10 % and 50 % points are always given, beside those that a specification asks for. */
const ALWAYS = [0.1, 0.5];

/** What is estimated from, and what is asked for beside the usual. */
export interface LifeBasis {
  readonly lives: readonly TyreLife[];
  readonly confidence: number;
  /** Shares failed. */
  readonly shares: readonly number[];
  /** km. */
  readonly distances: readonly number[];
}

/** The entries of the censored likelihood: characteristic life first, then shape, lives by share, reliabilities. */
export function estimatesOfLife(fit: LifeFit, basis: LifeBasis): EnduranceEstimate[] {
  const { confidence } = basis;
  const shares = [...new Set([...ALWAYS, ...basis.shares])].sort((a, b) => a - b);
  const distances = [...new Set(basis.distances)].sort((a, b) => a - b);
  if (!basis.lives.some(({ failed }) => failed)) return withoutFailure(fit, basis, shares, distances);
  const entry = entryOf(fit.distribution, basis);
  const isWeibull = fit.distribution === 'weibull';
  return [
    entry('characteristicLife', 'km', fit.characteristic(confidence, 2), {
      why: isWeibull ? null : `the life by which 63.2 % have failed, here of a ${fit.distribution} law`,
    }),
    isWeibull
      ? entry('weibullShape', '1', fit.shape(confidence, 2), { why: biasSentence(basis.lives) })
      : entry('lifeSpread', isOnLog(fit.distribution) ? '1' : 'km', fit.spread(confidence, 2)),
    ...shares.map((probability) =>
      entry('lifeQuantile', 'km', fit.quantile(probability, confidence, 2), { probability }),
    ),
    ...distances.map((at) => entry('reliability', '1', fit.reliability(at, confidence, 2), { at })),
    ...(isWeibull ? correctedShape(fit, basis) : []),
  ];
}

function isOnLog(distribution: LawName): boolean {
  return distribution === 'weibull' || distribution === 'lognormal';
}

function entryOf(distribution: LawName, { lives, confidence }: LifeBasis) {
  return (
    quantity: string,
    unit: string,
    found: LifeEstimate,
    more: { readonly probability?: number; readonly at?: number; readonly why?: string | null } = {},
  ): EnduranceEstimate => {
    const { probability, at, why = null } = more;
    return {
      quantity,
      method: 'censored-likelihood',
      distribution,
      ...(probability === undefined ? {} : { probability }),
      ...(at === undefined ? {} : { at }),
      unit,
      value: found.value,
      standardError: found.standardError,
      interval: {
        level: confidence,
        sides: 2,
        lower: found.lower,
        upper: found.upper,
        method: 'profile-likelihood',
      },
      specimens: lives.length,
      drops: 0,
      why: found.why ?? unboundedSentence(found) ?? why,
    };
  };
}

function unboundedSentence({ lower, upper }: LifeEstimate): string | null {
  if (lower !== null && upper !== null) return null;
  const side = lower === null && upper === null ? 'on both sides' : lower === null ? 'downwards' : 'upwards';
  return `the interval is unbounded ${side}: these lives do not exclude any value there`;
}

/** Without a failure no law can be fitted: what so many survivals show by counting stands in its place. */
function withoutFailure(
  { distribution }: LifeFit,
  { lives, confidence }: LifeBasis,
  shares: readonly number[],
  distances: readonly number[],
): EnduranceEstimate[] {
  const base = { specimens: lives.length, drops: 0, value: null, standardError: null } as const;
  const none = lives.length === 0 ? 'there are no outcomes of tyres to estimate from' : 'no tyre failed';
  const bound = (lower: number | null) =>
    lower === null ? null : ({ level: confidence, sides: 1, lower, upper: null, method: 'exact' } as const);
  const life = (quantity: string, share: number): EnduranceEstimate => {
    const lower = shownLife(lives, share, confidence);
    const why =
      lower === null
        ? `${none}, and too few ran far enough to show by counting that at most ${significant(100 * share, 3)} % fail`
        : `${none}: a lower bound by counting, free of any law`;
    const probability = quantity === 'lifeQuantile' ? { probability: share } : {};
    return {
      ...base,
      quantity,
      method: 'success-run',
      ...probability,
      unit: 'km',
      interval: bound(lower),
      why,
    };
  };
  const fitted = `${none}, so no ${distribution} law can be fitted`;
  return [
    life('characteristicLife', 1 - Math.exp(-1)),
    {
      ...base,
      quantity: 'weibullShape',
      method: 'censored-likelihood',
      distribution,
      unit: '1',
      interval: null,
      why: fitted,
    },
    ...shares.map((share) => life('lifeQuantile', share)),
    ...distances.map((at): EnduranceEstimate => {
      const shown = countedReliability(lives, at, confidence, 1);
      const why =
        shown === null
          ? `${none}, and none ran ${significant(at, 6)} km`
          : `${none}: the lower bound of Clopper and Pearson on ${shown.survived} of ${shown.n} tyres that ran so far`;
      return {
        ...base,
        quantity: 'reliability',
        method: 'success-run',
        at,
        unit: '1',
        interval: bound(shown?.lower ?? null),
        why,
      };
    }),
  ];
}

/** How far the likelihood's shape is off on average from so few failures. */
function biasSentence(lives: readonly TyreLife[]): string | null {
  const failures = lives.filter(({ failed }) => failed).length;
  if (failures < 3)
    return `from ${failures} failures the shape is hardly known, and on average much too high`;
  const over = 100 * (1 / shapeBiasFactor(failures) - 1);
  if (over < 1) return null;
  const cut = failures === lives.length ? '' : ' or more, since lives were cut short';
  return `from ${failures} failures the likelihood's shape is too high by ${significant(over, 2)} % on average${cut}: lives scatter more than it says`;
}

/** The shape with Ross's factor, beside that of the likelihood. */
function correctedShape(fit: LifeFit, { lives, confidence }: LifeBasis): EnduranceEstimate[] {
  const failures = lives.filter(({ failed }) => failed).length;
  const { value } = fit.shape(confidence, 2);
  if (value === null || failures < 3) return [];
  const why =
    failures === lives.length
      ? 'times (n − 2)/(n − 0.68); the interval is that of the likelihood'
      : 'times (n − 2)/(n − 0.68) of as many complete lives as failed, since lives were cut short an approximation; the interval is that of the likelihood';
  return [
    {
      quantity: 'weibullShape',
      method: 'bias-corrected',
      distribution: 'weibull',
      unit: '1',
      value: value * shapeBiasFactor(failures),
      standardError: null,
      interval: null,
      specimens: lives.length,
      drops: 0,
      why,
    },
  ];
}
