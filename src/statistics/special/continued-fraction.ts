/**
 * b₀ + a₁/(b₁ + a₂/(b₂ + …)), evaluated forward until it stands still to the last digit.
 *
 * Lentz's method as modified by Thompson and Barnett (1986, Journal of Computational Physics 64, 490–509).
 */
export function continuedFraction(a: (k: number) => number, b: (k: number) => number): number {
  let value = b(0) || TINY;
  let c = value;
  let d = 0;
  for (let k = 1; k < 100_000; k++) {
    const ak = a(k);
    const bk = b(k);
    d = 1 / (bk + ak * d || TINY);
    c = bk + ak / c || TINY;
    const factor = c * d;
    value *= factor;
    if (Math.abs(factor - 1) < 2e-16) return value;
  }
  return value;
}

/** Stands for a zero that would be divided by. */
const TINY = 1e-300;
