import { compensatedSum } from '../summary/moments.ts';

/** How a sum of differences ranks among those of all ways in which chance could have set their signs. */
export interface Randomisation {
  /** Patterns of signs in all: 2ⁿ. */
  readonly patterns: number;
  /** Patterns with a larger sum, and with the same one (the one seen among them). */
  readonly above: number;
  readonly equal: number;
  /** Share of the patterns with a sum at least as large; and with one at least as far from 0. */
  readonly pOneSided: number;
  readonly pTwoSided: number;
}

/** More pairs than this would need a sample of the patterns. */
const MOST_PAIRS = 24;

/**
 * The randomisation test of pairs (Fisher 1935; Box, Hunter & Hunter 1978, chapter 4): were there no difference, each difference
 * could as well have had the other sign. It needs no law, but a random assignment within the pairs.
 *
 * @param differences first minus second, of at most 24 pairs; else a RangeError
 */
export function randomisationTest(differences: readonly number[]): Randomisation {
  const n = differences.length;
  if (n < 1 || n > MOST_PAIRS)
    throw new RangeError(`${n} pairs; all sign patterns are counted for 1 to ${MOST_PAIRS}`);
  const sizes = differences.map(Math.abs);
  const seen = compensatedSum(differences);
  const largest = compensatedSum(sizes);
  // Sums that differ by rounding only are equal.
  const hair = 1e-9 * largest;
  let above = 0;
  let equal = 0;
  let far = 0;
  const patterns = 2 ** n;
  let sum = -largest;
  const positive = new Array<boolean>(n).fill(false);
  for (let pattern = 0; pattern < patterns; pattern++) {
    if (pattern > 0) {
      // Gray's order: one sign changes from each pattern to the next.
      const flip = 31 - Math.clz32(pattern & -pattern);
      positive[flip] = !positive[flip];
      sum += positive[flip] ? 2 * sizes[flip]! : -2 * sizes[flip]!;
    }
    if (sum > seen + hair) above++;
    else if (sum >= seen - hair) equal++;
    if (Math.abs(sum) >= Math.abs(seen) - hair) far++;
  }
  return { patterns, above, equal, pOneSided: (above + equal) / patterns, pTwoSided: far / patterns };
}
