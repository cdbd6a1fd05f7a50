import { percent, plain } from '../../quantity/amount.ts';
import type { Verdict } from '../../result/criterion.ts';
import { named } from './page.ts';

/** A quantity of a result in the words of the field. */
export function quantityName(of: {
  readonly quantity: string;
  readonly probability?: number;
  readonly at?: number;
  readonly unit?: string;
  readonly variant?: string;
}): string {
  const { quantity, probability, at, unit, variant } = of;
  if (quantity === 'failureEnergyQuantile' && probability !== undefined) {
    return `energy at which ${percent(Number(probability.toPrecision(3)))} fail`;
  }
  if (quantity === 'lifeQuantile' && probability !== undefined) {
    return `life by which ${percent(probability)} fail`;
  }
  if (quantity === 'reliability' && at !== undefined) return `reliability at ${plain(at)} km`;
  if (quantity === 'weibullShape') return 'Weibull shape';
  if (quantity === 'energySpread' && (variant === 'between-tyres' || variant === 'from-hit-to-hit')) {
    return `spread ${methodName(variant)}`;
  }
  if (quantity === 'energySpread') return unit === '1' ? 'spread of ln energy' : 'spread of failure energy';
  const words = named(quantity).replace(/(?<=\p{Ll})\p{Lu}/gu, (letter) => ` ${letter.toLowerCase()}`);
  return probability === undefined ? words : `${words} at ${percent(probability)}`;
}

/** `censored-likelihood` as words; what the field writes with hyphens keeps them. */
export function methodName(method: string): string {
  const known = METHOD_NAMES[method];
  if (known !== undefined) return known;
  return named(method).replaceAll('-', ' ').replaceAll('up and down', 'up-and-down');
}

/** Methods whose names are more than their words. */
const METHOD_NAMES: Readonly<Record<string, string>> = {
  'profile-likelihood': 'profile-likelihood',
  wald: 'Wald',
  fieller: 'Fieller',
  'palmgren-miner': 'Palmgren–Miner',
  'student-t': "Student's t",
  'greenwood-log': 'Greenwood (log)',
  'transformed-up-and-down': 'transformed up-and-down',
  langlie: 'Langlie',
  'd-optimal': 'D-optimal',
  'spearman-karber': 'Spearman–Kärber',
  nonparametric: 'non-parametric (Turnbull)',
  isotonic: 'isotonic failure curve',
  'centred-isotonic': 'centred isotonic failure curve',
  'small-sample': 'small sample, spread fixed at the step',
  'bias-corrected-spread': 'spread by count, corrected by n/(n − 3)',
  'tolerance-factor': 'classical tolerance-factor limit',
  'order-limits': 'law-free',
  'specimen-effect': 'specimen effect',
  'single-hit-on-a-fresh-tyre': 'single hit on a fresh tyre',
};

/** A verdict as a word of a sentence. */
export function verdictWord(verdict: Verdict): string {
  return verdict === 'not-tested' ? 'not tested' : verdict;
}

/** `C-114, C-115 and 3 more`. */
export function listed(names: readonly string[], most: number): string {
  const rest = names.length - most;
  if (rest > 0) return `${names.slice(0, most).join(', ')} and ${rest} more`;
  if (names.length < 2) return names.join('');
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
