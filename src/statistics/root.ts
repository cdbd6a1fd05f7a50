/** Options of a search for a root. */
export interface RootOptions {
  /** Largest error of the root, absolute; the rounding of the root itself is always added. Default 0: to the last digit. */
  tolerance?: number;
  /** Evaluations at most; default 200. */
  evaluations?: number;
  /** f(a) and f(b), where they are known already. */
  ends?: readonly [number, number];
}

/**
 * The root of f between a and b, where f has opposite signs (or is 0 at one of them).
 *
 * Inverse quadratic interpolation and secants, with bisection whenever these shrink the bracket too slowly: never
 * slower than bisection squared, and f need only be continuous. Brent (1973), Algorithms for Minimization without
 * Derivatives, chapter 4, procedure `zero`.
 *
 * @returns NaN if f is no number on the way; the best point so far when the evaluations are used up
 * @throws RangeError if f has the same sign at both ends or is no number there
 */
export function findRoot(
  f: (x: number) => number,
  a: number,
  b: number,
  { tolerance = 0, evaluations = 200, ends }: RootOptions = {},
): number {
  let previous = a;
  let best = b;
  let fPrevious = ends?.[0] ?? f(previous);
  let fBest = ends?.[1] ?? f(best);
  const opposite = fPrevious === 0 || fBest === 0 || Math.sign(fPrevious) === -Math.sign(fBest);
  if (!opposite) {
    throw new RangeError(`no sign change between ${a} (${fPrevious}) and ${b} (${fBest})`);
  }
  let contra = previous;
  let fContra = fPrevious;
  let step = best - previous;
  let stepBefore = step;
  for (let count = 2; count < evaluations; count++) {
    if (Math.sign(fBest) === Math.sign(fContra)) {
      contra = previous;
      fContra = fPrevious;
      step = best - previous;
      stepBefore = step;
    }
    if (Math.abs(fContra) < Math.abs(fBest)) {
      previous = best;
      best = contra;
      contra = previous;
      fPrevious = fBest;
      fBest = fContra;
      fContra = fPrevious;
    }
    const limit = 2 * Number.EPSILON * Math.abs(best) + 0.5 * tolerance;
    const middle = 0.5 * (contra - best);
    if (Math.abs(middle) <= limit || fBest === 0) return best;
    if (Number.isNaN(fBest)) return Number.NaN;

    const next = interpolate(previous, best, contra, fPrevious, fBest, fContra);
    const useful =
      Math.abs(stepBefore) >= limit &&
      Math.abs(fPrevious) > Math.abs(fBest) &&
      next / middle > 0 &&
      Math.abs(next) < Math.min(0.5 * Math.abs(stepBefore), 1.5 * Math.abs(middle) - 0.5 * limit);
    if (useful) {
      stepBefore = step;
      step = next;
    } else {
      step = middle;
      stepBefore = middle;
    }
    previous = best;
    fPrevious = fBest;
    best += Math.abs(step) > limit ? step : Math.sign(middle) * Math.max(limit, Number.MIN_VALUE);
    fBest = f(best);
  }
  return best;
}

/** Step from the best point: a secant through two points, or inverse quadratic interpolation through three. */
function interpolate(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const s = fb / fa;
  if (a === c) return (-(c - b) * s) / (1 - s);
  const q = fa / fc;
  const r = fb / fc;
  const p = s * ((c - b) * q * (q - r) - (b - a) * (r - 1));
  return -p / ((q - 1) * (r - 1) * (s - 1));
}

/** Where a search for a bracket may go. */
export interface BracketOptions {
  /** Lowest and highest argument allowed; default unbounded. */
  min?: number;
  max?: number;
}

/**
 * Two points between which an increasing or decreasing f changes sign, found from `start` by steps that double, or
 * null if there is no change up to the limits. Common practice, no source.
 *
 * @param step first step, above 0
 */
export function bracketRoot(
  f: (x: number) => number,
  start: number,
  step: number,
  { min = -Infinity, max = Infinity }: BracketOptions = {},
): [number, number] | null {
  let lower = start;
  let upper = start;
  const sign = Math.sign(f(start));
  if (sign === 0) return [start, start];
  for (let width = step; lower > min || upper < max; width *= 2) {
    if (width > 1e300) return null;
    const left = Math.max(min, lower - width);
    if (left < lower && Math.sign(f(left)) !== sign) return [left, lower];
    const right = Math.min(max, upper + width);
    if (right > upper && Math.sign(f(right)) !== sign) return [upper, right];
    lower = left;
    upper = right;
  }
  return null;
}
