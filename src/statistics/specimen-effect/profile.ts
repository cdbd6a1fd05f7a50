import { chiSquaredLaw } from '../laws/gamma.ts';
import { normal } from '../laws/normal.ts';
import type { NoEstimate } from '../likelihood/existence.ts';
import { emptyTerm, sumTerms } from '../likelihood/term.ts';
import { findRoot } from '../root.ts';
import { fitPosed, type SpecimenOptions } from './fit.ts';
import { goldenSection } from './golden-section.ts';
import { gatherPatterns, type History } from './history.ts';
import { emptyPeak, LARGEST_SHARE, type Problem, pose } from './share.ts';

/** A profile-likelihood interval on the fitted scale; unbounded ends are ∓Infinity. */
export interface ProfileInterval {
  readonly lower: number;
  readonly upper: number;
}

/** Where the profile over the share is looked at, before it is refined between neighbours. */
const SHARES = [0, 0.05, 0.2, 0.4, 0.6, 0.8, LARGEST_SHARE, 1];

/**
 * The two-sided profile-likelihood interval for the level at which the share `probability` of fresh specimens fails at a
 * single hit, on the fitted scale; the median at ½. Spread and share of the variance between specimens are free at each
 * level tried, so that it covers what the data do not tell of them.
 *
 * Levels through which the law is held to pass make η = √(1 + θ²)·Φ⁻¹(probability) a constant, and the likelihood concave in
 * b at each share. Beyond 10⁴ half ranges of the levels an end counts as unbounded.
 */
export function specimenQuantileInterval(
  histories: readonly History[],
  options: SpecimenOptions,
  probability = 0.5,
): ProfileInterval | NoEstimate {
  const { scale, damage = 0, nodes = 25, confidence = 0.95 } = options;
  const problem = pose(gatherPatterns(histories, scale, damage), nodes);
  if ('kind' in problem) return problem;
  const best = fitPosed(problem);
  if ('kind' in best) return best;
  const z = normal.quantile(probability);
  const drop = chiSquaredLaw(1).quantile(confidence) / 2;
  const value = heldProfile(problem, z, best.totalSpread);
  const excess = (level: number) => value(level) - best.logLikelihood + drop;
  const centre = best.location + z * best.totalSpread;
  const end = (direction: 1 | -1): number => {
    let inside = centre;
    for (let step = 0.2 * best.totalSpread; step < 1e4 * problem.unit; step *= 2) {
      const level = inside + direction * step;
      if (excess(level) < 0) return findRoot(excess, inside, level, { tolerance: 1e-5 * best.totalSpread });
      inside = level;
    }
    return direction * Infinity;
  };
  return { lower: end(-1), upper: end(1) };
}

/** The log-likelihood with the quantile held at a level, at its best over spread and share. */
function heldProfile(problem: Problem, z: number, spread: number): (level: number) => number {
  const peak = emptyPeak(3);
  const term = emptyTerm();
  let steepness = 1 / spread;
  return (level) => {
    /** Total steepness b/√(1 + θ²) is what stays alike from share to share. */
    const at = (share: number): number => {
      const stretch = share === 1 ? 1 : 1 / Math.sqrt(1 - share);
      const sample = share === 0 ? problem.hits : share === 1 ? problem.thresholds : null;
      if (share === 1 && sample === null) return -Infinity;
      const theta = Math.sqrt(share / (1 - share));
      const fill = (total: number, into: Slope) => {
        if (sample !== null) {
          sumTerms(sample, normal, level, z, total, term);
          into.value = term.value;
          into.slope = term.steepness;
          into.curvature = term.steepness2;
          return;
        }
        problem.marginal.evaluate(level, z * stretch, total * stretch, theta, peak);
        into.value = peak.value;
        into.slope = peak.gradient[1]! * stretch;
        into.curvature = peak.hessian[4]! * stretch * stretch;
      };
      const found = climb(fill, steepness);
      if (found.at > 0) steepness = found.at;
      return found.value;
    };
    let index = 0;
    const values = SHARES.map(at);
    for (const [i, value] of values.entries()) if (value > values[index]!) index = i;
    const share = SHARES[index]!;
    if (share === 1) return values[index]!;
    const low = SHARES[index - 1] ?? 0;
    const high = Math.min(LARGEST_SHARE, SHARES[index + 1]!);
    // To 0.01 of the share the value is good to the square of that.
    return Math.max(values[index]!, goldenSection(at, low, high, 0.01).value);
  };
}

interface Slope {
  value: number;
  slope: number;
  curvature: number;
}

/** Maximises a concave function of b ≥ 0 by Newton's method, steps below 0 cut to a fifth of the way. */
function climb(fill: (b: number, into: Slope) => void, start: number): { at: number; value: number } {
  const here: Slope = { value: 0, slope: 0, curvature: 0 };
  let b = start;
  for (let i = 0; i < 60; i++) {
    fill(b, here);
    const step = -here.slope / here.curvature;
    const next = Math.min(Math.max(b + step, b / 5), 5 * b);
    if (Math.abs(next - b) < 1e-6 * b) return { at: b, value: here.value };
    if (next < 1e-9 * start) break;
    b = next;
  }
  fill(b, here);
  return { at: 0, value: here.value };
}
