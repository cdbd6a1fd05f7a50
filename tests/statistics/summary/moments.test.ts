import { expect, test } from 'vitest';
import { autocorrelation } from '../../../src/statistics/summary/autocorrelation.ts';
import { compensatedSum, mean, summarise, variance } from '../../../src/statistics/summary/moments.ts';
import { expectWhole, titleOf } from '../../reference/published.ts';
import lew from '../../reference/uni-01/UNI-01-strd-lew.json' with { type: 'json' };
import mavro from '../../reference/uni-02/UNI-02-strd-mavro.json' with { type: 'json' };
import lottery from '../../reference/uni-04/UNI-04-strd-lottery.json' with { type: 'json' };
import accuracy1 from '../../reference/uni-05/UNI-05-strd-numacc1.json' with { type: 'json' };
import accuracy2 from '../../reference/uni-06/UNI-06-strd-numacc2.json' with { type: 'json' };
import accuracy3 from '../../reference/uni-07/UNI-07-strd-numacc3.json' with { type: 'json' };
import accuracy4 from '../../reference/uni-08/UNI-08-strd-numacc4.json' with { type: 'json' };

/** One value, then 500 pairs: the rule of NumAcc2 to NumAcc4. */
function pairs(first: number, low: number, high: number): number[] {
  return [first, ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? low : high))];
}

test.each(
  [
    [lew, lew.data.values],
    [mavro, mavro.data.values],
    [lottery, lottery.data.values],
    [accuracy1, accuracy1.data.values],
    [accuracy2, pairs(1.2, 1.1, 1.3)],
    [accuracy3, pairs(1000000.2, 1000000.1, 1000000.3)],
    [accuracy4, pairs(10000000.2, 10000000.1, 10000000.3)],
  ].map(([reference, values]) => [titleOf(reference as typeof lew), reference, values] as const),
)('%s', (_, reference, values) => {
  const summary = summarise(values as number[]);
  expectWhole(reference as typeof lew, {
    mean: summary.mean,
    'standard deviation': summary.standardDeviation,
    'lag-1 autocorrelation': autocorrelation(values as number[]),
  });
});

test('a one-pass variance would have failed on NumAcc4', () => {
  const values = pairs(10000000.2, 10000000.1, 10000000.3);
  const squares = values.reduce((sum, x) => sum + x * x, 0);
  const onePass = (squares - values.length * mean(values) ** 2) / (values.length - 1);
  expect(Math.abs(onePass - 0.01)).toBeGreaterThan(1e-4);
  expect(Math.abs(variance(values) - 0.01)).toBeLessThan(1e-9);
});

test('what an addition loses is carried along', () => {
  // Neumaier's own example: the plain sum is 0.
  expect(compensatedSum([1, 1e100, 1, -1e100])).toBe(2);
});

test('too few values are refused', () => {
  expect(() => mean([])).toThrow('no values');
  expect(() => variance([1])).toThrow('two values');
  expect(summarise([3])).toEqual({ n: 1, mean: 3, standardDeviation: null, minimum: 3, maximum: 3 });
});
