import { noncentralStudentLaw } from '../laws/noncentral-student.ts';
import { normal } from '../laws/normal.ts';

/**
 * The one-sided normal tolerance factor k: of `n` values read singly, mean − k·s lies below the level that the share
 * `proportion` exceeds, in the share `confidence` of samples.
 *
 *   k = t′(confidence; n − 1, z·√n)/√n, z = Φ⁻¹(proportion), t′ the quantile of the noncentral t
 *
 * (Owen 1963; ISO 16269-6). Throws a RangeError for n below 2 or shares outside (0, 1).
 */
export function toleranceFactor(proportion: number, confidence: number, n: number): number {
  if (!(n >= 2)) throw new RangeError(`n ${n} is below 2`);
  for (const [name, share] of Object.entries({ proportion, confidence }))
    if (!(share > 0 && share < 1)) throw new RangeError(`${name} ${share} is not between 0 and 1`);
  const root = Math.sqrt(n);
  return noncentralStudentLaw(n - 1, normal.quantile(proportion) * root).quantile(confidence) / root;
}
