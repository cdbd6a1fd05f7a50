import { expect, test } from 'vitest';
import { detectableDifference, powerOfTest } from '../../../src/statistics/comparison-tests/detectable.ts';
import { ratioToReference } from '../../../src/statistics/comparison-tests/non-inferiority.ts';
import { randomisationTest } from '../../../src/statistics/comparison-tests/randomisation.ts';
import { pairedTest, pooledTest, welchTest } from '../../../src/statistics/comparison-tests/student.ts';
import sleep from '../../reference/cmp-04/CMP-04-student-sleep.json' with { type: 'json' };
import shoes from '../../reference/cmp-05/CMP-05-shoes-paired.json' with { type: 'json' };
import power from '../../reference/comparison-tests/power.json' with { type: 'json' };
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

// tests/reference/scripts/power.R: power.t.test, strict = TRUE.
test('power and the smallest difference that would have been found, as R has them', () => {
  const plan = { n1: 8, n2: 8, standardDeviation: 2.5, significance: 0.05 };
  expect(powerOfTest(3, plan)).toBeCloseTo(power.powerAtThree, 8);
  expect(detectableDifference(0.8, plan)).toBeCloseTo(power.differenceAtEighty, 6);
  expect(powerOfTest(0, plan)).toBeCloseTo(0.05, 10);
  expect(() => detectableDifference(0.01, plan)).toThrow('power 0.01');
});

// tests/reference/scripts/power.R: t.test on the logarithms, 90 %.
test('a ratio to the reference with its margin', () => {
  const found = ratioToReference(power.values, power.reference, 0.1, 0.95);
  expect(found.ratio).toBeCloseTo(power.ratio, 9);
  expect(found.lower).toBeCloseTo(power.lower, 9);
  expect(found.upper).toBeCloseTo(power.upper, 9);
  expect(found.notInferior).toBe(power.lower > 0.9);
  expect(ratioToReference(power.values, power.reference, 0.001, 0.95).notInferior).toBe(power.lower > 0.999);
  expect(() => ratioToReference([0, 1], [1, 2], 0.1, 0.95)).toThrow('found 0');
});
