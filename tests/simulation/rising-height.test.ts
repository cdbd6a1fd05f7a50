import { describe, expect, it } from 'vitest';
import { designWith, simulated } from './designs.ts';

// Mean noted heights of rising-height tests: 100,000 tyres of median 500 mm each, simulated elsewhere (computed; printed to
// whole millimetres, so that a half is allowed beside 3.5 Monte Carlo errors of ours; theirs is 0.13 mm).
const CASES = [
  { between: 1, spread: 40, start: 350, step: 25, damage: 0, mean: 512 },
  { between: 1, spread: 40, start: 350, step: 50, damage: 0, mean: 525 },
  { between: 0, spread: 40, start: 350, step: 50, damage: 0, mean: 519 },
  { between: 0, spread: 40, start: 350, step: 25, damage: 0, mean: 497 },
  { between: 0, spread: 40, start: 350, step: 10, damage: 0, mean: 473 },
  { between: 0.5, spread: Math.hypot(30, 30), start: 350, step: 25, damage: 0, mean: 504 },
  { between: 1, spread: 40, start: 350, step: 25, damage: 0.01, mean: 487 },
  { between: 1, spread: 40, start: 350, step: 25, damage: 0.02, mean: 469 },
];

describe('rising height: what start, step, scatter and damage do to the mean noted height', () => {
  for (const { between, spread, start, step, damage, mean } of CASES) {
    it(`${between} between tyres, ${start}/${step} mm, damage ${damage}: ${mean} mm`, async () => {
      const design = designWith(
        { start, step: { kind: 'additive', size: step }, stop: { specimens: 10 } },
        'pinch-rising-height',
      );
      const assumed = { law: 'normal', median: 500, spread, between, damage, anyOffset: false } as const;
      const point = await simulated(design, assumed, 2000);
      const { bias } = point.estimates.find(({ method }) => method === 'mean-of-noted-heights')!;
      // Damage may be counted as (1 − d)ᵏ or 1 − d·k; at these numbers they differ by less than a millimetre.
      const margin = damage > 0 ? 1.5 : 0.5;
      expect(Math.abs(500 + bias!.value - mean)).toBeLessThan(margin + 3.5 * bias!.error);
    });
  }
});
