import { expect, test } from 'vitest';
import { analyseOneWay } from '../../../src/statistics/analysis-of-variance/one-way.ts';
import { analyseUnequalSpreads } from '../../../src/statistics/analysis-of-variance/welch.ts';
import reference from '../../reference/cmp-08/CMP-08-welch-anova.json' with { type: 'json' };
import { expectWhole, titleOf } from '../../reference/published.ts';

test(titleOf(reference), () => {
  const groups = Object.values(reference.data.groups);
  const classic = analyseOneWay(groups).test!;
  const welch = analyseUnequalSpreads(groups);
  expectWhole(reference, {
    F: classic.f,
    p: classic.p,
    'Welch F': welch.f,
    'Welch df2': welch.below,
    'Welch p': welch.p,
  });
});

test('a group without spread is refused', () => {
  expect(() =>
    analyseUnequalSpreads([
      [1, 1],
      [2, 3],
    ]),
  ).toThrow('differ among themselves');
});
