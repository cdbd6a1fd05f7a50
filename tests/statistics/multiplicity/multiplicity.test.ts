import { expect, test } from 'vitest';
import { analyseOneWay } from '../../../src/statistics/analysis-of-variance/one-way.ts';
import { studentizedRangeLaw } from '../../../src/statistics/laws/studentized-range.ts';
import { type Adjustment, adjust } from '../../../src/statistics/multiplicity/adjust.ts';
import { compareAllPairs } from '../../../src/statistics/multiplicity/all-pairs.ts';
import { groupsNotToldApart } from '../../../src/statistics/multiplicity/groups.ts';
import tukey from '../../reference/cmp-01/CMP-01-nist-tukey.json' with { type: 'json' };
import hochberg from '../../reference/cmp-02/CMP-02-bh1995.json' with { type: 'json' };
import { expectWhole, titleOf } from '../../reference/published.ts';

test(titleOf(tukey), () => {
  const { groups } = tukey.data;
  const { between, within, test: fisher } = analyseOneWay(groups);
  const found: Record<string, number> = {
    'SS treatment': between.sumOfSquares,
    'SS error': within.sumOfSquares,
    MSE: within.meanSquare,
    F: fisher!.f,
    p: fisher!.p,
    'q(0.05; 4, 16)': studentizedRangeLaw(4, 16).quantile(0.95),
  };
  for (const pair of compareAllPairs(groups, 0.95)) {
    const [i, j] = [pair.first + 1, pair.second + 1];
    found[`pair ${i}-${j} raw p`] = pair.p;
    found[`pair ${i}-${j} Holm p`] = pair.holm;
    found[`pair ${i}-${j} Bonferroni p`] = pair.bonferroni;
    found[`pair ${i}-${j} Tukey adjusted p`] = pair.tukey;
    for (const { name } of tukey.expected) {
      if (name === `Tukey ${i}-${j} lower`) found[name] = pair.lower;
      if (name === `Tukey ${i}-${j} upper`) found[name] = pair.upper;
      if (name === `Tukey ${j}-${i} lower`) found[name] = -pair.upper;
      if (name === `Tukey ${j}-${i} upper`) found[name] = -pair.lower;
    }
  }
  expectWhole(tukey, found);
});

test(titleOf(hochberg), () => {
  const { p } = hochberg.data;
  const found: Record<string, number> = {};
  const methods: [string, Adjustment][] = [
    ['bonferroni', 'bonferroni'],
    ['holm', 'holm'],
    ['hochberg', 'hochberg'],
    ['BH', 'benjamini-hochberg'],
  ];
  for (const [name, method] of methods) {
    const adjusted = adjust(p, method);
    for (const [i, one] of adjusted.entries()) found[`${name} adjusted p[${i + 1}]`] = one;
    found[`${name}: number rejected at 0.05`] = adjusted.filter((one) => one <= 0.05).length;
  }
  expectWhole(hochberg, found);
});

test('the order in which p-values come does not matter; what is none is refused', () => {
  for (const method of ['holm', 'hochberg', 'benjamini-hochberg'] as const) {
    const [a, b, c] = adjust([0.03, 0.01, 0.02], method);
    expect(adjust([0.01, 0.02, 0.03], method)).toEqual([b, c, a]);
  }
  expect(() => adjust([1.2], 'holm')).toThrow('p 1.2');
});

// CMP-01 at 5 %: pairs 1-2, 1-3, 2-4, 3-4 differ, 1-4 and 2-3 do not (Tukey, printed intervals).
test('groups not told apart', () => {
  const told = compareAllPairs(tukey.data.groups, 0.95).filter((pair) => pair.tukey <= 0.05);
  expect(groupsNotToldApart([2, 1, 3, 0], told)).toEqual([
    [2, 1],
    [3, 0],
  ]);
  // A chain: neighbours are alike, the ends are not.
  expect(groupsNotToldApart([0, 1, 2], [{ first: 0, second: 2 }])).toEqual([
    [0, 1],
    [1, 2],
  ]);
  expect(groupsNotToldApart([0, 1], [])).toEqual([[0, 1]]);
});
