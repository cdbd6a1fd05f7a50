import type { StandardLaw } from '../laws/standard-law.ts';

/** Levels with how many drops each had, on the fitted scale. */
export interface Dose {
  readonly level: number;
  readonly drops: number;
}

/** Sums of the Fisher information of η = z over the levels: Σ n·w, Σ n·w·z, Σ n·w·z², with w = f²/(F·S). */
export interface Information {
  readonly s0: number;
  readonly s1: number;
  readonly s2: number;
}

/** The information of one drop at z standard units: f(z)²/(F(z)·S(z)). */
export function informationWeight(law: StandardLaw, z: number): number {
  return Math.exp(2 * law.logPdf(z) - law.logCdf(z) - law.logSf(z));
}

/** The expected information of drops at levels, under a location and a scale. */
export function informationOf(
  doses: readonly Dose[],
  law: StandardLaw,
  location: number,
  scale: number,
): Information {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  for (const { level, drops } of doses) {
    const z = (level - location) / scale;
    const w = drops * informationWeight(law, z);
    s0 += w;
    s1 += w * z;
    s2 += w * z * z;
  }
  return { s0, s1, s2 };
}

/** Determinant of the information of location and scale, each in units of the scale, times scale⁻⁴. */
export function determinant({ s0, s1, s2 }: Information, scale: number): number {
  return (s0 * s2 - s1 * s1) / scale ** 4;
}

/** How far from the location the search goes, in scales: beyond, a drop of any law tells next to nothing. */
const REACH = 6;
const GRID = 240;

/**
 * The place z of the next drop that makes the determinant of the information largest (D-optimality; Neyer 1994,
 * Technometrics 36, 61–70, the criterion from memory). Adding one drop at z adds w(z)·(s₂ − 2·z·s₁ + z²·s₀) to the
 * determinant, which has a maximum on each side of the location: both are found, the larger is taken, and the upper of
 * two equal ones.
 *
 * @param from @param to the range of z that may be set, at most six scales either way
 */
export function dOptimalPlace(
  information: Information,
  law: StandardLaw,
  from = -REACH,
  to = REACH,
): { readonly place: number; readonly others: readonly number[] } {
  const gain = (z: number) =>
    informationWeight(law, z) * (information.s2 - 2 * z * information.s1 + z * z * information.s0);
  const low = Math.max(from, -REACH);
  const high = Math.min(to, REACH);
  if (!(low < high)) return { place: from > REACH ? from : to, others: [] };
  const at = (i: number) => low + ((high - low) * i) / GRID;
  const maxima: number[] = [];
  for (let i = 0; i <= GRID; i++) {
    const here = gain(at(i));
    const rises = i === 0 || here > gain(at(i - 1));
    const falls = i === GRID || here >= gain(at(i + 1));
    if (rises && falls) maxima.push(peak(gain, Math.max(low, at(i - 1)), Math.min(high, at(i + 1))));
  }
  const place = maxima.reduce((best, z) => (gain(z) >= gain(best) * (1 - 1e-12) ? z : best));
  return { place, others: maxima.filter((z) => z !== place) };
}

/** The places of the search with their weights, for simulated tests, which ask thousands of times. */
export interface PlaceGrid {
  readonly places: Float64Array;
  readonly weights: Float64Array;
}

export function placeGrid(law: StandardLaw): PlaceGrid {
  const places = Float64Array.from({ length: GRID + 1 }, (_, i) => -REACH + (2 * REACH * i) / GRID);
  return { places, weights: places.map((z) => informationWeight(law, z)) };
}

/** informationOf with weights read between the places of a grid; nothing is told beyond them. */
export function roughInformation(
  doses: readonly Dose[],
  { weights }: PlaceGrid,
  location: number,
  scale: number,
): Information {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  for (const { level, drops } of doses) {
    const z = (level - location) / scale;
    const place = ((z + REACH) * GRID) / (2 * REACH);
    const k = Math.floor(place);
    if (!(k >= 0 && k < GRID)) continue;
    const w = drops * (weights[k]! + (place - k) * (weights[k + 1]! - weights[k]!));
    s0 += w;
    s1 += w * z;
    s2 += w * z * z;
  }
  return { s0, s1, s2 };
}

/** dOptimalPlace to a twentieth of a scale: the best place of a grid, or the end of the range that lies beyond it. */
export function roughPlace(
  { s0, s1, s2 }: Information,
  { places, weights }: PlaceGrid,
  from: number,
  to: number,
): number {
  let best = -Infinity;
  let place = from > REACH ? from : to;
  for (let i = 0; i <= GRID; i++) {
    const z = places[i]!;
    if (z < from || z > to) continue;
    const gain = weights[i]! * (s2 - 2 * z * s1 + z * z * s0);
    if (gain < best) continue;
    best = gain;
    place = z;
  }
  return place;
}

/**
 * The two-point design that tells location and scale best, half of the drops at each of ±z: the z that makes w(z)·z
 * largest for a symmetric law. 1.1381 for the normal law, 1.5434 for the logistic.
 */
export function twoPointDesign(law: StandardLaw): { readonly place: number; readonly share: number } {
  const place = peak((z) => informationWeight(law, z) * z, 0.1, REACH);
  return { place, share: law.cdf(place) };
}

/** Maximum between two places by ternary steps, then by the vertex of a parabola, which takes the digits further. */
function peak(of: (z: number) => number, from: number, to: number): number {
  let low = from;
  let high = to;
  while (high - low > 1e-3) {
    const third = (high - low) / 3;
    if (of(low + third) < of(high - third)) low += third;
    else high -= third;
  }
  let z = (low + high) / 2;
  // Newton's method on differences: near a maximum values alone settle only half of the digits.
  for (let i = 0; i < 20; i++) {
    const h = 1e-3;
    const slope = (of(z - 2 * h) - 8 * of(z - h) + 8 * of(z + h) - of(z + 2 * h)) / (12 * h);
    const curvature = (of(z - h) - 2 * of(z) + of(z + h)) / (h * h);
    if (!(curvature < 0)) break;
    const step = -slope / curvature;
    z = Math.min(to, Math.max(from, z + step));
    if (Math.abs(step) < 1e-12) break;
  }
  return z;
}
