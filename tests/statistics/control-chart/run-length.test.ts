import { expect, test } from 'vitest';
import { cusumChart } from '../../../src/statistics/control-chart/cusum.ts';
import { ewmaChart, ewmaHalfWidth } from '../../../src/statistics/control-chart/ewma.ts';
import {
  cusumRunLength,
  ewmaRunLength,
  shewhartRunLength,
} from '../../../src/statistics/control-chart/run-length.ts';
import { randomStream } from '../../../src/statistics/random/random-stream.ts';
import { summarise } from '../../../src/statistics/summary/moments.ts';
import reference from '../../reference/ctl-06/CTL-06-ARL.json' with { type: 'json' };
import { expectWhole, titleOf } from '../../reference/published.ts';

test(titleOf(reference), () => {
  const found: Record<string, number> = {
    'Shewhart 3-sigma ARL0': shewhartRunLength(3, 0),
    'EWMA lambda=0.3 L=3 ARL0 (design of the NIST example)': ewmaRunLength(0.3, 3, 0),
    'EWMA lambda=0.25 shift 1, Monte Carlo check of the value above': ewmaRunLength(0.25, 2.998, 1),
    'EWMA lambda=0.2 shift 1, Monte Carlo check of the value above': ewmaRunLength(0.2, 2.962, 1),
  };
  for (const h of [4, 5])
    for (const shift of [0, 0.5, 1, 2])
      found[`CUSUM k=0.5 h=${h} shift ${shift}`] = cusumRunLength(0.5, h, shift);
  for (const [weight, width] of [
    [0.4, 3.054],
    [0.25, 2.998],
    [0.2, 2.962],
    [0.1, 2.814],
    [0.05, 2.615],
  ] as const) {
    found[`EWMA lambda=${weight} L=${width} shift 0`] = ewmaRunLength(weight, width, 0);
    found[`EWMA lambda=${weight} shift 1`] = ewmaRunLength(weight, width, 1);
  }
  expectWhole(reference, found);
});

const design = { target: 0, sigma: 1, weight: 0.2, width: 2.962 };

// The charts themselves against their integral equations: 1500 runs each, within four errors. More in bench/control-charts.md.
test.each([
  [
    'cumulative sum',
    (z: readonly number[]) =>
      cusumChart(z, { target: 0, allowance: 0.5, decision: 4 }).findIndex((point) => point.signal !== null),
    cusumRunLength(0.5, 4, 1),
  ],
  [
    'moving average',
    (z: readonly number[]) => {
      const half = ewmaHalfWidth(design, Infinity);
      return ewmaChart(z, design).findIndex((point) => Math.abs(point.value) > half);
    },
    ewmaRunLength(0.2, 2.962, 1),
  ],
  [
    'single points',
    (z: readonly number[]) => z.findIndex((one) => Math.abs(one) > 3),
    shewhartRunLength(3, 1),
  ],
] as const)('simulated delay of the %s after a shift of one sigma', (_, first, exact) => {
  const lengths = Array.from({ length: 1500 }, (_, i) => {
    const random = randomStream(6, i);
    return first(Array.from({ length: 500 }, () => 1 + random.normal())) + 1;
  });
  expect(Math.min(...lengths)).toBeGreaterThan(0);
  const { mean, standardDeviation } = summarise(lengths);
  expect(Math.abs(mean - exact)).toBeLessThan((4 * standardDeviation!) / Math.sqrt(1500));
});
