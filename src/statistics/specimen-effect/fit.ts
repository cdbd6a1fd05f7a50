import { chiSquaredLaw } from '../laws/gamma.ts';
import type { NoEstimate } from '../likelihood/existence.ts';
import { tryMaximise } from '../regression/newton.ts';
import { findRoot } from '../root.ts';
import { goldenSection } from './golden-section.ts';
import { gatherPatterns, type History } from './history.ts';
import {
  emptyPeak,
  fitAtShare,
  LARGEST_SHARE,
  type Problem,
  pose,
  QUADRATURE_NOISE,
  type ShareFit,
} from './share.ts';

/** How the histories are read. */
export interface SpecimenOptions {
  /** Whether the law is of x or of ln x. */
  readonly scale: 'identity' | 'log';
  /** The share of its strength that each earlier hit takes from a specimen; default 0. */
  readonly damage?: number;
  /** Nodes of the quadrature; default 25. */
  readonly nodes?: number;
  /** Of the interval for the share, by which the spreads are told apart or not; default 0.95. */
  readonly confidence?: number;
}

/** Spreads between specimens and from hit to hit, on the fitted scale (x or ln x). */
export interface SpecimenEffect {
  /** Whether the data tell the two spreads apart: both extremes, all of it from hit to hit and all between specimens, not
   * both within the interval for the share. */
  readonly kind: 'spreads-told' | 'spreads-untold';
  /** Median strength of a fresh specimen to a single hit. */
  readonly location: number;
  /** From the observed information, at a boundary that at the share 0 or 1; null where the spreads are not told apart. */
  readonly standardError: number | null;
  /** Standard deviation of the strength to a single hit of specimens taken at random: √(between² + within²). */
  readonly totalSpread: number;
  /** Null where the spreads are not told apart. */
  readonly between: number | null;
  readonly within: number | null;
  /** Share of the variance that lies between specimens: the most likely one, and its profile-likelihood interval. */
  readonly share: number;
  readonly shareInterval: { readonly lower: number; readonly upper: number };
  /** The fits with all of the spread from hit to hit, and all of it between specimens; null where it is ruled out. */
  readonly allWithin: ShareFit | null;
  readonly allBetween: ShareFit | null;
  readonly logLikelihood: number;
}

/** Shares at which the profile is looked at before it is refined. */
const GRID = [0.02, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, LARGEST_SHARE];

/**
 * Fits P(failure at x | specimen) = Φ((x − location − effect)/within), effect normal with standard deviation `between`, to
 * single hits (probit with a normal specimen effect). Maximum likelihood by its profile over the share of the variance
 * between specimens, then Newton's method on all three; shares between 0.95 and 1 are not looked at.
 *
 * @returns the fit, or why no positive finite spread fits best whatever the share (levels are those of fresh specimens on
 *   the fitted scale)
 */
export function fitSpecimenEffect(
  histories: readonly History[],
  options: SpecimenOptions,
): SpecimenEffect | NoEstimate {
  const { scale, damage = 0, nodes = 25, confidence = 0.95 } = options;
  const problem = pose(gatherPatterns(histories, scale, damage), nodes);
  if ('kind' in problem) return problem;
  const grid = profileShares(problem);
  // Without an obstacle share 0 has a fit.
  if (grid.length === 0) return problem.obstacle!;
  const best = refine(problem, grid);
  const allWithin = grid.find((f) => f.share === 0) ?? null;
  const allBetween = grid.find((f) => f.share === 1) ?? null;
  const drop = chiSquaredLaw(1).quantile(confidence) / 2;
  const within = (fit: ShareFit | null) => fit !== null && best.logLikelihood - fit.logLikelihood < drop;
  const told = !(within(allWithin) && within(allBetween));
  return {
    kind: told ? 'spreads-told' : 'spreads-untold',
    location: best.location,
    standardError: told ? best.standardError : null,
    totalSpread: best.totalSpread,
    between: told ? best.totalSpread * Math.sqrt(best.share) : null,
    within: told ? best.totalSpread * Math.sqrt(1 - best.share) : null,
    share: best.share,
    shareInterval: shareInterval(problem, grid, best, drop),
    allWithin,
    allBetween,
    logLikelihood: best.logLikelihood,
  };
}

/**
 * The fit where the share of the variance between specimens is known, from other tests: it then takes no data to tell the
 * spreads apart, and the median is nearly free of bias (bench/specimen-effect-bias.md). Null where the data contradict the
 * share (1: a specimen survived a level at or above one that failed it) or where failures do not rise with the level.
 *
 * @param share from 0 to 0.95, or 1
 */
export function fitKnownShare(
  histories: readonly History[],
  options: SpecimenOptions,
  share: number,
): ShareFit | NoEstimate | null {
  if (!((share >= 0 && share <= LARGEST_SHARE) || share === 1))
    throw new RangeError(`a share is from 0 to ${LARGEST_SHARE}, or 1, found ${share}`);
  const problem = pose(gatherPatterns(histories, options.scale, options.damage ?? 0), options.nodes ?? 25);
  return 'kind' in problem ? problem : fitAtShare(problem, share);
}

