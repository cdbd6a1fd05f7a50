/**
 * log(1 − eˣ) for x ≤ 0; −∞ at 0, NaN above.
 *
 * Above −ln 2 by expm1, below by log1p, so that neither end cancels (Mächler 2012, "Accurately computing
 * log(1 − exp(−|a|))", equation 7).
 */
export function logOneMinusExp(x: number): number {
  return x > -Math.LN2 ? Math.log(-Math.expm1(x)) : Math.log1p(-Math.exp(x));
}

/** log(eᵃ − eᵇ) for a ≥ b without leaving the logarithms; −∞ when equal, NaN when b is the larger. */
export function logDifference(a: number, b: number): number {
  if (b === -Infinity || a === b) return a === b ? -Infinity : a;
  return a + logOneMinusExp(b - a);
}
