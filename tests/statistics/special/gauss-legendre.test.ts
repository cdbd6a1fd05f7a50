import { expect, test } from 'vitest';
import { gaussLegendre } from '../../../src/statistics/special/gauss-legendre.ts';

// Abramowitz & Stegun, table 25.4 (from memory): n = 5, nodes 0, 0.538469310105683, 0.906179845938664.
test('five points as tabulated', () => {
  const { nodes, weights } = gaussLegendre(5, -1, 1);
  expect(nodes[3]).toBeCloseTo(0.538469310105683, 14);
  expect(nodes[4]).toBeCloseTo(0.906179845938664, 14);
  expect(weights[2]).toBeCloseTo(0.568888888888889, 14);
});

test('ten points integrate x¹⁹ exactly, eighty a bell', () => {
  const ten = gaussLegendre(10, 0, 2);
  const power = ten.nodes.reduce((sum, x, i) => sum + ten.weights[i]! * x ** 19, 0);
  expect(Math.abs(power / (2 ** 20 / 20) - 1)).toBeLessThan(1e-13);
  const eighty = gaussLegendre(80, -9, 9);
  const bell = eighty.nodes.reduce((sum, x, i) => sum + eighty.weights[i]! * Math.exp(-0.5 * x * x), 0);
  expect(Math.abs(bell / Math.sqrt(2 * Math.PI) - 1)).toBeLessThan(1e-13);
});
