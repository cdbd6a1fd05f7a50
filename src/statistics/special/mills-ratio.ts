/**
 * What the hazard of the standard normal law, h(x) = φ(x)/(1 − Φ(x)), has over x, for x ≥ 0.
 *
 * h(x) = x + E(x), the inverse of Mills' ratio. All tails, logarithms and derivatives of the normal law follow from E
 * without a cancellation: h′ = h·E, 1 − Φ = φ/h. E falls from √(2/π) at 0 to 1/x at large x.
 *
 * A rational form of degrees 10 and 11 with positive coefficients, our own: interpolated with 60 digits by
 * tests/reference/scripts/special-mills-ratio.py; largest relative error of the form 8e-17, as computed 1e-15. It
 * costs a third of a continued fraction of the same precision.
 *
 * @param x at or above 0; below, the form does not hold
 */
export function hazardExcess(x: number): number {
  // Beyond, the powers could overflow, and 1/x is exact to 2/x².
  if (x > 1e9) return 1 / x;
  let p = 1.915109526628375e-7;
  p = p * x + 5.872611402552067e-6;
  p = p * x + 9.046180347581777e-5;
  p = p * x + 0.0009054777662540908;
  p = p * x + 0.006462568803276758;
  p = p * x + 0.034208328060461306;
  p = p * x + 0.13583507966098557;
  p = p * x + 0.4002625840297009;
  p = p * x + 0.8421243375000503;
  p = p * x + 1.1541351473700074;
  p = p * x + 0.7978845608028654;
  let q = 1.915109526628375e-7;
  q = q * x + 5.872611402552074e-6;
  q = q * x + 9.084482538113905e-5;
  q = q * x + 0.0009172229890603141;
  q = q * x + 0.006642343344367597;
  q = q * x + 0.03598404793566769;
  q = q * x + 0.1482254893499933;
  q = q * x + 0.46349304267623626;
  q = q * x + 1.0787386974816946;
  q = q * x + 1.7850187671047524;
  q = q * x + 1.9019234730841763;
  q = q * x + 1;
  return p / q;
}
