import { expect, test } from 'vitest';
import {
  cumulativeIncidence,
  observationsOfCause,
  reliabilityAgainstAll,
} from '../../../src/statistics/life/competing-causes.ts';
import r from '../../reference/life/survival.json' with { type: 'json' };

// tests/reference/scripts/life-survival.R: survfit of a multi-state response.
test('cumulative incidence as R has it', () => {
  const lives = r.competing.t.map((time, i) => ({ time, cause: r.competing.cause[i] || null }));
  for (const cause of ['bead', 'tread'] as const) {
    const steps = cumulativeIncidence(lives, cause);
    expect(steps.map((step) => step.time)).toEqual(r.competing[cause].map(([time]) => time));
    for (const [i, [, incidence]] of r.competing[cause].entries())
      expect(steps[i]!.incidence).toBeCloseTo(incidence!, 10);
  }
});

test('a life that ended by another cause is a suspension at its lower end', () => {
  const lives = [
    { lower: 100, upper: 120, cause: 'bead' },
    { lower: 200, upper: 200, cause: 'tread' },
    { lower: 300, upper: Infinity, cause: null },
  ];
  expect(observationsOfCause(lives, 'tread')).toEqual([
    { lower: 100, upper: Infinity, count: 1 },
    { lower: 200, upper: 200, count: 1 },
    { lower: 300, upper: Infinity, count: 1 },
  ]);
  expect(reliabilityAgainstAll([0.9, 0.8])).toBeCloseTo(0.72, 12);
});
