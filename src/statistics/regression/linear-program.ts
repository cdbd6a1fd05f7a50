/**
 * The direction d, every |dₖ| ≤ 1, along which no row falls (aᵢ·d ≥ 0) and their sum Σ aᵢ·d rises most: by the simplex
 * method on d = d⁺ − d⁻ with Bland's rule (1977), which cannot cycle. The sum is 0 exactly when no direction raises any
 * row without lowering another. The rows should be of the order of 1.
 *
 * @param bonus added to the sum: bonus·d
 */
export function steepestCommonRise(
  rows: readonly Float64Array[],
  bonus: Float64Array,
): { direction: Float64Array; rise: number } {
  const size = bonus.length;
  const variables = 2 * size;
  const constraints = rows.length + variables;
  const width = variables + constraints + 1;
  const tableau = Array.from({ length: constraints + 1 }, () => new Float64Array(width));
  const gain = Float64Array.from(bonus);
  for (const row of rows) for (let k = 0; k < size; k++) gain[k]! += row[k]!;
  for (const [i, row] of rows.entries()) {
    for (let k = 0; k < size; k++) {
      tableau[i]![k] = -row[k]!;
      tableau[i]![size + k] = row[k]!;
    }
  }
  for (let k = 0; k < variables; k++) {
    tableau[rows.length + k]![k] = 1;
    tableau[rows.length + k]![width - 1] = 1;
  }
  for (let i = 0; i < constraints; i++) tableau[i]![variables + i] = 1;
  const objective = tableau[constraints]!;
  for (let k = 0; k < size; k++) {
    objective[k] = -gain[k]!;
    objective[size + k] = gain[k]!;
  }
  const basic = Array.from({ length: constraints }, (_, i) => variables + i);
  pivotUntilBest(tableau, basic, width);
  const direction = new Float64Array(size);
  for (const [i, variable] of basic.entries()) {
    if (variable < size) direction[variable]! += tableau[i]![width - 1]!;
    else if (variable < variables) direction[variable - size]! -= tableau[i]![width - 1]!;
  }
  return { direction, rise: objective[width - 1]! };
}

/** Entries below this are rounding. */
const ZERO = 1e-10;

function pivotUntilBest(tableau: Float64Array[], basic: number[], width: number): void {
  const objective = tableau[basic.length]!;
  for (;;) {
    let entering = 0;
    while (entering < width - 1 && objective[entering]! >= -ZERO) entering++;
    if (entering === width - 1) return;
    let leaving = -1;
    let least = Infinity;
    for (let i = 0; i < basic.length; i++) {
      const rate = tableau[i]![entering]!;
      if (rate <= ZERO) continue;
      const ratio = tableau[i]![width - 1]! / rate;
      if (ratio < least || (ratio === least && basic[i]! < basic[leaving]!)) {
        least = ratio;
        leaving = i;
      }
    }
    // The box bounds every direction, so a leaving row always exists.
    const pivotRow = tableau[leaving]!;
    const pivot = pivotRow[entering]!;
    for (let k = 0; k < width; k++) pivotRow[k]! /= pivot;
    for (let i = 0; i <= basic.length; i++) {
      const row = tableau[i]!;
      const share = row[entering]!;
      if (i === leaving || share === 0) continue;
      for (let k = 0; k < width; k++) row[k]! -= share * pivotRow[k]!;
    }
    basic[leaving] = entering;
  }
}
