import type { ProfileBasis } from '../statistics/likelihood/constrained.ts';
import { testQuantile } from '../statistics/likelihood/profile.ts';

/**
 * Signed root of the likelihood-ratio statistic that a share p has failed at x: positive where the estimated quantile lies
 * above x. Bounds of the quantile follow without being sought: the lower one lies above x exactly when the root is above
 * its critical value, the upper one below x when it is below minus that.
 *
 * @param x on the original scale
 */
export function signedRoot(basis: ProfileBasis, p: number, x: number): number {
  const root = Math.sqrt(testQuantile(basis, p, x).statistic);
  const y = basis.sample.scale === 'log' ? Math.log(x) : x;
  return bestQuantile(basis, p) > y ? root : -root;
}

/**
 * The quantile where the likelihood is best, on the fitted scale. Without a best law: the middle of the gap, the level
 * that failures and survivals share, or ±∞ where it runs off.
 */
export function bestQuantile({ fit, ends, law }: ProfileBasis, p: number): number {
  switch (fit.kind) {
    case 'exists':
      return fit.location + fit.scale * law.quantile(p);
    case 'no-failure':
      return Infinity;
    case 'all-failed':
      return -Infinity;
    case 'wrong-direction':
      return p > ends.failed / (ends.failed + ends.survived) ? Infinity : -Infinity;
    default:
      return 0.5 * (ends.highestLower + ends.lowestUpper);
  }
}
