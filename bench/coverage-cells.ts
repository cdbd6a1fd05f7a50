import type { Experiment } from '../src/statistics/calibration/experiment.ts';
import type { TabulatedTest } from '../src/statistics/calibration/tabulated-criticals.ts';
import { fixedTest, risingTest, steppedTest } from './invented-tests.ts';

/** One cell of the coverage study: median 0, spread 1, so that lengths are spreads. */
export interface Cell {
  readonly kind: string;
  readonly name: string;
  readonly id: string;
  /** The test with its levels shifted by a part of a step, from −½ to ½. */
  experiment(offset: number): Experiment;
  /** Where the analysis uses the table of critical values. */
  readonly tabulated: ((offset: number) => TabulatedTest) | null;
}

const STEPS = [0.5, 1, 2];

/** `off`: steps by which the start lies below the median. */
function upAndDown(drops: number, step: number, off: number): Cell {
  const start = (offset: number) => (offset - off) * step;
  const where = off < 0 ? `${-off} above` : off === 0 ? '0' : `${off} below`;
  return {
    kind: 'Up-and-down, one hit a tyre',
    name: `${drops} drops, step ${step}, start ${where}`,
    id: `up-and-down-${drops}-${step}-${off}`,
    experiment: (offset) => steppedTest({ drops, step, start: start(offset) }),
    tabulated: (offset) => ({ drops, step, start: start(offset) }),
  };
}

function sites(tyres: number, each: number, step: number, off: number): Cell {
  return {
    kind: 'Up-and-down, several sites a tyre, half the variance between tyres',
    name: `${tyres} tyres × ${each}, step ${step}, start ${off} below`,
    id: `sites-${tyres}-${each}-${step}-${off}`,
    experiment: (offset) =>
      steppedTest({ drops: tyres * each, step, start: (offset - off) * step, perSpecimen: each, share: 0.5 }),
    tabulated: null,
  };
}

/** From three spreads, and at least three steps, below the median. */
function rising(specimens: number, step: number): Cell {
  const from = -Math.max(3, 3 * step);
  const levels = Math.ceil((6 - from) / step) + 2;
  return {
    kind: 'Rising height, one threshold a tyre',
    name: `${specimens} tyres, step ${step}`,
    id: `rising-${specimens}-${step}`,
    experiment: (offset) => risingTest({ specimens, step, start: from + offset * step, levels }),
    tabulated: null,
  };
}

function fixed(levels: number, each: number, step: number): Cell {
  return {
    kind: 'Fixed levels',
    name: `${levels} levels of ${each}, ${step} apart`,
    id: `fixed-${levels}-${each}-${step}`,
    experiment: (offset) => fixedTest({ levels, each, step, lowest: (offset - (levels - 1) / 2) * step }),
    tabulated: null,
  };
}

/** The hardest first. */
export const cells: readonly Cell[] = [
  ...[
    [3, 8],
    [5, 6],
    [8, 4],
  ].flatMap(([tyres, each]) => STEPS.flatMap((step) => [0, 3].map((off) => sites(tyres!, each!, step, off)))),
  ...[5, 10, 20].flatMap((specimens) => STEPS.map((step) => rising(specimens, step))),
  ...[4, 6].flatMap((levels) => [5, 10].flatMap((each) => STEPS.map((step) => fixed(levels, each, step)))),
  ...[15, 20, 30, 50].flatMap((drops) =>
    STEPS.flatMap((step) => [0, 1, 2, 3, -3].map((off) => upAndDown(drops, step, off))),
  ),
  // Numbers of drops that the table has not.
  ...[13, 25, 40].flatMap((drops) => STEPS.map((step) => upAndDown(drops, step, 1))),
];
