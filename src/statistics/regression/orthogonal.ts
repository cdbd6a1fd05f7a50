/** Columns turned into orthonormal ones: rows·R = the original rows. */
export interface Orthogonal {
  readonly kind: 'independent';
  readonly rows: readonly Float64Array[];
  /** Upper triangle, by columns: `triangle[j][i]` is R_ij. */
  readonly triangle: readonly Float64Array[];
}

/** A column that the ones before it determine: which it is, and which they are. */
export interface Dependent {
  readonly kind: 'dependent';
  readonly column: number;
  readonly on: readonly number[];
}

/** A column with less than this of its length left beside the others is taken as determined by them. */
const DEPENDENT = 1e-9;

/**
 * Gram–Schmidt with a second pass ("twice is enough", Kahan and Parlett), scaled so that each column has mean square 1
 * over the rows. It finds the first column that depends on those before it, and gives a fit columns that do not hide one
 * another.
 */
export function orthogonalise(rows: readonly Float64Array[]): Orthogonal | Dependent {
  const size = rows.length;
  const width = rows[0]?.length ?? 0;
  const root = Math.sqrt(size);
  const basis: Float64Array[] = [];
  const triangle: Float64Array[] = [];
  for (let j = 0; j < width; j++) {
    const column = Float64Array.from(rows, (row) => row[j]! / root);
    const length = norm(column);
    const shares = new Float64Array(width);
    for (let pass = 0; pass < 2; pass++) {
      for (const [i, other] of basis.entries()) {
        const share = dot(column, other);
        shares[i]! += share;
        for (let k = 0; k < size; k++) column[k]! -= share * other[k]!;
      }
    }
    const left = norm(column);
    if (!(left > DEPENDENT * length))
      return { kind: 'dependent', column: j, on: supportOf(shares, triangle, j) };
    for (let k = 0; k < size; k++) column[k]! /= left;
    shares[j] = left;
    basis.push(column);
    triangle.push(shares);
  }
  const out = rows.map((_, k) => Float64Array.from(basis, (column) => column[k]! * root));
  return { kind: 'independent', rows: out, triangle };
}

/** Solves R·x = b for an upper triangle kept by columns. */
export function solveTriangle(triangle: readonly Float64Array[], b: ArrayLike<number>): Float64Array {
  const x = Float64Array.from(b);
  for (let j = x.length - 1; j >= 0; j--) {
    x[j]! /= triangle[j]![j]!;
    for (let i = 0; i < j; i++) x[i]! -= triangle[j]![i]! * x[j]!;
  }
  return x;
}

/** Which earlier columns make up a dependent one. */
function supportOf(shares: Float64Array, triangle: readonly Float64Array[], width: number): number[] {
  const weights = solveTriangle(triangle, shares.subarray(0, width));
  const sizes = Array.from(weights, (w, i) => Math.abs(w) * norm(triangle[i]!));
  const largest = Math.max(0, ...sizes);
  return sizes.flatMap((size, i) => (size > 1e-7 * largest ? [i] : []));
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += a[k]! * b[k]!;
  return sum;
}

function norm(a: Float64Array): number {
  return Math.sqrt(dot(a, a));
}