/** The most likely fit of histories that are ready, without what the spreads' being told apart needs. */
export function fitPosed(problem: Problem): ShareFit | NoEstimate {
  const grid = profileShares(problem);
  return grid.length === 0 ? problem.obstacle! : refine(problem, grid);
}

/** The fits along the grid, each begun from the one before; those that do not exist are left out. */
function profileShares(problem: Problem): ShareFit[] {
  const fits: ShareFit[] = [];
  for (const share of [0, ...GRID, 1]) {
    const fit = fitAtShare(problem, share, fits.at(-1) ?? null);
    if (fit !== null) fits.push(fit);
  }
  return fits;
}

/** What quadrature may add to a log-likelihood: a rise by less over an extreme, where there is none, is no rise. */
const NO_RISE = 1e-6;

/** The most likely share, from the best of the grid: an extreme as it is, else by golden section and Newton's method. */
function refine(problem: Problem, grid: readonly ShareFit[]): ShareFit {
  let index = 0;
  for (const [i, fit] of grid.entries()) if (fit.logLikelihood > grid[index]!.logLikelihood) index = i;
  const best = grid[index]!;
  const low = Math.max(0, grid[index - 1]?.share ?? best.share);
  const high = Math.min(LARGEST_SHARE, grid[index + 1]?.share ?? best.share);
  if (best.share === 1 || !(low < high)) return best;
  let highest = best;
  const value = (share: number): number => {
    const fit = fitAtShare(problem, share, highest);
    if (fit !== null && fit.logLikelihood > highest.logLikelihood) highest = fit;
    return fit?.logLikelihood ?? -Infinity;
  };
  goldenSection(value, low, high, 1e-3);
  const extremes = grid.filter((f) => f.share === 0 || f.share === 1);
  const extreme = extremes.find((f) => f.logLikelihood > highest.logLikelihood - NO_RISE);
  if (extreme !== undefined) return extreme;
  const inside = highest.share > 1e-3 && highest.share < LARGEST_SHARE - 1e-3;
  return inside ? polish(problem, highest) : highest;
}

/** All three parameters (η, b, θ) at once, from close by; the standard error then allows for an unknown share. */
function polish(problem: Problem, near: ShareFit): ShareFit {
  const { origin, marginal } = problem;
  const b = 1 / (near.totalSpread * Math.sqrt(1 - near.share));
  const start = Float64Array.of(-b * (near.location - origin), b, Math.sqrt(near.share / (1 - near.share)));
  const whole = emptyPeak(3);
  const found = tryMaximise(
    (p, into) => {
      marginal.evaluate(origin, p[0]!, p[1]!, p[2]!, whole);
      into.value = whole.value;
      into.gradient.set(whole.gradient);
      into.hessian.set(whole.hessian);
    },
    start,
    QUADRATURE_NOISE,
  );
  // A profile that is flat, as with one hit a specimen, has no peak to find; the golden section then stands.
  if (found === null) return near;
  const { point, value, covariance } = found;
  const [eta, steepness, theta] = point as unknown as [number, number, number];
  const offset = -eta / steepness;
  const share = theta ** 2 / (1 + theta ** 2);
  // A flat profile may lead the last steps beyond what the quadrature carries; the golden section then stands.
  if (!(steepness > 0 && share < LARGEST_SHARE)) return near;
  const variance = covariance[0]! + 2 * offset * covariance[1]! + offset ** 2 * covariance[4]!;
  return {
    share,
    logLikelihood: value,
    location: origin + offset,
    totalSpread: Math.sqrt(1 + theta ** 2) / steepness,
    standardError: Math.sqrt(variance) / steepness,
  };
}

/**
 * Where the profile falls by `drop`, sought between two shares of the grid. An extreme that is not excluded is an end
 * itself; between 0.95 and 1 nothing is looked at, so that an end there is put on the safe side.
 */
function shareInterval(problem: Problem, grid: readonly ShareFit[], best: ShareFit, drop: number) {
  const floor = best.logLikelihood - drop;
  const inside = [...grid, best].filter((f) => f.logLikelihood >= floor).sort((a, b) => a.share - b.share);
  const lowest = inside[0]!;
  const highest = inside.at(-1)!;
  const edge = (fit: ShareFit, beyond: ShareFit | undefined): number => {
    if (beyond === undefined) return fit.share;
    if (beyond.share === 1 || fit.share === 1) return beyond.share;
    const excess = (share: number) => (fitAtShare(problem, share, fit)?.logLikelihood ?? -Infinity) - floor;
    return findRoot(excess, fit.share, beyond.share, { tolerance: 1e-4 });
  };
  return {
    lower: edge(
      lowest,
      grid.findLast((f) => f.share < lowest.share),
    ),
    upper: edge(
      highest,
      grid.find((f) => f.share > highest.share),
    ),
  };
}
