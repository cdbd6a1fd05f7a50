import type { Corner } from '../isotonic/failure-curve.ts';

/** The mean of a trimmed failure curve and its derivative by the share failed at each corner. */
export interface TrimmedMean {
  readonly mean: number;
  readonly slopes: readonly number[];
}

/** Shares as near as this are the same: a trim is often the share of an end corner, less rounding. */
const EDGE = 1e-12;

/**
 * The mean of the level over the shares `trim` to 1 − `trim` of a curve that is straight between corners:
 *
 *   ∫ x dp / (1 − 2·trim) over the part of the curve between those shares.
 *
 * On a piece from (x₀, p₀) to (x₁, p₁) cut to the shares a to b the integral is (b − a)(x(a) + x(b))/2. Its derivatives
 * follow by moving p₀ or p₁ with a and b held where they are cut, or moved along where they are the corner itself.
 * Where corner and cut coincide the cut is held and the corner moves outwards: inwards it would leave no mean.
 */
export function trimCurve(corners: readonly Corner[], trim: number): TrimmedMean {
  const slopes = new Array<number>(corners.length).fill(0);
  let integral = 0;
  for (let i = 0; i + 1 < corners.length; i++) {
    const { level: x0, share: p0 } = corners[i]!;
    const { level: x1, share: p1 } = corners[i + 1]!;
    const a = Math.max(p0, trim);
    const b = Math.min(p1, 1 - trim);
    if (p1 === p0) {
      // A flat piece has no area, but raising its right end shifts the mass of that end back to its middle.
      if (p0 > trim + EDGE && p0 < 1 - trim - EDGE) {
        slopes[i]! -= (x0 + x1) / 2;
        slopes[i + 1]! += (x0 + x1) / 2;
      }
      continue;
    }
    if (b < a) continue;
    const rise = p1 - p0;
    const width = x1 - x0;
    const atA = x0 + ((a - p0) / rise) * width;
    const atB = x0 + ((b - p0) / rise) * width;
    integral += ((b - a) * (atA + atB)) / 2;
    // d/dp of the line x(p) at fixed share s: −width·(p1 − s)/rise² for p0, −width·(s − p0)/rise² for p1.
    const shift0 = (-width * (2 * p1 - a - b)) / (2 * rise * rise);
    const shift1 = (-width * (a + b - 2 * p0)) / (2 * rise * rise);
    slopes[i]! += (b - a) * shift0 - (p0 > trim + EDGE ? x0 : 0);
    slopes[i + 1]! += (b - a) * shift1 + (p1 < 1 - trim - EDGE ? x1 : 0);
  }
  const share = 1 - 2 * trim;
  return { mean: integral / share, slopes: slopes.map((s) => s / share) };
}
