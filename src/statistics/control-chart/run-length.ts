import { normal } from '../laws/normal.ts';
import { gaussLegendre } from '../special/gauss-legendre.ts';
import { solveLinear } from '../special/linear-system.ts';
import { ewmaHalfWidth } from './ewma.ts';

/** Points of the quadrature: the kernels are normal densities, smooth on the scale of the limits. */
const POINTS = 80;

/**
 * Average number of points until a chart of single points with limits at ± width sigma signals, the mean shifted by so many
 * sigma: 1/P(outside).
 */
export function shewhartRunLength(width: number, shift: number): number {
  return 1 / (normal.cdf(-width - shift) + normal.sf(width - shift));
}

/**
 * Average run length of the two-sided cumulative sum from 0, allowance k and decision limit h in sigma: 1/L = 1/L⁺ + 1/L⁻
 * (Van Dobben de Bruyn 1968), each side by Page's integral equation
 * L(s) = 1 + L(0)·Φ(k − s − δ) + ∫₀ʰ L(y)·φ(y + k − s − δ) dy.
 */
export function cusumRunLength(allowance: number, decision: number, shift: number): number {
  return 1 / (1 / oneSided(allowance, decision, shift) + 1 / oneSided(allowance, decision, -shift));
}

function oneSided(k: number, h: number, shift: number): number {
  const { nodes, weights } = gaussLegendre(POINTS, 0, h);
  // The first unknown is L(0); the others are L at the nodes.
  const starts = [0, ...nodes];
  const size = POINTS + 1;
  const matrix = new Float64Array(size * size);
  for (const [i, s] of starts.entries()) {
    matrix[i * size + i] = 1;
    matrix[i * size]! -= normal.cdf(k - s - shift);
    for (let j = 0; j < POINTS; j++)
      matrix[i * size + j + 1]! -= weights[j]! * normal.pdf(nodes[j]! + k - s - shift);
  }
  return solveLinear(matrix, new Float64Array(size).fill(1))[0]!;
}

/**
 * Average run length of the exponentially weighted moving average from its target, with limits of the long run at ± width of its
 * standard deviations: Fredholm's equation of Crowder (1987), Technometrics 29, 401–407,
 * L(u) = 1 + (1/λ) ∫ L(y)·φ((y − (1 − λ)u)/λ − δ) dy over the limits.
 */
export function ewmaRunLength(weight: number, width: number, shift: number): number {
  const limit = ewmaHalfWidth({ target: 0, sigma: 1, weight, width }, Infinity);
  const { nodes, weights } = gaussLegendre(POINTS, -limit, limit);
  const matrix = new Float64Array(POINTS * POINTS);
  const kernel = (u: number, j: number) =>
    (weights[j]! / weight) * normal.pdf((nodes[j]! - (1 - weight) * u) / weight - shift);
  for (let i = 0; i < POINTS; i++)
    for (let j = 0; j < POINTS; j++) matrix[i * POINTS + j] = (i === j ? 1 : 0) - kernel(nodes[i]!, j);
  const lengths = solveLinear(matrix, new Float64Array(POINTS).fill(1));
  return lengths.reduce((sum, length, j) => sum + kernel(0, j) * length, 1);
}
