import { expect, test } from 'vitest';
import { chanceOfFullAgreement, kendall } from '../../../src/statistics/rank/kendall.ts';
import { ranks } from '../../../src/statistics/rank/ranks.ts';
import { spearman } from '../../../src/statistics/rank/spearman.ts';
import { pearson } from '../../../src/statistics/straight-line/correlation.ts';
import reference from '../../reference/cmp-09/CMP-09-rank-correlation.json' with { type: 'json' };
import { expectWhole, titleOf } from '../../reference/published.ts';
import r from '../../reference/rank/correlations.json' with { type: 'json' };

test(titleOf(reference), () => {
  const { lab, field } = reference.data;
  const tau = kendall(lab, field);
  const rho = spearman(lab, field);
  expectWhole(reference, {
    'Kendall concordant pairs T': tau.concordant,
    'Kendall tau': tau.coefficient,
    'Kendall one-sided exact p': tau.pOneSided,
    'Kendall two-sided exact p': tau.pTwoSided,
    'Kendall large-sample z': tau.z,
    'Spearman S': rho.sum,
    'Spearman rho': rho.coefficient,
    'Spearman two-sided exact p': rho.pTwoSided,
    'Pearson r': pearson(lab, field),
  });
});

// tests/reference/scripts/rank-correlations.R: cor.test, ties and longer lists.
test.each(r.cases)('as R has it: $name', ({ x, y, tau, tauP, rho, rhoP, rhoTolerance }) => {
  const found = kendall(x, y);
  expect(found.coefficient).toBeCloseTo(tau, 10);
  expect(found.pTwoSided).toBeCloseTo(tauP, 9);
  const other = spearman(x, y);
  expect(other.coefficient).toBeCloseTo(rho, 10);
  expect(Math.abs(other.pTwoSided! - rhoP)).toBeLessThan(rhoTolerance);
});

test('three constructions agree fully by chance once in six', () => {
  expect(chanceOfFullAgreement(3)).toBeCloseTo(1 / 6, 15);
  expect(kendall([1, 2, 3], [10, 20, 30]).pOneSided).toBeCloseTo(1 / 6, 12);
  expect(spearman([1, 2, 3], [10, 20, 30]).pOneSided).toBeCloseTo(1 / 6, 12);
  expect(kendall([1, 2, 3], [30, 20, 10]).pOneSided).toBeCloseTo(1, 12);
});

test('ties share their ranks; a side that does not vary has no correlation', () => {
  expect(ranks([30, 10, 10, 20])).toEqual([4, 1.5, 1.5, 3]);
  expect(kendall([1, 1, 1], [1, 2, 3]).coefficient).toBeNull();
  expect(spearman([1, 1, 1], [1, 2, 3]).pTwoSided).toBeNull();
  expect(() => kendall([1, 2], [1])).toThrow('2 values against 1');
});
