import type { StandardLaw } from '../laws/standard-law.ts';
import { emptyTerm, sumTerms } from '../likelihood/term.ts';
import type { Cell } from './cells.ts';
import { steepestCommonRise } from './linear-program.ts';
import { maximise } from './newton.ts';
import { orthogonalise } from './orthogonal.ts';

/** Why no finite effects and positive finite spread fit best, in the coordinates of the cells' rows. */
export type Separation =
  | { readonly kind: 'exists' }
  | { readonly kind: 'empty' }
  /** The level is a combination of these columns. */
  | { readonly kind: 'level-aliased'; readonly on: readonly number[] }
  /** Along this change of the effects (in z) and of 1/scale the likelihood rises without end. */
  | { readonly kind: 'separated'; readonly effects: Float64Array; readonly steepness: number }
  | { readonly kind: 'wrong-direction' };

/** A rise of the sum of rows of order 1 below this is rounding. */
const NO_RISE = 1e-8;

/**
 * Decides from the data whether effects and one positive finite spread maximise the likelihood.
 *
 * In z = x·γ + b·y, b = 1/scale, the log-likelihood is concave. It has a finite maximum in b > 0 unless it keeps rising
 * along some direction (dγ, db ≥ 0): one in which no upper end's z falls, no lower end's rises, and something moves. That
 * is a linear programme (Albert and Anderson 1984, Biometrika 71, 1–10, for logistic regression; here for any mixture of
 * observations). With failures and survivals only it must also rise from b = 0, which its derivative at the best γ there
 * decides, since it is concave.
 */
export function judgeSeparation(cells: readonly Cell[], law: StandardLaw): Separation {
  if (cells.length === 0) return { kind: 'empty' };
  const { ends, closed, exact } = directionRows(cells);
  if (closed === 0) {
    const stacked = orthogonalise(ends);
    if (stacked.kind === 'dependent') return { kind: 'level-aliased', on: stacked.on };
  }
  const width = cells[0]!.row.length;
  const steepnessOnly = new Float64Array(width + 1);
  steepnessOnly[width] = 1;
  // b may not fall; that bound is a row of its own and is taken out of the sum unless exact values profit from b itself.
  const bonus = steepnessOnly.map((v) => (exact ? 0 : -v));
  const { direction, rise } = steepestCommonRise([...ends, steepnessOnly], bonus);
  if (rise > NO_RISE)
    return { kind: 'separated', effects: direction.subarray(0, width), steepness: direction[width]! };
  return closed > 0 || risesFromZero(cells, law) ? { kind: 'exists' } : { kind: 'wrong-direction' };
}

/** Each finite end as a row (x, y) of what must not fall: z at an upper end, −z at a lower one; y scaled to ±½. */
function directionRows(cells: readonly Cell[]): { ends: Float64Array[]; closed: number; exact: boolean } {
  let lowest = Infinity;
  let highest = -Infinity;
  let closed = 0;
  let exact = false;
  const visit = (use: (row: Float64Array, y: number, sign: 1 | -1) => void) => {
    for (const { row, sample } of cells) {
      for (let i = 0; i < sample.size; i++) {
        if (sample.upper[i] !== Infinity) use(row, sample.upper[i]!, 1);
        if (sample.lower[i] !== -Infinity) use(row, sample.lower[i]!, -1);
      }
    }
  };
  visit((_, y) => {
    lowest = Math.min(lowest, y);
    highest = Math.max(highest, y);
  });
  for (const { sample } of cells) {
    for (let i = 0; i < sample.size; i++) {
      if (sample.lower[i] === -Infinity || sample.upper[i] === Infinity) continue;
      closed++;
      if (sample.lower[i] === sample.upper[i]) exact = true;
    }
  }
  const middle = (lowest + highest) / 2;
  const range = highest - lowest || 1;
  const ends: Float64Array[] = [];
  visit((row, y, sign) => {
    ends.push(Float64Array.from([...row, (y - middle) / range], (v) => sign * v));
  });
  return { ends, closed, exact };
}

/** Does the log-likelihood rise from b = 0, where levels do not count, to b > 0? */
function risesFromZero(cells: readonly Cell[], law: StandardLaw): boolean {
  const width = cells[0]!.row.length;
  const term = emptyTerm();
  let slope = 0;
  let size = 0;
  maximise((gamma, into) => {
    into.value = 0;
    into.gradient.fill(0);
    into.hessian.fill(0);
    slope = 0;
    size = 0;
    for (const { row, sample } of cells) {
      let predictor = 0;
      for (let j = 0; j < width; j++) predictor += row[j]! * gamma[j]!;
      sumTerms(sample, law, 0, predictor, 0, term);
      into.value += term.value;
      for (let j = 0; j < width; j++) {
        into.gradient[j]! += term.predictor * row[j]!;
        for (let k = 0; k < width; k++) into.hessian[j * width + k]! += term.predictor2 * row[j]! * row[k]!;
      }
      slope += term.steepness;
      size += Math.abs(term.steepness);
    }
  }, new Float64Array(width));
  // Means that are equal on paper may differ in the last digits.
  return slope > 1e-9 * size;
}
