import { LOG_ROOT_TWO_PI } from './constants.ts';
import { hazardExcess } from './mills-ratio.ts';

/**
 * z with Φ(z) = p, for p in [0, 1]; NaN outside.
 *
 * Rational approximations in three pieces (Wichura 1988, Applied Statistics 37, 477–484, algorithm AS 241, PPND16),
 * relative error about 1e-16. Near p = ½ the result is relative to p − ½, which a double holds exactly.
 */
export function normalQuantile(p: number): number {
  const offset = p - 0.5;
  if (Math.abs(offset) <= 0.425) return offset * central(0.180625 - offset * offset);
  if (p <= 0 || p >= 1 || Number.isNaN(p)) return p === 0 ? -Infinity : p === 1 ? Infinity : Number.NaN;
  const x = tail(Math.sqrt(-Math.log(offset < 0 ? p : 1 - p)));
  return offset < 0 ? -x : x;
}

/**
 * x ≥ 0 with log(1 − Φ(x)) = logQ, for logQ at or below about −0.7: any depth of the tail.
 *
 * Start by AS 241, or beyond its reach (logQ < −700) by x² ≈ −2 logQ − ln(2π·(−2 logQ)), then Halley's step on the log
 * scale with the hazard h = x + E: (log S)′ = −h, (log S)″ = −h·E.
 */
export function normalQuantileOfLogTail(logQ: number): number {
  if (logQ === -Infinity) return Infinity;
  const within = logQ > -700;
  let x = within ? tail(Math.sqrt(-logQ)) : Math.sqrt(-2 * logQ - Math.log(-4 * Math.PI * logQ));
  for (let step = within ? 1 : 2; step > 0; step--) {
    const excess = hazardExcess(x);
    const hazard = x + excess;
    const newton = (-0.5 * x * x - LOG_ROOT_TWO_PI - Math.log(hazard) - logQ) / hazard;
    x += newton / (1 + 0.5 * newton * excess);
  }
  return x;
}

/** AS 241 for |p − ½| ≤ 0.425, r = 0.180625 − (p − ½)². */
function central(r: number): number {
  let p = 2509.0809287301227;
  p = p * r + 33430.57558358813;
  p = p * r + 67265.7709270087;
  p = p * r + 45921.95393154987;
  p = p * r + 13731.69376550946;
  p = p * r + 1971.5909503065513;
  p = p * r + 133.14166789178438;
  p = p * r + 3.3871328727963665;
  let q = 5226.495278852854;
  q = q * r + 28729.085735721943;
  q = q * r + 39307.89580009271;
  q = q * r + 21213.794301586597;
  q = q * r + 5394.196021424751;
  q = q * r + 687.1870074920579;
  q = q * r + 42.31333070160091;
  q = q * r + 1;
  return p / q;
}

/** AS 241 for the tails, r = √(−log of the tail), at most 27. */
function tail(r: number): number {
  return r <= 5 ? nearTail(r - 1.6) : farTail(r - 5);
}

function nearTail(r: number): number {
  let p = 0.0007745450142783414;
  p = p * r + 0.022723844989269184;
  p = p * r + 0.2417807251774506;
  p = p * r + 1.2704582524523684;
  p = p * r + 3.6478483247632045;
  p = p * r + 5.769497221460691;
  p = p * r + 4.630337846156546;
  p = p * r + 1.4234371107496835;
  let q = 1.0507500716444169e-9;
  q = q * r + 0.0005475938084995345;
  q = q * r + 0.015198666563616457;
  q = q * r + 0.14810397642748008;
  q = q * r + 0.6897673349851;
  q = q * r + 1.6763848301838038;
  q = q * r + 2.053191626637759;
  q = q * r + 1;
  return p / q;
}

function farTail(r: number): number {
  let p = 2.0103343992922881e-7;
  p = p * r + 2.7115555687434876e-5;
  p = p * r + 0.0012426609473880784;
  p = p * r + 0.026532189526576124;
  p = p * r + 0.29656057182850487;
  p = p * r + 1.7848265399172913;
  p = p * r + 5.463784911164114;
  p = p * r + 6.657904643501103;
  let q = 2.0442631033899397e-15;
  q = q * r + 1.421511758316446e-7;
  q = q * r + 1.8463183175100548e-5;
  q = q * r + 0.0007868691311456133;
  q = q * r + 0.014875361290850615;
  q = q * r + 0.1369298809227358;
  q = q * r + 0.599832206555888;
  q = q * r + 1;
  return p / q;
}
