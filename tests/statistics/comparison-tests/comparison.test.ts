import { expect, test } from 'vitest';
import { randomisationTest } from '../../../src/statistics/comparison-tests/randomisation.ts';
import { pairedTest, pooledTest, welchTest } from '../../../src/statistics/comparison-tests/student.ts';
import sleep from '../../reference/cmp-04/CMP-04-student-sleep.json' with { type: 'json' };
import shoes from '../../reference/cmp-05/CMP-05-shoes-paired.json' with { type: 'json' };
import { expectWhole, titleOf } from '../../reference/published.ts';

test(titleOf(sleep), () => {
  const { group1, group2 } = sleep.data;
  const welch = welchTest(group1, group2, 0.95);
  const paired = pairedTest(group1, group2, 0.95);
  expectWhole(sleep, {
    't Welch': welch.t,
    df: welch.degrees,
    p: welch.p,
    'CI lower': welch.lower,
    'CI upper': welch.upper,
    't paired': paired.t,
    'p paired': paired.p,
  });
});

test(titleOf(shoes), () => {
  const { A, B } = shoes.data;
  const paired = pairedTest(B, A, 0.95);
  const random = randomisationTest(B.map((value, i) => value - A[i]!));
  expectWhole(shoes, {
    'mean difference': paired.difference,
    't paired': paired.t,
    'p paired': paired.p,
    'CI lower': paired.lower,
    'CI upper': paired.upper,
    't unpaired': pooledTest(B, A, 0.95).t,
    'sign patterns strictly above': random.above,
    'sign patterns equal': random.equal,
    'one-sided p (>=)': random.pOneSided,
    'two-sided p (>=)': random.pTwoSided,
  });
  expect(random.patterns).toBe(1024);
});

test('what cannot be tested is refused', () => {
  expect(() => pairedTest([1, 2], [1], 0.95)).toThrow('make no pairs');
  expect(() => pairedTest([1, 2], [0, 1], 0.95)).toThrow('do not vary');
  expect(() => randomisationTest(new Array(25).fill(1))).toThrow('25 pairs');
});
