import { describe, expect, it } from 'vitest';
import { tyresOf } from '../../src/simulation/strength.ts';
import { randomStream } from '../../src/statistics/random/random-stream.ts';

const step = { kind: 'additive', size: 10 } as const;

describe('tyres of a known strength', () => {
  it('fail in half of the hits at the median, whatever the law and wherever the variance lies', () => {
    for (const law of ['normal', 'lognormal', 'logistic', 'weibull'] as const) {
      for (const between of [0, 0.5, 1]) {
        const spread = law === 'normal' || law === 'logistic' ? 5 : 0.1;
        const tyres = tyresOf({ law, median: 50, spread, between, damage: 0, anyOffset: false }, step, 1, 0);
        const stream = randomStream(3, 0);
        let failed = 0;
        for (let i = 0; i < 4000; i++) failed += tyres.chance(50, stream.normal(), 0);
        // 3.5 binomial errors of 4000 tyres: 0.028.
        expect(Math.abs(failed / 4000 - 0.5)).toBeLessThan(0.028);
        expect(tyres.quantile(0.5)).toBeCloseTo(50, 10);
      }
    }
  });

  it('lie at 50 − 1.2815515655 · 5 J for the weakest tenth of a normal law (handbook: z of 10 %)', () => {
    const tyres = tyresOf(
      { law: 'normal', median: 50, spread: 5, between: 0, damage: 0, anyOffset: false },
      step,
      1,
      0,
    );
    expect(tyres.quantile(0.1)).toBeCloseTo(50 - 1.2815515655 * 5, 8);
    expect(tyres.chance(tyres.quantile(0.1), 0, 0)).toBeCloseTo(0.1, 10);
  });

  it('keep one threshold where all variance lies between them, and lose the stated share by each hit', () => {
    const tyres = tyresOf(
      { law: 'normal', median: 50, spread: 5, between: 1, damage: 0.02, anyOffset: false },
      step,
      1,
      0,
    );
    // A tyre one standard deviation above the median withstands 55 J; after two hits 55 · 0.98².
    expect(tyres.chance(54.99, 1, 0)).toBe(0);
    expect(tyres.chance(55.01, 1, 0)).toBe(1);
    expect(tyres.chance(55 * 0.98 ** 2 - 0.01, 1, 2)).toBe(0);
    expect(tyres.chance(55 * 0.98 ** 2 + 0.01, 1, 2)).toBe(1);
  });

  it('move by a share of a step', () => {
    const assumed = { law: 'normal', median: 50, spread: 5, between: 0, damage: 0, anyOffset: true } as const;
    expect(tyresOf(assumed, step, 0.1, -0.5).median).toBeCloseTo(49.5, 12);
    expect(tyresOf(assumed, { kind: 'ratio', ratio: 0.1 }, 1, 1).median).toBeCloseTo(55, 12);
  });
});
