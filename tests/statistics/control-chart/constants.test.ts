import { expect, test } from 'vitest';
import { type ChartConstants, chartConstants } from '../../../src/statistics/control-chart/constants.ts';
import reference from '../../reference/ctl-01/CTL-01-constants.json' with { type: 'json' };
import { expectWhole, titleOf } from '../../reference/published.ts';

test(titleOf(reference), () => {
  const found: Record<string, number> = {};
  for (let n = 2; n <= 25; n++) {
    const constants = chartConstants(n);
    for (const { name } of reference.expected) {
      const [size, key] = name.split(' ') as [string, keyof ChartConstants];
      if (size === `n=${n}`) found[name] = constants[key];
    }
  }
  expectWhole(reference, found);
});

// Closed forms: d2(2) = 2/√π, d3(2)² = 2 − 4/π, d2(3) = 3/√π (range of three; from memory, David & Nagaraja, Order Statistics).
test('the moments of the range are exact to the last digits', () => {
  expect(Math.abs(chartConstants(2).d2 - 2 / Math.sqrt(Math.PI))).toBeLessThan(1e-14);
  expect(Math.abs(chartConstants(2).d3 - Math.sqrt(2 - 4 / Math.PI))).toBeLessThan(1e-14);
  expect(Math.abs(chartConstants(3).d2 - 3 / Math.sqrt(Math.PI))).toBeLessThan(1e-14);
});

test('a subgroup of one has no range', () => {
  expect(() => chartConstants(1)).toThrow('subgroups of 1');
});
