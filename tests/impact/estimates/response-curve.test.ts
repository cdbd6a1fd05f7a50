import { describe, expect, it } from 'vitest';
import { responseCurve } from '../../../src/impact/estimates/response-curve.ts';
import { fitStrength } from '../../../src/impact/estimates/strength.ts';
import type { Observation } from '../../../src/statistics/likelihood/observation.ts';

const failed = (energy: number): Observation => ({ lower: -Infinity, upper: energy, count: 1 });
const survived = (energy: number): Observation => ({ lower: energy, upper: Infinity, count: 1 });

/** Invented: thirty drops at five levels, more failures the higher. */
const observations = [
  ...[40, 42, 42, 44, 44, 44, 46, 46, 46, 46, 48, 48, 48, 50].map(survived),
  ...[44, 46, 46, 46, 48, 48, 48, 48, 48, 50, 50, 50, 52, 52, 42].map(failed),
];

/** Energy at which one side of the band crosses a share, between two points. */
function crossing(points: readonly { energy: number; share: number }[], share: number): number {
  const i = points.findIndex((point) => point.share >= share);
  if (i < 1) throw new Error('the curve does not reach the share');
  const [before, after] = [points[i - 1]!, points[i]!];
  return (
    before.energy + ((share - before.share) / (after.share - before.share)) * (after.energy - before.energy)
  );
}

describe('a response curve', () => {
  // The interval of a share at an energy and that of an energy at a share come from one likelihood ratio: the band is
  // crossed where the interval of the quantile ends. The intervals of quantiles are held against R elsewhere.
  it.each([0.1, 0.5, 0.9])('has a band that ends where the interval of the %g point ends', (share) => {
    for (const law of ['normal', 'logistic'] as const) {
      const { points } = responseCurve(observations, law, 0.95, [8, 110])!;
      const { value, lower, upper } = fitStrength(observations, law).quantile(share, 0.95, 2);
      const cross = (side: 'failure' | 'lower' | 'upper') =>
        crossing(
          points.map((point) => ({ energy: point.energy, share: point[side]! })),
          share,
        );
      // Points are some 2 J apart, and straight lines between them.
      expect(cross('failure')).toBeCloseTo(value!, 0);
      expect(Math.abs(cross('upper') - lower!)).toBeLessThan(0.35);
      expect(Math.abs(cross('lower') - upper!)).toBeLessThan(0.35);
    }
  });

  it('has no curve but still a band where no single law fits best', () => {
    const { points } = responseCurve([survived(40), survived(42)], 'normal', 0.95)!;
    expect(points.every(({ failure }) => failure === null)).toBe(true);
    expect(points.every(({ lower, upper }) => lower === 0 && upper > 0)).toBe(true);
  });

  it('is there for every law, rises, and stays between its limits', () => {
    for (const law of ['normal', 'lognormal', 'logistic', 'weibull'] as const) {
      const { points } = responseCurve(observations, law, 0.95)!;
      for (const [i, { failure, lower, upper }] of points.entries()) {
        expect(failure).toBeGreaterThanOrEqual(i === 0 ? 0 : points[i - 1]!.failure!);
        expect(lower).toBeLessThanOrEqual(failure!);
        expect(upper).toBeGreaterThanOrEqual(failure!);
      }
    }
  });

  it('is none of nothing', () => {
    expect(responseCurve([], 'normal', 0.95)).toBeNull();
  });
});
