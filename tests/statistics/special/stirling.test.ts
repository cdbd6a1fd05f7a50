import { expect, it } from 'vitest';
import { deviance, stirlingError } from '../../../src/statistics/special/stirling.ts';
import { relativeError } from './table.ts';

// δ(1) = 1 − ½ ln 2π, since log Γ(1) = 0.
it('is what Stirling’s formula lacks', () => {
  expect(Math.abs(stirlingError(1) - (1 - 0.5 * Math.log(2 * Math.PI)))).toBeLessThan(1e-15);
  // First terms of the asymptotic series, exact to 1e-17 here.
  expect(relativeError(stirlingError(1000), 1 / 12e3 - 1 / 360e9)).toBeLessThan(1e-14);
});

it('the deviance keeps its digits near its zero and joins the direct form', () => {
  // With x = m(1 + e): m(e²/2 − e³/6 + …), by hand
  const e = 2 ** -20;
  expect(relativeError(deviance(3 * (1 + e), 3), 3 * (e ** 2 / 2 - e ** 3 / 6 + e ** 4 / 12))).toBeLessThan(
    1e-14,
  );
  expect(deviance(5, 5)).toBe(0);
  expect(deviance(0, 2)).toBe(2);
  for (const x of [0.9, 1.1, 2.9, 3.1, 8.9, 9.1, 50]) {
    expect(Math.abs(deviance(x, 3) - (x * Math.log(x / 3) + 3 - x))).toBeLessThan(1e-14 * (3 + x));
  }
});
