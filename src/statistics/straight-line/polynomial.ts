import { orthogonalise, solveTriangle } from '../regression/orthogonal.ts';
import { mean } from '../summary/moments.ts';

/** A polynomial by least squares: coefficients from the constant upward. */
export interface Polynomial {
  readonly coefficients: readonly number[];
  readonly standardErrors: readonly number[];
  readonly residualDeviation: number;
  readonly degrees: number;
}

/**
 * Fits y = Σ cₖ·xᵏ with orthogonal columns, such as the quadratic of a load cell's calibration.
 *
 * @throws RangeError for fewer points than coefficients, or too few different x
 */
export function fitPolynomial(x: readonly number[], y: readonly number[], order: number): Polynomial {
  const width = order + 1;
  if (x.length !== y.length || x.length <= width)
    throw new RangeError(`a polynomial of order ${order} needs more than ${width} points, found ${x.length}`);
  // Columns of like size; the coefficients are scaled back at the end.
  const size = mean(x.map(Math.abs)) || 1;
  const rows = x.map((value) => Float64Array.from({ length: width }, (_, k) => (value / size) ** k));
  const basis = orthogonalise(rows);
  if (basis.kind === 'dependent') throw new RangeError(`too few different x for order ${order}`);
  const n = x.length;
  const shares = Float64Array.from(
    { length: width },
    (_, k) => basis.rows.reduce((sum, row, i) => sum + row[k]! * y[i]!, 0) / n,
  );
  const scaled = solveTriangle(basis.triangle, shares);
  const residual = y.map((value, i) =>
    basis.rows[i]!.reduce((left, entry, k) => left - entry * shares[k]!, value),
  );
  const degrees = n - width;
  const deviation = Math.sqrt(residual.reduce((sum, r) => sum + r * r, 0) / degrees);
  // Rows of the inverse triangle, column by column: c = R⁻¹·shares, each share with variance s²/n.
  const inverse = Array.from({ length: width }, (_, k) =>
    solveTriangle(
      basis.triangle,
      Float64Array.from({ length: width }, (_, j) => (j === k ? 1 : 0)),
    ),
  );
  return {
    coefficients: Array.from(scaled, (value, k) => value / size ** k),
    standardErrors: Array.from(
      scaled,
      (_, k) => ((deviation / Math.sqrt(n)) * Math.hypot(...inverse.map((column) => column[k]!))) / size ** k,
    ),
    residualDeviation: deviation,
    degrees,
  };
}
