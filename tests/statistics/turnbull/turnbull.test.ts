import { describe, expect, test } from 'vitest';
import { turnbull, turnbullQuantile, turnbullShare } from '../../../src/statistics/turnbull/turnbull.ts';
import km03 from '../../reference/km-03/KM-03-turnbull.json' with { type: 'json' };
import sen24 from '../../reference/sen-24/SEN-24-quantal-turbine-wheels.json' with { type: 'json' };
import sen27 from '../../reference/sen-27/SEN-27-interval-cosmesis-turnbull.json' with { type: 'json' };
import sen28 from '../../reference/sen-28/SEN-28-interval-microprocessor-turnbull.json' with { type: 'json' };
import sen29 from '../../reference/sen-29/SEN-29-step-to-failure-tyre-synthetic.json' with { type: 'json' };

type Row = (number | null)[];
const bracket = ([lower, upper, count]: Row) => ({
  lower: lower ?? 0,
  upper: upper ?? Infinity,
  count: count ?? 1,
});
const cosmesis = turnbull((sen27.data.intervals as Row[]).map(bracket));
const microprocessors = turnbull((sen28.data.rows as Row[]).map(bracket));

function near(found: readonly number[], expected: readonly number[], tolerance: number) {
  expect(found).toHaveLength(expected.length);
  for (const [i, value] of expected.entries())
    expect(Math.abs(found[i]! - value)).toBeLessThanOrEqual(tolerance);
}

test('SEN-27 (data found, masses from memory of Fay and Shaw 2010 and recomputed): radiotherapy arm', () => {
  expect(cosmesis.masses.map((m) => [m.lower, m.upper])).toEqual(sen27.expected[0]!.value);
  near(
    cosmesis.masses.map((m) => m.mass),
    sen27.expected[1]!.value as number[],
    1e-6,
  );
  near([cosmesis.logLikelihood], [sen27.expected[2]!.value as unknown as number], 1e-4);
  near(
    cosmesis.masses.map((m) => 1 - m.cumulative),
    sen27.expected[3]!.value as number[],
    1e-5,
  );
  expect(cosmesis.optimal).toBe(true);
});

test('SEN-28 (data found, values computed twice): heavily censored microprocessors', () => {
  const at = [6, 12, 48, 168, 500, 1000, 2000].map((t) => turnbullShare(microprocessors, t).lower);
  near(at, sen28.expected[0]!.value as number[], 1e-7);
  expect(microprocessors.optimal).toBe(true);
  // Less than 3 % fail within the data: the median has no upper end.
  expect(turnbullQuantile(microprocessors, 0.5)).toEqual({ lower: 2000, upper: Infinity });
});

test('KM-03 (data and result found, Turnbull 1974): exact, right- and left-censored', () => {
  const { time, status_1exact_0right_2left: status, n } = km03.data;
  const fit = turnbull(
    time.map((t, i) => ({
      lower: status[i] === 2 ? 0 : t,
      upper: status[i] === 0 ? Infinity : t,
      count: n[i]!,
    })),
  );
  for (const [i, { value }] of km03.expected.entries())
    expect(Math.abs(1 - turnbullShare(fit, i + 1).lower - value) / value).toBeLessThan(1e-6);
  expect(turnbullQuantile(fit, 0.5)).toEqual({ lower: 2, upper: 2 });
});

test('SEN-24 (data found, computed twice): failures and survivals only give the pooled shares', () => {
  const { hours100, cracked, not_cracked } = sen24.data;
  const fit = turnbull(
    hours100.flatMap((at, i) => [
      { lower: 0, upper: at, count: cracked[i]! },
      { lower: at, upper: Infinity, count: not_cracked[i]! },
    ]),
  );
  const expected = sen24.expected.find((e) => e.name.startsWith('Turnbull'))!.value as number[];
  near(
    hours100.map((h) => turnbullShare(fit, h).lower),
    expected,
    1e-5,
  );
  near([fit.logLikelihood], [-184.9882], 1e-3);
});

test('SEN-29 (self-made, counts): rises leave the shares of their noted heights', () => {
  const { first_fail, step, start, rig_max } = sen29.data;
  const fit = turnbull(
    first_fail.map((height) =>
      height === null
        ? { lower: rig_max, upper: Infinity, count: 1 }
        : { lower: height === start ? 0 : height - step, upper: height, count: 1 },
    ),
  );
  const expected = sen29.expected.find((e) => e.name.startsWith('NPMLE'))!.value as number[];
  near(
    [300, 350, 400, 425, 450, 475, 500, 525, 600].map((h) => turnbullShare(fit, h).lower),
    expected,
    1e-12,
  );
});

// Gentleman and Geyer 1994: at the maximum the directional derivative towards every span is at most 0.
describe('the optimality conditions, counted afresh from the masses', () => {
  test.each([
    ['cosmesis', cosmesis, (sen27.data.intervals as Row[]).map(bracket)],
    ['microprocessors', microprocessors, (sen28.data.rows as Row[]).map(bracket)],
  ] as const)('%s', (_, fit, brackets) => {
    const n = brackets.reduce((sum, b) => sum + b.count, 0);
    for (const span of fit.masses) {
      let derivative = 0;
      for (const b of brackets) {
        const inside = fit.masses.filter((m) => b.lower <= m.lower && m.upper <= b.upper);
        const total = inside.reduce((sum, m) => sum + m.mass, 0);
        if (inside.includes(span)) derivative += b.count / total;
      }
      expect(Math.abs(derivative / n - 1)).toBeLessThan(1e-7);
    }
  });
});

test('a start that self-consistency cannot leave does not deceive: a span that deserves no mass gets none', () => {
  // By hand: (0,2], (1,3], (2,4] have the innermost spans (1,2] and (2,3]; (0,2] and (2,4] weigh both alike.
  const fit = turnbull([
    { lower: 0, upper: 2, count: 1 },
    { lower: 1, upper: 3, count: 1 },
    { lower: 2, upper: 4, count: 1 },
  ]);
  expect(fit.masses.map((m) => [m.lower, m.upper, m.mass])).toEqual([
    [1, 2, 0.5],
    [2, 3, 0.5],
  ]);
  // The cumulative probability is exactly one half at 2: the median is anywhere in both spans.
  expect(turnbullQuantile(fit, 0.5)).toEqual({ lower: 1, upper: 3 });
});

test('bad brackets are refused with their ends', () => {
  expect(() => turnbull([])).toThrow('no brackets');
  expect(() => turnbull([{ lower: 2, upper: 1, count: 1 }])).toThrow('the bracket (2, 1] is empty');
});
