import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { comparePair } from '../../src/comparison/pair.ts';
import { survivalTest } from '../../src/comparison/survival-test.ts';
import { laws } from '../../src/statistics/laws/laws.ts';

// survival::survreg and survdiff: tests/reference/scripts/comparison-laws.R. The lives are those of KM-01 (Embury et al. 1977;
// Miller 1981, p. 49: found), the drops those of comparison.R (made up).
const reference = JSON.parse(readFileSync('tests/reference/comparison/laws.json', 'utf8'));
const made = JSON.parse(readFileSync('tests/reference/comparison/two-constructions.json', 'utf8'));

const lives = (rows: [number, 0 | 1][], name: string) =>
  rows.map(([t, failed], i) => ({
    specimen: `${name}${i}`,
    lower: t,
    upper: failed === 1 ? t : Number.POSITIVE_INFINITY,
    count: 1,
  }));
const drops = (rows: [number, 0 | 1][]) =>
  rows.map(([x, failed]) =>
    failed === 1
      ? { lower: Number.NEGATIVE_INFINITY, upper: x, count: 1 }
      : { lower: x, upper: Number.POSITIVE_INFINITY, count: 1 },
  );

describe('two constructions under laws that are not normal, against R', () => {
  const samples = {
    lives: [lives(reference.lives.first, 'm'), lives(reference.lives.second, 'n')],
    drops: [drops(made.first), drops(made.second)],
  };
  for (const [kind, law] of [
    ['lives', 'weibull'],
    ['lives', 'lognormal'],
    ['drops', 'weibull'],
    ['drops', 'lognormal'],
    ['drops', 'logistic'],
  ] as const) {
    it(`${kind}, ${law}: medians, limits and both tests`, () => {
      const wanted = reference[kind][law];
      const [first, second] = samples[kind];
      const pair = comparePair(first!, second!, laws[law], 0.95);
      const [common, separate] = (['common', 'separate'] as const).map(
        (spreads) => pair.differences.find((one) => one.probability === 0.5 && one.spreads === spreads)!,
      );
      // Relative, since R's own convergence is to about nine digits.
      for (const i of [0, 1]) {
        expect(common!.values[i]! / wanted.medians[i]).toBeCloseTo(1, 6);
        expect(separate!.values[i]! / wanted.ownMedians[i]).toBeCloseTo(1, 6);
      }
      const effect = law === 'logistic' ? common!.difference : common!.ratio;
      for (const [i, one] of [effect.value, effect.lower, effect.upper].entries())
        expect(one! / wanted.effect[i]).toBeCloseTo(1, 5);
      expect(common!.p! / wanted.p).toBeCloseTo(1, 5);
      expect(pair.equalSpreads!.statistic).toBeCloseTo(wanted.equalSpreads, 6);
    });
  }
  it('tests survival without a law as survdiff does', () => {
    const found = survivalTest(samples.lives[0] as never, samples.lives[1] as never);
    expect(found.statistic).toBeCloseTo(reference.lives.logrank.statistic, 9);
    expect(found.p).toBeCloseTo(reference.lives.logrank.p, 9);
  });
});
