import { expect, test } from 'vitest';
import { grubbsCritical, grubbsTest } from '../../../src/statistics/outlier/grubbs.ts';
import { cochranCritical, cochranTest } from '../../../src/statistics/outlier/largest-variance.ts';
import largestVariance from '../../reference/out-01/OUT-01-cochran.json' with { type: 'json' };
import grubbs from '../../reference/out-02/OUT-02-grubbs.json' with { type: 'json' };
import { expectWhole, titleOf } from '../../reference/published.ts';

test(titleOf(largestVariance), () => {
  const found = largestVariance.expected.map(({ name }) => {
    const [p, n, alpha] = name.split(' ').map((part) => Number(part.split('=')[1])) as [
      number,
      number,
      number,
    ];
    return [name, cochranCritical(p, n, alpha)];
  });
  expectWhole(largestVariance, Object.fromEntries(found));
});

test(titleOf(grubbs), () => {
  const { x } = grubbs.data;
  const one = grubbsTest(x, 0.05, 'largest');
  const found = grubbs.expected
    .filter(({ name }) => name !== 'G')
    .map(({ name }) => {
      const [n, alpha] = name.split(' ').map((part) => Number(part.split('=')[1])) as [number, number];
      return [name, grubbsCritical(n, alpha, name.endsWith('one-sided') ? 1 : 2)];
    });
  expectWhole(grubbs, { G: one.statistic, ...Object.fromEntries(found) });
  expect(one).toMatchObject({ index: 7, outlier: true });
  expect(grubbsTest(x, 0.05, 'smallest').outlier).toBe(false);
  expect(grubbsTest(x, 0.05).critical).toBeGreaterThan(one.critical);
});

test('the largest of equal variances is none; one of ten times the others is', () => {
  expect(cochranTest([1, 1.1, 0.9, 1], 3, 0.05)).toMatchObject({ index: 1, outlier: false });
  expect(cochranTest([1, 1, 10, 1, 1, 1, 1, 1], 3, 0.05)).toMatchObject({ index: 2, outlier: true });
});

test('too little is refused', () => {
  expect(() => grubbsTest([1, 2], 0.05)).toThrow('2 values are too few');
  expect(() => grubbsTest([2, 2, 2], 0.05)).toThrow('do not differ');
  expect(() => cochranTest([1], 3, 0.05)).toThrow('two variances');
  expect(() => cochranTest([0, 0], 3, 0.05)).toThrow('no variance');
});
