import { expect, test } from 'vitest';
import {
  degreesFromReliability,
  standardUncertainty,
} from '../../../src/statistics/uncertainty/standard-uncertainty.ts';
import { ofDifferenceOnOneRig, withCommonPart } from '../../../src/statistics/uncertainty/with-statistics.ts';

const common = { standardUncertainty: 0.01, degrees: Infinity };

// By hand: 1 % of 40 J is 0.4 J, beside a standard error of 0.3 J: 0.5 J; with a hundredth of the standard error 0.4 J stay.
test('the common part stands beside the standard error and does not shrink with the number of drops', () => {
  const few = withCommonPart({ value: 40, standardError: 0.3, degrees: Infinity }, common);
  expect(few.standardUncertainty).toBeCloseTo(0.5, 12);
  const many = withCommonPart({ value: 40, standardError: 0.003, degrees: Infinity }, common);
  expect(many.standardUncertainty).toBeCloseTo(0.4, 4);
});

// By hand: of a difference of 2 J on one rig 1 % is 0.02 J, not the 0.57 J of two rigs.
test('what is common to both sides of a comparison cancels but for its share of the difference', () => {
  const a = { value: 42, standardError: 0.3, degrees: 20 };
  const b = { value: 40, standardError: 0.4, degrees: 20 };
  const { standardUncertainty: u } = ofDifferenceOnOneRig(a, b, common);
  expect(u).toBeCloseTo(Math.sqrt(0.3 ** 2 + 0.4 ** 2 + 0.02 ** 2), 12);
});

// JCGM 100, 4.3.3 to 4.3.9 (from memory): a/√3, a/√6; 4.3.5: half width at 0.50 is 0.6745 σ; G.4.2: 25 % are 8 degrees.
test('standard uncertainties of statements', () => {
  expect(standardUncertainty({ kind: 'rectangular', halfWidth: 1 })).toBeCloseTo(0.57735, 5);
  expect(standardUncertainty({ kind: 'triangular', halfWidth: 1 })).toBeCloseTo(0.40825, 5);
  expect(standardUncertainty({ kind: 'arcsine', halfWidth: 1 })).toBeCloseTo(Math.SQRT1_2, 12);
  expect(standardUncertainty({ kind: 'expanded', uncertainty: 1, factor: 2 })).toBe(0.5);
  expect(standardUncertainty({ kind: 'interval', halfWidth: 0.6745, level: 0.5 })).toBeCloseTo(1, 4);
  expect(degreesFromReliability(0.25)).toBe(8);
  expect(() => standardUncertainty({ kind: 'standard', uncertainty: 0 })).toThrow('above 0');
});
