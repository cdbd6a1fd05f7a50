import { expect, test } from 'vitest';
import { toleranceFactor } from '../../../src/statistics/tolerance/tolerance-factor.ts';
import sen10 from '../../reference/sen-10/SEN-10-one-sided-tolerance-factors.json' with { type: 'json' };

test('SEN-10 (computed by R’s qt; printed digits from memory): the whole table', () => {
  let checked = 0;
  for (const [n, row] of Object.entries(sen10.data.table)) {
    for (const [key, k] of Object.entries(row)) {
      const [, proportion, confidence] = /^p(.*)_c(.*)$/.exec(key)!;
      const found = toleranceFactor(Number(proportion), Number(confidence), Number(n));
      expect(Math.abs(found - k), `${key} n ${n}`).toBeLessThan(2e-6);
      checked++;
    }
  }
  expect(checked).toBe(120);
});

test('SEN-10: the lines as printed (from memory)', () => {
  for (const { name, value, tol } of sen10.expected) {
    const n = Number(/n=(\d+)/.exec(name)![1]);
    for (const [i, proportion] of [0.9, 0.95, 0.99].entries())
      expect(Math.abs(toleranceFactor(proportion, 0.95, n) - value[i]!)).toBeLessThan(tol);
  }
});

test('impossible arguments are named', () => {
  expect(() => toleranceFactor(0.9, 0.95, 1)).toThrow('n 1 is below 2');
  expect(() => toleranceFactor(1, 0.95, 9)).toThrow('proportion 1 is not between 0 and 1');
});
