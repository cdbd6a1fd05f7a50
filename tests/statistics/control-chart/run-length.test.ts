import { test } from 'vitest';
import {
  cusumRunLength,
  ewmaRunLength,
  shewhartRunLength,
} from '../../../src/statistics/control-chart/run-length.ts';
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
