import type { LawName } from '../law.ts';
import { laws } from '../laws/laws.ts';
import type { NoEstimate } from '../likelihood/existence.ts';
import { fitLocationScale } from '../likelihood/fit.ts';
import { gatherObservations, type Observation } from '../likelihood/observation.ts';

/** How well a law fits, beside the others. */
export interface LawFit {
  readonly law: LawName;
  readonly logLikelihood: number;
  /** 2·(parameters) − 2·log-likelihood, with two parameters for every law (Akaike 1974). */
  readonly aic: number;
  /** Akaike weight: exp(−Δ/2) over its sum, Δ the difference from the smallest AIC. */
  readonly weight: number;
}

/** The laws that have a fit, the best first, and why the others have none. */
export interface LawComparison {
  readonly fits: readonly LawFit[];
  readonly without: readonly { readonly law: LawName; readonly why: NoEstimate | 'not-positive' }[];
}

/**
 * Fits each law to the same observations. Likelihoods are of x itself, so that they can be compared across laws. All have two
 * parameters: the order is that of the likelihoods. A law of positive values has none where a level is not above 0.
 */
export function compareLaws(observations: readonly Observation[], names: readonly LawName[]): LawComparison {
  const fits: { law: LawName; logLikelihood: number; aic: number }[] = [];
  const without: LawComparison['without'][number][] = [];
  for (const law of names) {
    const { standard, scale } = laws[law];
    if (scale === 'log' && observations.some((o) => !(o.upper > 0))) {
      without.push({ law, why: 'not-positive' });
      continue;
    }
    const fit = fitLocationScale(gatherObservations(observations, scale), standard);
    if (fit.kind === 'exists')
      fits.push({ law, logLikelihood: fit.logLikelihood, aic: 4 - 2 * fit.logLikelihood });
    else without.push({ law, why: fit });
  }
  fits.sort((a, b) => a.aic - b.aic);
  const best = fits[0]?.aic ?? 0;
  const total = fits.reduce((sum, f) => sum + Math.exp((best - f.aic) / 2), 0);
  return { fits: fits.map((f) => ({ ...f, weight: Math.exp((best - f.aic) / 2) / total })), without };
}
