import { expect, test } from 'vitest';
import { averageRange } from '../../../src/statistics/gauge-study/average-range.ts';
import { analyseGauge } from '../../../src/statistics/gauge-study/crossed.ts';
import { gaugeIntervals } from '../../../src/statistics/gauge-study/intervals.ts';
import { gaugeLevels } from '../../../src/statistics/gauge-study/levels.ts';
import { gaugeShares } from '../../../src/statistics/gauge-study/shares.ts';
import { randomStream } from '../../../src/statistics/random/random-stream.ts';
import crossed from '../../reference/grr-01/GRR-01-msa.json' with { type: 'json' };
import nested from '../../reference/grr-03/GRR-03-nist-mpc61.json' with { type: 'json' };
import { expectWhole, titleOf } from '../../reference/published.ts';

const given = crossed.data.readings_op_trial_part;
const readings = given[0]![0]!.map((_, part) =>
  given.map((ofOperator) => ofOperator.map((trial) => trial[part]!)),
);

test(titleOf(crossed), () => {
  const study = analyseGauge(readings);
  const { pooled, kept, tests } = study;
  const shares = gaugeShares(pooled);
  const byRange = averageRange(readings, 'printed');
  expectWhole(crossed, {
    'SS part': study.part.sumOfSquares,
    'SS operator': study.operator.sumOfSquares,
    'SS interaction': study.interaction.sumOfSquares,
    'SS repeatability': study.repeatability.sumOfSquares,
    'SS total': study.total,
    'F interaction': tests.interaction!.f,
    'p interaction': tests.interaction!.p,
    'F part vs interaction': tests.part!.f,
    'F operator vs interaction': tests.operator!.f,
    'variance repeatability': pooled.repeatability,
    'SD repeatability': shares.repeatability,
    'variance reproducibility (operator)': pooled.operator,
    'SD reproducibility (operator)': shares.reproducibility,
    'variance total gauge R&R': shares.gauge ** 2,
    'SD total gauge R&R': shares.gauge,
    'variance part': pooled.part,
    'SD part': shares.part,
    'variance total': shares.total ** 2,
    'SD total': shares.total,
    '% study variation repeatability': 100 * shares.studyShare.repeatability,
    '% study variation reproducibility (operator)': 100 * shares.studyShare.reproducibility,
    '% study variation total gauge R&R': 100 * shares.studyShare.gauge,
    '% study variation part': 100 * shares.studyShare.part,
    '% contribution gauge R&R': 100 * shares.varianceShare.gauge,
    '% contribution part': 100 * shares.varianceShare.part,
    'ndc untruncated sqrt2*PV/GRR': shares.distinctCategories,
    'with interaction kept: sigma^2 repeatability': kept.repeatability,
    'with interaction kept: sigma^2 interaction (negative, set to 0)': kept.interaction,
    'with interaction kept: sigma^2 operator': kept.operator,
    'with interaction kept: sigma^2 part': kept.part,
    'average-range: Rbar': byRange.meanRange,
    'average-range: Xbar diff': byRange.operatorRange,
    'average-range: part range': byRange.partRange,
    'average-range: EV': byRange.repeatability,
    'average-range: AV': byRange.reproducibility,
    'average-range: GRR': byRange.gauge,
    'average-range: PV': byRange.part,
    'average-range: TV': byRange.total,
  });
  // The printed factors have four decimals.
  const exact = averageRange(readings);
  for (const key of ['repeatability', 'reproducibility', 'part'] as const)
    expect(Math.abs(exact[key] / byRange[key] - 1)).toBeLessThan(0.003);
});

test(titleOf(nested), () => {
  const rows = nested.data.probe_2362;
  const wafers = [...new Set(rows.map((row) => row[1]!))];
  const items = wafers.map((wafer) =>
    [1, 2].map((run) =>
      rows
        .filter((row) => row[0] === run && row[1] === wafer)
        .map((row) => ({ mean: row[7]!, shortTerm: row[8]! })),
    ),
  );
  const levels = gaugeLevels(items, 6);
  const found: Record<string, number> = {
    SS: levels.ofRuns.reduce((sum, s) => sum + s * s, 0),
    'pooled s3 (5 df)': levels.levelThree.standardDeviation,
    'day-to-day s2 (50 df)': levels.levelTwo.standardDeviation,
    'level-1 pooled (300 df)': levels.levelOne.standardDeviation,
    'df s2': levels.levelTwo.degrees,
  };
  for (const [i, wafer] of wafers.entries()) found[`s3 wafer ${wafer}`] = levels.ofRuns[i]!;
  expectWhole(nested, found);
  expect([levels.levelOne.degrees, levels.levelThree.degrees]).toEqual([300, 5]);
});

test('a study that is not full is refused with the part', () => {
  const torn = readings.map((part, p) => (p === 3 ? part.map((trials) => trials.slice(1)) : part));
  expect(() => analyseGauge(torn)).toThrow('part 4 was not read 3 times by each of 3 operators');
});

// The repeatability alone is exact: 78 degrees, χ² 0.025 and 0.975 at 55.47 and 104.32 (R, qchisq).
test('the interval of repeatability is the exact one', () => {
  const { repeatability } = gaugeIntervals(analyseGauge(readings), 0.95);
  const sum = 78 * repeatability.value;
  expect(sum / repeatability.upper).toBeCloseTo(55.4656, 4);
  expect(sum / repeatability.lower).toBeCloseTo(104.31595, 4);
});

test('the intervals of gauge, operator and part hold in about 95 % of simulated studies', () => {
  const truth = { repeatability: 1, operator: 0.5, part: 4 };
  const held = { gauge: 0, operator: 0, part: 0 };
  const studies = 1500;
  for (let i = 0; i < studies; i++) {
    const random = randomStream(20261125, i);
    const operators = Array.from({ length: 4 }, () => Math.sqrt(truth.operator) * random.normal());
    const simulated = Array.from({ length: 8 }, () => {
      const part = Math.sqrt(truth.part) * random.normal();
      return operators.map((operator) => Array.from({ length: 2 }, () => part + operator + random.normal()));
    });
    const found = gaugeIntervals(analyseGauge(simulated), 0.95);
    const inside = (of: { lower: number; upper: number }, value: number) =>
      of.lower <= value && value <= of.upper ? 1 : 0;
    held.gauge += inside(found.gauge, truth.operator + truth.repeatability);
    held.operator += inside(found.operator, truth.operator);
    held.part += inside(found.part, truth.part);
  }
  for (const count of Object.values(held)) {
    // Monte Carlo error 0.6 points.
    expect(count / studies).toBeGreaterThan(0.93);
    expect(count / studies).toBeLessThan(0.975);
  }
});
