import type { LawName } from '../law.ts';
import { logistic } from './logistic.ts';
import { normal } from './normal.ts';
import { smallestExtremeValue } from './smallest-extreme-value.ts';
import type { StandardLaw } from './standard-law.ts';

/** The standard law that z = (y − location)/scale follows, and whether y is the strength or life x itself or ln x. */
export interface Law {
  readonly standard: StandardLaw;
  readonly scale: 'identity' | 'log';
}

/** The laws that can be assumed, by name. */
export const laws: Readonly<Record<LawName, Law>> = {
  normal: { standard: normal, scale: 'identity' },
  lognormal: { standard: normal, scale: 'log' },
  logistic: { standard: logistic, scale: 'identity' },
  weibull: { standard: smallestExtremeValue, scale: 'log' },
};
