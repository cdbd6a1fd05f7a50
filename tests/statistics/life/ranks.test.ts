import { expect, test } from 'vitest';
import { laws } from '../../../src/statistics/laws/laws.ts';
import { adjustedRanks } from '../../../src/statistics/life/adjusted-ranks.ts';
import { benardRank, medianRank } from '../../../src/statistics/life/median-ranks.ts';
import { rankRegression } from '../../../src/statistics/life/rank-regression.ts';
import { characteristicLife, weibullShape } from '../../../src/statistics/life/weibull.ts';
import { type Fit, fitLocationScale } from '../../../src/statistics/likelihood/fit.ts';
import { gatherObservations } from '../../../src/statistics/likelihood/observation.ts';
import johnson from '../../reference/lif-09/LIF-09-johnson-ranks.json' with { type: 'json' };
import medians from '../../reference/lif-19/LIF-19-median-ranks.json' with { type: 'json' };
import { expectWhole, titleOf } from '../../reference/published.ts';

test(titleOf(johnson), () => {
  const { times, failed } = johnson.data;
  const lives = times.map((time, i) => ({ time, failed: failed[i] === 1 }));
  const onRank = rankRegression(lives, 'time-on-rank');
  const onTime = rankRegression(lives, 'rank-on-time');
  const fit = fitLocationScale(
    gatherObservations(
      lives.map((life) => ({ lower: life.time, upper: life.failed ? life.time : Infinity, count: 1 })),
      'log',
    ),
    laws.weibull.standard,
  ) as Fit;
  const found: Record<string, number> = {
    'X on Y (time on rank): beta': onRank.shape,
    'X on Y: eta': onRank.characteristicLife,
    'Y on X: beta': onTime.shape,
    'Y on X: eta': onTime.characteristicLife,
    'r squared': onTime.rSquared,
    'MLE beta': weibullShape(fit).value,
    'MLE eta': characteristicLife(fit).value,
  };
  for (const [i, { rank }] of adjustedRanks(lives).entries()) {
    found[`adjusted rank failure ${i + 1}`] = rank;
    found[`Benard median rank ${i + 1}`] = benardRank(rank, 8);
    found[`exact median rank (beta) ${i + 1}`] = medianRank(rank, 8);
  }
  expectWhole(johnson, found);
});

test(titleOf(medians), () => {
  const found: Record<string, number> = {};
  for (const n of medians.data.n) {
    for (let i = 1; i <= n; i++) {
      found[`n=${n} i=${i} exact`] = medianRank(i, n);
      found[`n=${n} i=${i} Benard`] = benardRank(i, n);
    }
  }
  expectWhole(medians, found);
});

test('too few failures for a line are refused', () => {
  expect(() => rankRegression([{ time: 5, failed: true }], 'time-on-rank')).toThrow('two times');
});
