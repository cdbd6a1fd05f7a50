import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { comparePair, equalMedians } from '../../src/comparison/pair.ts';
import { laws } from '../../src/statistics/laws/laws.ts';

// Estimates and tests by R's survreg, limits by optim on the likelihood: tests/reference/scripts/comparison.R.
const reference = JSON.parse(readFileSync('tests/reference/comparison/two-constructions.json', 'utf8'));
const looks = (rows: [number, 0 | 1][]) =>
  rows.map(([x, failed]) =>
    failed === 1
      ? { lower: Number.NEGATIVE_INFINITY, upper: x, count: 1 }
      : { lower: x, upper: Number.POSITIVE_INFINITY, count: 1 },
  );
const first = looks(reference.first);
const second = looks(reference.second);

describe('two constructions by the censored likelihood against R', () => {
  const pair = comparePair(first, second, laws.normal, 0.95);
  for (const spreads of ['common', 'separate'] as const) {
    it(`gives ratio, difference, limits and p with ${spreads} spreads`, () => {
      const found = pair.differences.find((one) => one.probability === 0.5 && one.spreads === spreads)!;
      const wanted = reference[spreads];
      for (const i of [0, 1]) expect(found.values[i]).toBeCloseTo(wanted.medians[i], 5);
      for (const name of ['ratio', 'difference'] as const) {
        const { value, lower, upper } = found[name];
        for (const [i, one] of [value, lower, upper].entries()) expect(one).toBeCloseTo(wanted[name][i], 4);
      }
      expect(found.p! / wanted.p).toBeCloseTo(1, 4);
    });
  }
  it('tests equal spreads and equal medians, and says what could have been seen', () => {
    expect(pair.equalSpreads!.statistic).toBeCloseTo(reference.equalSpreads, 6);
    expect(equalMedians(first, second, laws.normal)!.p! / reference.equalMediansBySurvreg).toBeCloseTo(1, 6);
    expect(pair.smallestRatio).toBeCloseTo(reference.smallestRatio, 6);
  });
  it('turns round with the order of the two, and stays with the unit of energy', () => {
    const back = comparePair(second, first, laws.normal, 0.95).differences[0]!;
    const whole = pair.differences[0]!;
    expect(back.ratio.lower! * whole.ratio.upper!).toBeCloseTo(1, 6);
    expect(back.difference.upper!).toBeCloseTo(-whole.difference.lower!, 5);
    const inMillijoule = (rows: typeof first) =>
      rows.map(({ lower, upper, count }) => ({ lower: 1000 * lower, upper: 1000 * upper, count }));
    const scaled = comparePair(inMillijoule(first), inMillijoule(second), laws.normal, 0.95).differences[0]!;
    expect(scaled.ratio.upper!).toBeCloseTo(whole.ratio.upper!, 6);
  });
  it('gives no ratio where survivals and failures of all lie apart', () => {
    const apart = comparePair(
      looks([
        [40, 0],
        [50, 1],
      ]),
      looks([
        [30, 0],
        [38, 1],
      ]),
      laws.normal,
      0.95,
    );
    expect(apart.differences[0]!.ratio.value).toBeNull();
    expect(apart.differences[0]!.ratio.why).not.toBe('');
    expect(apart.smallestRatio).toBeNull();
  });
});
