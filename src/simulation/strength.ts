import type { Step } from '../documents/kinds.ts';
import type { LawName } from '../statistics/law.ts';
import { type Law, laws } from '../statistics/laws/laws.ts';
import { normal } from '../statistics/laws/normal.ts';
import { fromScale } from '../statistics/likelihood/observation.ts';

/** What is assumed of the tyres: an answer known beforehand, against which a protocol is measured. */
export interface AssumedStrength {
  readonly law: LawName;
  /** J. */
  readonly median: number;
  /** Scale parameter of the law: J for normal and logistic, of ln E for lognormal and Weibull. */
  readonly spread: number;
  /** Share of the variance of strength that lies between specimens, 0 to 1; the rest is from hit to hit. */
  readonly between: number;
  /** Share of its strength that a specimen loses by each hit it survives, 0 to below 1. */
  readonly damage: number;
  /**
   * Whether each test's median is moved by a random share of a step, at most half of one either way: results then do
   * not hang on where the levels happen to lie beside the median.
   */
  readonly anyOffset: boolean;
}

/** The true law of one simulated test, in J. */
export interface TrueStrength {
  readonly median: number;
  readonly spread: number;
  /** J below which a share fails at the first hit. */
  quantile(share: number): number;
}

/** A truth with what drawing outcomes from it needs. */
export interface Tyres extends TrueStrength {
  /** Chance that a hit at an energy (J) fails a specimen whose own effect is u, after so many earlier hits. */
  chance(energy: number, effect: number, earlier: number): number;
}

/**
 * The tyres of one test. A hit's strength is Q(Φ(√b·u + √(1 − b)·v)), u standard normal for the specimen and v for the
 * hit, so that each hit by itself follows the law whichever it is (a Gaussian copula; for the normal law two normal
 * components). A hit at E after k others is like one at E/(1 − damage)ᵏ on a fresh specimen.
 *
 * @param offset share of a step by which the median is moved
 */
export function tyresOf(
  assumed: AssumedStrength,
  step: Step | null,
  energyPerLevel: number,
  offset: number,
): Tyres {
  const law = laws[assumed.law];
  const median = movedMedian(assumed.median, step, energyPerLevel, offset);
  const { spread, between, damage } = assumed;
  const location = locationOf(law, median, spread);
  const share = Math.sqrt(between);
  const rest = Math.sqrt(1 - between);
  const { standard } = law;
  return {
    median,
    spread,
    quantile: (p) => fromScale(location + standard.quantile(p) * spread, law.scale),
    chance(energy, effect, earlier) {
      const fresh = earlier === 0 || damage === 0 ? energy : energy / (1 - damage) ** earlier;
      const y = law.scale === 'log' ? Math.log(fresh) : fresh;
      const whole = standard.cdf((y - location) / spread);
      if (between === 0) return whole;
      const z = normal.quantile(whole) - share * effect;
      return between === 1 ? (z >= 0 ? 1 : 0) : normal.cdf(z / rest);
    },
  };
}

/** The location, on the fitted scale, of the law whose median is given in J. */
function locationOf({ standard, scale }: Law, median: number, spread: number): number {
  return (scale === 'log' ? Math.log(median) : median) - standard.quantile(0.5) * spread;
}

function movedMedian(median: number, step: Step | null, energyPerLevel: number, offset: number): number {
  if (offset === 0 || step === null) return median;
  return step.kind === 'additive'
    ? median + offset * step.size * energyPerLevel
    : median * (1 + step.ratio) ** offset;
}
