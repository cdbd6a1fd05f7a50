/*
 * Factors of the up-and-down count, d the step and s the spread on the same scale.
 */

/** s = 1.620·d·(M + 0.029): Dixon and Mood (1948), JASA 43, 109–126. Within 1 % of σ for d from σ/2 to 1.5 σ. */
export function dixonMoodSpread(M: number, d: number): number {
  return 1.62 * d * (M + 0.029);
}

/**
 * s = 1.62·d·M + 0.047·d, M = B/N − (A/N)²: the same as falling-mass standards print it, with 1.62·0.029 = 0.04698
 * rounded up. Formula from memory of those standards, not seen.
 */
export function fallingMassSpread(M: number, d: number): number {
  return 1.62 * d * M + 0.047 * d;
}

/** G in se(m) = G·s/√N, N the count of the rarer event: (6s + d)/(7s), within 0.02 for d from σ/4 to 2 σ. */
export function meanErrorFactor(s: number, d: number): number {
  return (6 * s + d) / (7 * s);
}

/** H in se(s) = H·s/√N: 1.1 + 0.3·s/d, within 0.06 for d from σ/2 to 1.5 σ. Both from memory of Dixon and Massey (1969). */
export function spreadErrorFactor(s: number, d: number): number {
  return 1.1 + (0.3 * s) / d;
}
