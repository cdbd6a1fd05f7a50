import { expect, it } from 'vitest';
import { hazardExcess } from '../../../src/statistics/special/mills-ratio.ts';
import { readTable, relativeError, worst } from './table.ts';

// mpmath with 60 digits, tests/reference/scripts/special-tables.py: (log Φ)″ = −h·E and (log Φ)′ = h at −x.
it('agrees with 60 digits from 0 to 3e9', () => {
  const left = readTable('normal').filter(({ z }) => z! <= 0);
  const excess = left.map((row) => ({ ...row, excess: -row.d2LogCdf! / row.dLogCdf! }));
  expect(worst(excess, 'excess', ({ z }) => hazardExcess(-z!))).toBeLessThan(2e-15);
});

it('joins its limit 1/x without a step', () => {
  expect(relativeError(hazardExcess(1e9), 1e-9)).toBeLessThan(1e-15);
  expect(hazardExcess(1e300)).toBe(1e-300);
  expect(hazardExcess(Infinity)).toBe(0);
});
