import { normal } from '../laws/normal.ts';
import type { LogTerm } from '../laws/standard-law.ts';
import type { Peak } from '../regression/newton.ts';
import { gaussHermite } from './gauss-hermite.ts';
import type { Pattern } from './history.ts';

/**
 * The log-likelihood of single hits with a normal effect of the specimen,
 *
 *   Σ count·ln ∫ Π Φ(±(η + b·(level − origin) + θ·u)) φ(u) du,   + for failures, − for survivals,
 *
 * b = 1/spread from hit to hit, θ = spread between specimens/spread from hit to hit.
 */
export interface Marginal {
  /**
   * Fills value, gradient and second derivatives by (η, b, θ). The derivatives are those of the integral, by expectations
   * under the specimen's effect given its hits: ℓ′ = E[s], ℓ″ = E[s′] + Var[s] (Louis 1982, JRSS B 44, 226–233).
   */
  evaluate(origin: number, eta: number, b: number, theta: number, into: Peak): void;
}

/**
 * θ beyond which the integrand of a specimen that only survived, or only failed, is so nearly a step that three times and six
 * times the nodes are taken: shares of the variance of 0.69 and 0.9.
 */
const STEEP = 1.5;
const STEEPEST = 3;
const MOST_NODES = 180;
const LOG_ROOT_PI = 0.5723649429247001;

/**
 * The likelihood by adaptive Gauss–Hermite quadrature: nodes centred at the most likely effect of each specimen and scaled
 * by the curvature there (Pinheiro and Bates 1995, J. Comput. Graph. Statist. 4, 12–35). At θ = 0 there is nothing to
 * integrate.
 *
 * @param order number of nodes, three and six times as many where θ is large; with 25 the logarithm is then good to 1e-7 at
 *   θ up to 4.4 (measured against mpmath and against the exact flat profile of single hits, see the tests)
 */
