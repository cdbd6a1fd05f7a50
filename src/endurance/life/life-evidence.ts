import type { Criterion } from '../../documents/kinds.ts';
import { type Evidence, withoutEvidence } from '../../verdict/evidence.ts';
import { countedReliability, shownLife } from './demonstration.ts';
import type { LifeEstimate, LifeFit } from './life-fit.ts';
import type { TyreLife } from './lives.ts';

/** What lives say about one criterion, with one-sided bounds at its confidence. */
export function lifeEvidence(criterion: Criterion, fit: LifeFit, lives: readonly TyreLife[]): Evidence {
  const specimens = lives.length;
  if (specimens === 0) return withoutEvidence('none', 'no outcome of a tyre was given', 0);
  if (!lives.some(({ failed }) => failed)) return shownEvidence(criterion, lives);
  const found = askedFor(criterion, fit);
  if (found === null)
    return withoutEvidence('none', `this drum test gives no ${criterion.quantity}`, specimens);
  return {
    status: 'valid',
    estimate: found.value,
    standardError: found.standardError,
    lower: found.lower,
    upper: found.upper,
    method: 'censored-likelihood',
    interval: 'profile-likelihood',
    specimens,
    why: found.why,
  };
}

function askedFor({ quantity, probability, at, confidence }: Criterion, fit: LifeFit): LifeEstimate | null {
  switch (quantity) {
    case 'characteristicLife':
      return fit.characteristic(confidence, 1);
    case 'weibullShape':
      return fit.distribution === 'weibull' ? fit.shape(confidence, 1) : null;
    case 'lifeQuantile':
      return probability === null ? null : fit.quantile(probability, confidence, 1);
    case 'reliability':
      return at === null ? null : fit.reliability(at, confidence, 1);
    default:
      return null;
  }
}

/** Where nothing failed: bounds by counting. */
function shownEvidence(
  { quantity, probability, at, confidence }: Criterion,
  lives: readonly TyreLife[],
): Evidence {
  const specimens = lives.length;
  const evidence = (lower: number | null, why: string): Evidence => ({
    status: 'valid',
    estimate: null,
    standardError: null,
    lower,
    upper: null,
    method: 'success-run',
    interval: 'exact',
    specimens,
    why,
  });
  if (quantity === 'reliability' && at !== null) {
    const shown = countedReliability(lives, at, confidence, 1);
    return evidence(
      shown?.lower ?? null,
      shown === null ? 'no tyre failed, and none ran so far' : 'no tyre failed',
    );
  }
  const share =
    quantity === 'characteristicLife' ? 1 - Math.exp(-1) : quantity === 'lifeQuantile' ? probability : null;
  if (share === null) return withoutEvidence('none', `without a failure there is no ${quantity}`, specimens);
  return evidence(shownLife(lives, share, confidence), 'no tyre failed');
}
