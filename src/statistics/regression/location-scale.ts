import type { StandardLaw } from '../laws/standard-law.ts';
import { emptyTerm, sumTerms } from '../likelihood/term.ts';
import type { Cell } from './cells.ts';
import { type Maximum, maximise, type Peak } from './newton.ts';

/**
 * Maximises the censored likelihood over effects on the location and the logarithm of the scale of each group, from the
 * least-squares effects of the levels themselves. The point holds the effects in the coordinates of the cells' rows, then
 * the log scales.
 */
export function maximiseLocationScale(cells: readonly Cell[], law: StandardLaw, groups: number): Maximum {
  const width = cells[0]!.row.length;
  const size = width + groups;
  const { effects, scale, origin } = leastSquares(cells, width);
  const start = new Float64Array(size).fill(Math.log(scale), width);
  start.set(effects);
  const term = emptyTerm();
  const evaluate = (point: Float64Array, into: Peak): void => {
    into.value = 0;
    into.gradient.fill(0);
    into.hessian.fill(0);
    const { gradient, hessian } = into;
    for (const { row, group, sample } of cells) {
      const at = width + group;
      // z = η + b(y − origin), η = −b·(location − origin): from derivatives by η and b to those by location and ln scale.
      let location = -origin;
      for (let j = 0; j < width; j++) location += row[j]! * point[j]!;
      const b = Math.exp(-point[at]!);
      const eta = -b * location;
      sumTerms(sample, law, origin, eta, b, term);
      const byLocation = -b * term.predictor;
      const byLocation2 = b * b * term.predictor2;
      const mixed = b * (term.predictor + eta * term.predictor2 + b * term.cross);
      const byScale = -eta * term.predictor - b * term.steepness;
      const byScale2 =
        -byScale + eta * eta * term.predictor2 + 2 * eta * b * term.cross + b * b * term.steepness2;
      into.value += term.value;
      gradient[at]! += byScale;
      hessian[at * size + at]! += byScale2;
      for (let j = 0; j < width; j++) {
        const x = row[j]!;
        if (x === 0) continue;
        gradient[j]! += byLocation * x;
        hessian[at * size + j]! += mixed * x;
        for (let k = 0; k <= j; k++) hessian[j * size + k]! += byLocation2 * x * row[k]!;
      }
    }
    for (let j = 0; j < size; j++) for (let k = 0; k < j; k++) hessian[k * size + j] = hessian[j * size + k]!;
  };
  return maximise(evaluate, start);
}

/**
 * Least squares of the middles of the observations (open ones: their end), as one Newton step from nought: a place to
 * begin. The first column of the rows is the intercept, 1 in their coordinates too.
 */
function leastSquares(cells: readonly Cell[], width: number) {
  let total = 0;
  let sum = 0;
  let squares = 0;
  const each = (use: (row: Float64Array, y: number, count: number) => void) => {
    for (const { row, sample } of cells) {
      for (let i = 0; i < sample.size; i++) {
        const low = sample.lower[i]!;
        const high = sample.upper[i]!;
        use(row, low === -Infinity ? high : high === Infinity ? low : (low + high) / 2, sample.count[i]!);
      }
    }
  };
  each((_, y, count) => {
    total += count;
    sum += count * y;
  });
  const origin = sum / total;
  each((_, y, count) => {
    squares += count * (y - origin) ** 2;
  });
  // In units of the standard deviation of all levels the search for the minimum ends the same for mm and for m.
  const unit = Math.sqrt(squares / total) || 1;
  let residual = 0;
  const fit = maximise((point, into) => {
    into.gradient.fill(0);
    into.hessian.fill(0);
    residual = 0;
    each((row, y, count) => {
      let left = (y - origin) / unit;
      for (let j = 0; j < width; j++) left -= row[j]! * point[j]!;
      residual += count * left * left;
      for (let j = 0; j < width; j++) {
        into.gradient[j]! += count * left * row[j]!;
        for (let k = 0; k < width; k++) into.hessian[j * width + k]! -= count * row[j]! * row[k]!;
      }
    });
    into.value = -residual / 2;
  }, new Float64Array(width));
  const effects = fit.point.map((effect, j) => effect * unit + (j === 0 ? origin : 0));
  // Levels that the covariates reproduce leave nothing; the whole spread is then as good a start.
  const share = Math.sqrt(residual / total);
  return { effects, scale: unit * (share > 1e-3 ? share : 1), origin };
}
