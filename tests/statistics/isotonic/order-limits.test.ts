import fc from 'fast-check';
import { expect, test } from 'vitest';
import { orderInterval } from '../../../src/statistics/isotonic/order-interval.ts';
import { orderLimits } from '../../../src/statistics/isotonic/order-limits.ts';
import reference from '../../reference/isotonic/order-limits.json' with { type: 'json' };

const responses = (c: { failures: number[]; drops: number[] }) =>
  c.failures.map((failures, i) => ({ level: i + 1, failures, drops: c.drops[i]! }));

// tests/reference/scripts/isotonic-order-limits.R: every outcome enumerated. The rule is from memory of Morris 1988.
test.each(reference.cases)('limits of $failures of $drops (R script, computed)', (c) => {
  for (const [i, limits] of orderLimits(responses(c), c.confidence).entries()) {
    expect(Math.abs(limits.lower - c.lower[i]!)).toBeLessThan(1e-9);
    expect(Math.abs(limits.upper - c.upper[i]!)).toBeLessThan(1e-9);
  }
});

test('one level alone: the exact binomial limits (10 of 30, 95 %: R binom.test, computed)', () => {
  const [limits] = orderLimits([{ level: 1, failures: 10, drops: 30 }], 0.95);
  expect(limits!.lower).toBeCloseTo(0.1728742, 7);
  expect(limits!.upper).toBeCloseTo(0.52812, 7);
});

test('the interval for the median is read off the same limits', () => {
  const set = reference.cases[1]!;
  const below = set.upper.map((u, i) => (u < 0.5 ? i + 1 : -Infinity));
  const above = set.lower.map((l, i) => (l > 0.5 ? i + 1 : Infinity));
  expect(orderInterval(responses(set), 0.5, 0.9)).toEqual({
    lower: Math.max(...below),
    upper: Math.min(...above),
  });
});

test('without survivals the interval is unbounded downwards', () => {
  const set = [{ level: 300, failures: 8, drops: 8 }];
  expect(orderInterval(set, 0.5, 0.95)).toEqual({ lower: -Infinity, upper: 300 });
});

test('the interval is the inversion of the limits at every level', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.nat(8), fc.nat(8)), { minLength: 1, maxLength: 8 }),
      fc.constantFrom(0.1, 0.3, 0.5, 0.8),
      (counts, share) => {
        const set = counts.map(([failures, survivals], i) => ({
          level: i + 1,
          failures,
          drops: failures + survivals,
        }));
        const limits = orderLimits(set, 0.9);
        const below = limits.filter(({ upper }) => upper < share).map(({ level }) => level);
        const above = limits.filter(({ lower }) => lower > share).map(({ level }) => level);
        const ends = [Math.max(-Infinity, ...below), Math.min(Infinity, ...above)];
        const { lower, upper } = orderInterval(set, share, 0.9);
        expect([lower, upper]).toEqual(ends.sort((a, b) => a - b));
      },
    ),
    { seed: 20261125 },
  );
});
