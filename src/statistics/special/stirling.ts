/**
 * What Stirling's formula lacks: δ(x) = log Γ(x) − (x − ½) log x + x − ½ log 2π, for x > 0.
 *
 * Asymptotic series Σ B₂ₖ/(2k(2k − 1)x²ᵏ⁻¹) from 16 upward (Abramowitz & Stegun 6.1.41); below, the recurrence
 * δ(x) = δ(x + 1) + (x + ½) log(1 + 1/x) − 1. Absolute error about 1e-16 a step.
 */
export function stirlingError(x: number): number {
  let shifted = x;
  let sum = 0;
  while (shifted < 16) {
    sum += (shifted + 0.5) * Math.log1p(1 / shifted) - 1;
    shifted += 1;
  }
  const v = 1 / (shifted * shifted);
  const series =
    1 / 12 - v * (1 / 360 - v * (1 / 1260 - v * (1 / 1680 - v * (1 / 1188 - v * (691 / 360360 - v / 156)))));
  return sum + series / shifted;
}

/**
 * The deviance D(x, m) = x log(x/m) + m − x for x ≥ 0, m > 0, without cancellation near x = m.
 *
 * With v = (x − m)/(x + m): (x − m)·v + 2x Σ v²ʲ⁺¹/(2j + 1), j ≥ 1 (Loader 2000, "Fast and accurate computation of
 * binomial probabilities"; taken here up to |v| = ½, since further in the direct form loses digits at large x).
 */
export function deviance(x: number, m: number): number {
  const v = (x - m) / (x + m);
  if (Math.abs(v) > 0.5) return x === 0 ? m : x * Math.log(x / m) + m - x;
  let sum = (x - m) * v;
  let power = 2 * x * v;
  for (let j = 3; ; j += 2) {
    power *= v * v;
    const next = sum + power / j;
    if (next === sum) return sum;
    sum = next;
  }
}
