import { chosenExperiment, resolutionOf } from '../src/impact/estimates/experiments.ts';
import { dOptimal } from '../src/impact/rules/d-optimal.ts';
import { langlie } from '../src/impact/rules/langlie.ts';
import { roughly } from '../src/impact/rules/reckoning.ts';
import type { Experiment } from '../src/statistics/calibration/experiment.ts';
import type { TabulatedTest } from '../src/statistics/calibration/tabulated-criticals.ts';
import { normal } from '../src/statistics/laws/normal.ts';
import type { ProfileBasis } from '../src/statistics/likelihood/constrained.ts';
import { fixedTest, risingTest, steppedTest } from './invented-tests.ts';

/** One cell of the coverage study: median 0, spread 1, so that lengths are spreads. */
export interface Cell {
  readonly kind: string;
  readonly name: string;
  readonly id: string;
  /** The test with its levels shifted by a part of a step, from −½ to ½. */
  experiment(offset: number): Experiment;
  /** What stands for the step in one test, where the rule chooses its levels. */
  readonly told?: (basis: ProfileBasis) => number;
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

/**
 * Rules that choose their levels between −range/2 and range/2, shifted by up to a spread. The middle of the range (the
 * guess: two spreads wide, of a spread that is `wrong` times the true one) is off by one spread.
 */
function chosen(method: 'langlie' | 'd-optimal', drops: number, range: number, wrong: number): Cell {
  const told = ({ ends: { highestLower, lowestUpper, lowest, highest } }: ProfileBasis) =>
    resolutionOf(highestLower, lowestUpper, highest - lowest);
  const places = Array.from({ length: 513 }, (_, i) => (i / 512 - 0.5) * range);
  return {
    kind: 'Levels chosen by the rule, one hit a tyre',
    name: `${method}, ${drops} drops, range ${range}${method === 'langlie' ? '' : `, guessed spread ${wrong}`}`,
    id: `${method}-${drops}-${range}-${wrong}`,
    told,
    tabulated: null,
    experiment(offset) {
      // Levels of a rule are positive: a hundred spreads up, and down again for the energies.
      const at = 101 + offset;
      const plan = {
        limits: { min: at - range / 2, max: at + range / 2 },
        resolution: null,
        varied: 'height',
        stop: { drops },
        perSpecimen: 1,
        goesOnAfterFailure: false,
      } as const;
      const guess = { lowest: at - 1, highest: at + 1, spread: wrong };
      const rule =
        method === 'langlie' ? langlie(plan) : dOptimal({ ...plan, guess, distribution: 'normal' }, roughly);
      const levels = places.map((place) => at + place);
      return chosenExperiment({ rule, levels, mostDrops: drops }, range / 16, {
        law: normal,
        share: 0,
        energyAt: (level) => level - 100,
      })!;
    },
  };
}

/** The hardest first. */
export const cells: readonly Cell[] = [
  ...[20, 30].flatMap((drops) => [8, 16].map((range) => chosen('langlie', drops, range, 1))),
  ...[20, 30].flatMap((drops) => [0.5, 2].map((wrong) => chosen('d-optimal', drops, 12, wrong))),
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
