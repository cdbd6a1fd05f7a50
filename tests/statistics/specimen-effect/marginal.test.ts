import { describe, expect, test } from 'vitest';
import { gaussHermite } from '../../../src/statistics/specimen-effect/gauss-hermite.ts';
import { marginalLikelihood } from '../../../src/statistics/specimen-effect/marginal.ts';
import { emptyPeak } from '../../../src/statistics/specimen-effect/share.ts';
import reference from '../../reference/specimen-effect/quadrature.json' with { type: 'json' };

// tests/reference/scripts/specimen-effect-quadrature.py: numpy and mpmath at 40 digits, computed.
test.each(reference.rules)('Gauss–Hermite rule of $order nodes (numpy)', ({ order, nodes, weights }) => {
  const rule = gaussHermite(order);
  for (const [i, node] of nodes.entries()) {
    expect(Math.abs(rule.nodes[i]! - node)).toBeLessThan(1e-13 * Math.max(1, Math.abs(node)));
    const logWeight = Math.log(weights[i]!) + node * node;
    expect(Math.abs(rule.logWeights[i]! - logWeight)).toBeLessThan(1e-10);
  }
});

test('every rule up to 180 nodes is a rule: rising nodes, and the normal integral is 1', () => {
  for (let order = 1; order <= 180; order++) {
    const { nodes, logWeights } = gaussHermite(order);
    let sum = 0;
    for (let i = 0; i < order; i++) {
      if (i > 0) expect(nodes[i]!).toBeGreaterThan(nodes[i - 1]!);
      sum += Math.exp(logWeights[i]! - nodes[i]! ** 2);
    }
    expect(Math.abs(sum / Math.sqrt(Math.PI) - 1)).toBeLessThan(1e-12);
  }
});

test('a rule of no nodes is refused', () => {
  expect(() => gaussHermite(0)).toThrow('whole number from 1 to 180');
});

describe('one specimen, likelihood and score (mpmath)', () => {
  test.each(reference.cases)('$levels, θ = $theta', (c) => {
    const pattern = {
      levels: Float64Array.from(c.levels),
      signs: Float64Array.from(c.signs),
      count: 1,
      mode: 0,
    };
    const found = (order: number) => {
      const peak = emptyPeak(3);
      marginalLikelihood([pattern], order).evaluate(0, c.eta, c.b, c.theta, peak);
      return peak;
    };
    expect(Math.abs(found(25).value - c.logLikelihood)).toBeLessThan(1e-7);
    const { value, gradient } = found(150);
    expect(Math.abs(value - c.logLikelihood)).toBeLessThan(1e-8);
    for (const [i, slope] of [c.byEta, c.byB, c.byTheta].entries())
      expect(Math.abs(gradient[i]! - slope)).toBeLessThan(1e-6 * Math.max(1, Math.abs(slope)));
  });
});

test('second derivatives are the slopes of the first (central differences of the checked score)', () => {
  const c = reference.cases[0]!;
  const pattern = {
    levels: Float64Array.from(c.levels),
    signs: Float64Array.from(c.signs),
    count: 3,
    mode: 0,
  };
  const marginal = marginalLikelihood([pattern], 80);
  const at = (p: readonly number[]) => {
    const peak = emptyPeak(3);
    marginal.evaluate(470, p[0]!, p[1]!, p[2]!, peak);
    return peak;
  };
  const point = [-0.4, c.b, c.theta];
  const { hessian } = at(point);
  for (let i = 0; i < 3; i++) {
    const h = 1e-5 * Math.abs(point[i]!);
    const up = at(point.map((v, k) => (k === i ? v + h : v)));
    const down = at(point.map((v, k) => (k === i ? v - h : v)));
    for (let j = 0; j < 3; j++) {
      const slope = (up.gradient[j]! - down.gradient[j]!) / (2 * h);
      expect(Math.abs(hessian[3 * i + j]! - slope)).toBeLessThan(1e-5 * (1 + Math.abs(slope)));
    }
  }
});
