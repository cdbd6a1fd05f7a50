import { describe, expect, test } from 'vitest';
import type { Response } from '../../../src/statistics/isotonic/response.ts';
import { smallestTrim, spearmanKarber } from '../../../src/statistics/spearman-karber/spearman-karber.ts';
import sen21 from '../../reference/sen-21/SEN-21-spearman-karber.json' with { type: 'json' };
import trimmedErrors from '../../reference/spearman-karber/trimmed-standard-errors.json' with {
  type: 'json',
};

type Set = { dose: number[]; n: number | number[]; r: number[] };

function responses({ dose, n, r }: Set): Response[] {
  return dose.map((x, i) => ({
    level: Math.log10(x),
    failures: r[i]!,
    drops: typeof n === 'number' ? n : n[i]!,
  }));
}

const sets = sen21.data.sets as unknown as (Set & { name: string })[];
const setNamed = (name: string) => responses(sets.find((s) => s.name === name)!);
const expected = (name: string) => sen21.expected.find((e) => e.name === name)!.value as number[];

/**
 * Centre, geometric standard error and 95 % limits. The case says 1.96; the printed digits are those of the normal
 * quantile itself.
 */
function onDoseScale(set: Response[]) {
  const { mean, standardError } = spearmanKarber(set).value!;
  const at = (z: number) => 10 ** (mean + z * standardError);
  return [at(0), 10 ** standardError, at(-1.959963984540054), at(1.959963984540054)];
}

describe('SEN-21: Hamilton, Russo and Thurston 1977', () => {
  test.each(['decade', 'tsk doc'])('%s (data and result found)', (name) => {
    const wanted = expected(`${name}: LD50, gsd, 95%${name === 'decade' ? ' (1.96)' : ''}`);
    for (const [i, value] of onDoseScale(setNamed(name)).entries())
      expect(Math.abs(value - wanted[i]!)).toBeLessThan(1e-6);
  });

  test('p. 5, untrimmed (data found, value computed exactly)', () => {
    const [centre, ...rest] = onDoseScale(setNamed('Hamilton p.5'));
    expect(Math.abs(centre! - 2)).toBeLessThan(1e-12);
    const wanted = expected('Hamilton p.5: gsd, 95% (1.96)');
    for (const [i, value] of rest.entries()) expect(Math.abs(value - wanted[i]!)).toBeLessThan(1e-7);
  });

  test('p. 5, trimmed (computed in two languages)', () => {
    const wanted = expected('Hamilton p.5 trimmed 10 %, 20 %, 30 %: LC50');
    for (const [i, trim] of [0.1, 0.2, 0.3].entries()) {
      const { mean } = spearmanKarber(setNamed('Hamilton p.5'), trim).value!;
      expect(Math.abs(10 ** mean - wanted[i]!)).toBeLessThan(1e-6);
    }
  });
});

// tests/reference/scripts/spearman-karber-trimmed.R: derivatives by finite differences of an integral by quadrature.
test.each(trimmedErrors.cases)('standard error trimmed by $trim (R script, computed): $name', (c) => {
  const { mean, standardError } = spearmanKarber(responses(c), c.trim).value!;
  expect(Math.abs(mean - c.mean)).toBeLessThan(1e-9);
  expect(Math.abs(standardError - c.standardError)).toBeLessThan(1e-6 * c.standardError);
});

describe('where its conditions fail', () => {
  const high = [3, 2, 4, 10].map((failures, i) => ({ level: i, failures, drops: 10 }));
  test('a curve that does not start at no failures is refused and the smallest trim named (by hand: pooled 5/20)', () => {
    expect(spearmanKarber(high).why).toBe(
      '25 % failed at the lowest level, more than the 0 % that is cut off at each end; a trim of 25 % or more would do',
    );
    expect(smallestTrim(high)).toBe(0.25);
    expect(spearmanKarber(high, 0.25).why).toBeNull();
  });
  test('levels all on one side cannot be mended by trimming', () => {
    const low = [0, 1, 2].map((failures, i) => ({ level: i, failures, drops: 10 }));
    expect(spearmanKarber(low).why).toMatch(/80 % survived the highest level.*levels further out are needed/);
    expect(smallestTrim(low)).toBeNull();
  });
  test('one level is not a curve', () => {
    expect(spearmanKarber([{ level: 1, failures: 1, drops: 2 }]).why).toBe(
      'drops at two levels or more are needed',
    );
  });
  test('a trim outside [0, 0.5) is a mistake of the caller', () => {
    expect(() => spearmanKarber(high, 0.5)).toThrow(RangeError);
  });
  test('a cut at a corner is held, so that the error does not hang on where the levels are counted from', () => {
    const counts = [0, 0, 2, 6, 7, 7];
    const at = (origin: number) => counts.map((failures, i) => ({ level: origin + i, failures, drops: 8 }));
    const trim = smallestTrim(at(0))!;
    expect(trim).toBe(0.125);
    const near = spearmanKarber(at(0), trim).value!;
    const far = spearmanKarber(at(1000), trim).value!;
    expect(far.mean - near.mean).toBeCloseTo(1000, 9);
    expect(far.standardError).toBeCloseTo(near.standardError, 9);
    // By hand: between the cuts the curve runs (1.5, ⅛), (2, ¼), (3, ¾), (4, ⅞).
    expect(near.mean).toBeCloseTo((0.125 * 1.75 + 0.5 * 2.5 + 0.125 * 3.5) / 0.75, 12);
    const variance = (p: number) => (p * (1 - p)) / 8;
    const byHand = Math.sqrt(SLOPES.reduce((sum, [p, slope]) => sum + slope ** 2 * variance(p), 0));
    expect(near.standardError).toBeCloseTo(byHand, 9);
  });
});

/** Shares of the example at 2, 3 and 4, and what the trimmed mean gains by each; the last can only be raised. */
const SHARES = [0.25, 0.75, 0.875] as const;

function trimmedMean(p: number, q: number, r: number): number {
  const low = 1 + 0.125 / p;
  const high = 3 + (0.875 - q) / (r - q);
  const area = ((low + 2) / 2) * (p - 0.125) + 2.5 * (q - p) + ((3 + high) / 2) * (0.875 - q);
  return area / 0.75;
}

const SLOPES = SHARES.map((share, which): readonly [number, number] => {
  const h = 1e-6;
  const moved = (by: number) => {
    const [p, q, r] = SHARES.map((s, i) => (i === which ? s + by : s));
    return trimmedMean(p!, q!, r!);
  };
  return [
    share,
    which === 2 ? (4 * moved(h) - moved(2 * h) - 3 * moved(0)) / (2 * h) : (moved(h) - moved(-h)) / (2 * h),
  ];
});
