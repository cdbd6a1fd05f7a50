/** Weights that maximise a mixture likelihood, and how nearly its optimality conditions hold. */
export interface Mixture {
  readonly weights: readonly number[];
  readonly logLikelihood: number;
  readonly breach: number;
}

const MOST_ROUNDS = 20_000;
/** A weight below this whose derivative says that it should be less is put to nought. */
const NEGLIGIBLE = 1e-4;

/**
 * Maximises Σ nᵢ ln Pᵢ, Pᵢ = Σ_{j in members[i]} pⱼ, over weights pⱼ ≥ 0 that add up to one. Self-consistency (which is
 * the EM algorithm) moves pⱼ to pⱼ·dⱼ/n, dⱼ = Σᵢ nᵢ αᵢⱼ/Pᵢ; every third round is extrapolated by the squared scheme S3
 * of Varadhan and Roland (2008, Scand. J. Statistics 35, 335–353) where that does not lower the likelihood.
 *
 * `breach` is the larger of max dⱼ/n − 1 and max |dⱼ/n − 1| over pⱼ > 0. It ends when that is below `tolerance`, or after
 * 20 000 rounds.
 */
export function maximiseMixture(
  members: readonly (readonly number[])[],
  counts: readonly number[],
  size: number,
  tolerance: number,
): Mixture {
  const n = counts.reduce((a, b) => a + b, 0);
  const gradient = new Float64Array(size);
  // Fills gradient with dⱼ/n at p and returns the log-likelihood.
  const evaluate = (p: Float64Array): number => {
    gradient.fill(0);
    let sum = 0;
    for (let i = 0; i < members.length; i++) {
      let total = 0;
      for (const j of members[i]!) total += p[j]!;
      const count = counts[i]!;
      sum += count * Math.log(total);
      const ratio = count / (total * n);
      for (const j of members[i]!) gradient[j]! += ratio;
    }
    return sum;
  };
  let p: Float64Array = new Float64Array(size).fill(1 / size);
  let logLikelihood = evaluate(p);
  let breach = breachOf(p, gradient);
  const step = (from: Float64Array): Float64Array => from.map((value, j) => value * gradient[j]!);
  for (let round = 0; round < MOST_ROUNDS && breach > tolerance; round++) {
    const once = step(p);
    evaluate(once);
    const twice = step(once);
    const leap = extrapolate(p, once, twice);
    let reached = leap === null ? Number.NaN : evaluate(leap);
    if (leap !== null && reached >= logLikelihood) p = leap;
    else {
      p = twice;
      reached = evaluate(p);
    }
    // A vanishing weight converges only sublinearly; what it must not be is judged by its derivative afterwards.
    const pruned = prune(p, gradient);
    if (pruned !== null) {
      const kept = evaluate(pruned);
      if (kept >= reached) {
        p = pruned;
        reached = kept;
      } else evaluate(p);
    }
    logLikelihood = reached;
    breach = breachOf(p, gradient);
  }
  return { weights: Array.from(p), logLikelihood, breach };
}

function breachOf(p: Float64Array, gradient: Float64Array): number {
  let worst = 0;
  for (let j = 0; j < p.length; j++) {
    const excess = gradient[j]! - 1;
    worst = Math.max(worst, p[j]! > 0 ? Math.abs(excess) : excess);
  }
  return worst;
}

/** The squared extrapolation through three successive points, or null where it leaves the simplex. */
function extrapolate(p: Float64Array, once: Float64Array, twice: Float64Array): Float64Array | null {
  let rr = 0;
  let vv = 0;
  for (let j = 0; j < p.length; j++) {
    const r = once[j]! - p[j]!;
    const v = twice[j]! - once[j]! - r;
    rr += r * r;
    vv += v * v;
  }
  if (vv === 0) return null;
  const length = Math.max(1, Math.sqrt(rr / vv));
  const leap = new Float64Array(p.length);
  let total = 0;
  for (let j = 0; j < p.length; j++) {
    const r = once[j]! - p[j]!;
    const v = twice[j]! - once[j]! - r;
    const value = p[j]! + 2 * length * r + length * length * v;
    if (value < 0 || (value === 0 && p[j]! > 0)) return null;
    leap[j] = value;
    total += value;
  }
  for (let j = 0; j < leap.length; j++) leap[j]! /= total;
  return leap;
}

/** The weights with the negligible and shrinking ones put to nought, or null where there are none such. */
function prune(p: Float64Array, gradient: Float64Array): Float64Array | null {
  let total = 0;
  let changed = false;
  const kept = p.map((value, j) => {
    if (value > 0 && value < NEGLIGIBLE && gradient[j]! < 1) {
      changed = true;
      return 0;
    }
    total += value;
    return value;
  });
  if (!changed) return null;
  return kept.map((value) => value / total);
}