export function marginalLikelihood(patterns: readonly Pattern[], order: number): Marginal {
  const usual = gaussHermite(order);
  const fine = gaussHermite(Math.min(MOST_NODES, 3 * order));
  const finest = gaussHermite(Math.min(MOST_NODES, 6 * order));
  const term: LogTerm = { value: 0, slope: 0, curvature: 0 };
  // Sums over the hits of a specimen: the log-likelihood, its slope and curvature by z, plain and times the level.
  let value = 0;
  let slope = 0;
  let slopeLevel = 0;
  let curve = 0;
  let curveLevel = 0;
  let curveLevel2 = 0;
  const sumHits = (pattern: Pattern, origin: number, eta: number, b: number): void => {
    const { levels, signs } = pattern;
    value = 0;
    slope = 0;
    slopeLevel = 0;
    curve = 0;
    curveLevel = 0;
    curveLevel2 = 0;
    for (let k = 0; k < levels.length; k++) {
      const y = levels[k]! - origin;
      const sign = signs[k]!;
      normal.logCdfTerm(sign * (eta + b * y), term);
      const s = sign * term.slope;
      const c = term.curvature;
      value += term.value;
      slope += s;
      slopeLevel += s * y;
      curve += c;
      curveLevel += c * y;
      curveLevel2 += c * y * y;
    }
  };

  /** The most likely effect u of the specimen, by Newton's method on a concave function; returns 1/√(−g″) there. */
  const findMode = (pattern: Pattern, origin: number, eta: number, b: number, theta: number): number => {
    let u = pattern.mode;
    sumHits(pattern, origin, eta + theta * u, b);
    let height = value - 0.5 * u * u;
    for (let i = 0; i < 100; i++) {
      const gradient = theta * slope - u;
      const curvature = theta * theta * curve - 1;
      let step = -gradient / curvature;
      if (Math.abs(step) < 1e-10 * (1 + Math.abs(u))) break;
      for (;;) {
        const next = u + step;
        sumHits(pattern, origin, eta + theta * next, b);
        const reached = value - 0.5 * next * next;
        if (reached >= height - 1e-12 * Math.abs(height) || Math.abs(step) < 1e-12) {
          u = next;
          height = reached;
          break;
        }
        step /= 2;
      }
    }
    pattern.mode = u;
    return 1 / Math.sqrt(1 - theta * theta * curve);
  };

  const logs = new Float64Array(finest.nodes.length);
  const sums = new Float64Array(finest.nodes.length * 6);

  const integrate = (
    pattern: Pattern,
    origin: number,
    eta: number,
    b: number,
    theta: number,
    into: Peak,
  ): void => {
    const { nodes, logWeights } = theta > STEEPEST ? finest : theta > STEEP ? fine : usual;
    const width = Math.SQRT2 * findMode(pattern, origin, eta, b, theta);
    const mode = pattern.mode;
    let highest = -Infinity;
    for (let j = 0; j < nodes.length; j++) {
      const u = mode + width * nodes[j]!;
      sumHits(pattern, origin, eta + theta * u, b);
      const log = logWeights[j]! + value - 0.5 * u * u;
      logs[j] = log;
      if (log > highest) highest = log;
      sums[6 * j] = slope;
      sums[6 * j + 1] = slopeLevel;
      sums[6 * j + 2] = curve;
      sums[6 * j + 3] = curveLevel;
      sums[6 * j + 4] = curveLevel2;
      sums[6 * j + 5] = u;
    }
    let total = 0;
    let m0 = 0;
    let m1 = 0;
    let m2 = 0;
    let h00 = 0;
    let h01 = 0;
    let h11 = 0;
    let h02 = 0;
    let h12 = 0;
    let h22 = 0;
    for (let j = 0; j < nodes.length; j++) {
      const p = Math.exp(logs[j]! - highest);
      const s0 = sums[6 * j]!;
      const s1 = sums[6 * j + 1]!;
      const u = sums[6 * j + 5]!;
      const s2 = s0 * u;
      const c0 = sums[6 * j + 2]!;
      const c1 = sums[6 * j + 3]!;
      total += p;
      m0 += p * s0;
      m1 += p * s1;
      m2 += p * s2;
      h00 += p * (c0 + s0 * s0);
      h01 += p * (c1 + s0 * s1);
      h11 += p * (sums[6 * j + 4]! + s1 * s1);
      h02 += p * (c0 * u + s0 * s2);
      h12 += p * (c1 * u + s1 * s2);
      h22 += p * (c0 * u * u + s2 * s2);
    }
    m0 /= total;
    m1 /= total;
    m2 /= total;
    const { count } = pattern;
    const { gradient, hessian } = into;
    into.value += count * (highest + Math.log(total * width) - 0.5 * Math.LN2 - LOG_ROOT_PI);
    gradient[0]! += count * m0;
    gradient[1]! += count * m1;
    gradient[2]! += count * m2;
    hessian[0]! += count * (h00 / total - m0 * m0);
    hessian[1]! += count * (h01 / total - m0 * m1);
    hessian[2]! += count * (h02 / total - m0 * m2);
    hessian[4]! += count * (h11 / total - m1 * m1);
    hessian[5]! += count * (h12 / total - m1 * m2);
    hessian[8]! += count * (h22 / total - m2 * m2);
  };

  return {
    evaluate(origin, eta, b, theta, into) {
      const { gradient, hessian } = into;
      into.value = 0;
      gradient.fill(0);
      hessian.fill(0);
      for (const pattern of patterns) {
        if (theta !== 0) {
          integrate(pattern, origin, eta, b, theta, into);
          continue;
        }
        const { count } = pattern;
        sumHits(pattern, origin, eta, b);
        into.value += count * value;
        gradient[0]! += count * slope;
        gradient[1]! += count * slopeLevel;
        hessian[0]! += count * curve;
        hessian[1]! += count * curveLevel;
        hessian[4]! += count * curveLevel2;
        // By θ at 0: E[u·s] = 0 and E[c·u² + (s·u)²] = c + s².
        hessian[8]! += count * (curve + slope * slope);
      }
      hessian[3] = hessian[1]!;
      hessian[6] = hessian[2]!;
      hessian[7] = hessian[5]!;
    },
  };
}
