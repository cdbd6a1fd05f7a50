import { expect, test } from 'vitest';
import { shapeBiasFactor, simulateShapeBias } from '../../../src/statistics/life/shape-bias.ts';
import reference from '../../reference/lif-20/LIF-20-shape-bias.json' with { type: 'json' };
import { expectedOf, expectNumber, titleOf } from '../../reference/published.ts';

test(titleOf(reference), () => {
  const sizes = reference.expected.flatMap(({ name }) =>
    name.includes('Ross') ? [Number(/\d+/.exec(name)![0])] : [],
  );
  expect(sizes).toHaveLength(14);
  for (const n of sizes) expectNumber(reference, `n=${n} Ross factor (n-2)/(n-0.68)`, shapeBiasFactor(n));
  // The means by fewer samples than behind the case: within four errors of both.
  for (const n of [5, 8, 15]) {
    const { mean, median, error } = simulateShapeBias(n, n, 6_000, 20);
    const value = expectedOf(reference, `n=${n} E[beta_hat/beta]`);
    expect(Math.abs(mean - value), `n=${n}`).toBeLessThan(4 * error + 0.001 * value);
    expect(Math.abs(median - expectedOf(reference, `n=${n} median[beta_hat/beta]`))).toBeLessThan(4 * error);
  }
});

test('the factor takes off what the likelihood is too high by, within 0.004 from four lives', () => {
  for (const n of [4, 6, 8, 10, 15, 20, 30, 50, 100])
    expect(Math.abs(shapeBiasFactor(n) - 1 / expectedOf(reference, `n=${n} E[beta_hat/beta]`))).toBeLessThan(
      0.004,
    );
  expect(() => shapeBiasFactor(2)).toThrow('2 lives');
});
