// Invented results for the reporters: the numbers are not those of any test, and nothing is checked against them.
import type { ImpactResult } from '../../src/result/analysis.ts';
import type { Estimate } from '../../src/result/estimate.ts';

const joules = (height: number) => (8 * 9.8125 * height) / 1000;

/** A staircase drop by drop: height, and `x` failed, `o` survived, `-` left out. */
export function pathOf(drops: readonly (readonly [number, string])[]): ImpactResult['path'] {
  return drops.map(([height, mark], i) => ({
    line: i + 2,
    specimen: `T-${String(i + 1).padStart(2, '0')}`,
    series: null,
    height,
    energy: joules(height),
    outcome: mark === 'x' ? 'failed' : 'survived',
    used: mark !== '-',
  }));
}

function staircase(marks: string): ImpactResult['path'] {
  let height = 500;
  return pathOf(
    [...marks].map((mark) => {
      const drop = [height, mark] as const;
      if (mark === 'x') height -= 25;
      if (mark === 'o') height += 25;
      return drop;
    }),
  );
}

const likelihood = {
  method: 'censored-likelihood',
  distribution: 'normal',
  unit: 'J',
  specimens: 30,
  drops: 30,
  why: null,
} as const satisfies Partial<Estimate>;

const profile = (lower: number | null, upper: number | null) =>
  ({ level: 0.95, sides: 2, lower, upper, method: 'profile-likelihood' }) as const;

/** An up-and-down test that passes one criterion, with a mass criterion and one of another protocol beside it. */
export const passing: ImpactResult = {
  kind: 'impact',
  run: 'run-117',
  protocol: { id: 'pinch-up-down', version: '1.0.0', method: 'up-and-down', title: 'Pinch cut, trail tyre' },
  rig: { id: 'drop-2', config: '2026-03' },
  constructions: [{ id: 'C-114', revision: '2' }],
  specification: { id: 'trail-casing', version: '1.0.0' },
  inputs: [
    { role: 'run', path: 'run.yaml', sha256: '3f2a91c0d6'.padEnd(64, '0'), bytes: 311, rows: null },
    { role: 'log', path: 'drops.csv', sha256: '77aa01be42'.padEnd(64, '1'), bytes: 2048, rows: 31 },
  ],
  energy: {
    definition: 'potential',
    gravity: 9.8125,
    gravityFrom: 'rig site',
    mass: 8,
    massFrom: 'rig',
  },
  defaults: ['two-sided 95 % intervals', 'one site a specimen'],
  notes: ['log drops.csv: the column "Bemerkung 2" is not known and was left alone'],
  conformance: {
    status: 'deviating',
    why: null,
    excluded: 1,
    deviations: [
      {
        code: 'DROP-21',
        severity: 'minor',
        scope: 'drop',
        message:
          'pressure 2.07 bar, the protocol asks for 2.0 bar ± 0.05 bar; the drop is used, its energy is not corrected',
        file: 'drops.csv',
        line: 13,
        specimen: 'T-12',
        drop: 12,
        count: 1,
      },
      {
        code: 'DROP-00',
        severity: 'note',
        scope: 'run',
        message: 'the column "Bemerkung 2" is not known and was left alone',
        file: 'drops.csv',
        line: 1,
        specimen: null,
        drop: null,
        count: 1,
      },
    ],
  },
  sample: { specimens: 30, drops: 31, validDrops: 30, failures: 14, censored: null },
  samples: [],
  amendments: [],
  replaces: null,
  provisional: [],
  path: staircase('oxoxooxx-oxoxoxxooxoxxoxoxooxxo'),
  estimates: [
    {
      ...likelihood,
      quantity: 'medianFailureEnergy',
      value: 40.187,
      standardError: 0.5912,
      interval: profile(38.921, 41.517),
    },
    {
      ...likelihood,
      quantity: 'failureEnergyQuantile',
      probability: 0.1,
      value: 37.2204,
      standardError: 1.211,
      interval: profile(30.8, 38.8),
    },
    {
      ...likelihood,
      quantity: 'energySpread',
      value: 2.315,
      standardError: 0.811,
      interval: profile(1.2, null),
    },
    {
      ...likelihood,
      quantity: 'medianFailureHeight',
      unit: 'mm',
      value: 511.94,
      standardError: 7.53,
      interval: profile(495.8, 528.9),
    },
    {
      quantity: 'medianFailureEnergy',
      method: 'up-and-down-count',
      distribution: 'normal',
      unit: 'J',
      value: null,
      standardError: null,
      interval: null,
      specimens: 30,
      drops: 30,
      why: 'the count formula needs an unbroken path, and drop 9 was left out',
    },
  ],
  goodness: null,
  regression: null,
  criteria: [
    {
      id: 'median',
      quantity: 'medianFailureEnergy',
      limit: { atLeast: 38, unit: 'J' },
      rule: 'lower-bound',
      confidence: 0.95,
      estimate: 40.187,
      standardError: 0.65,
      specimens: 30,
      bounds: { lower: 39.13, upper: 41.28 },
      basis: { method: 'censored-likelihood', interval: 'profile-likelihood' },
      verdict: 'pass',
      why: 'the lower 95 % bound, 39.13 J, is at or above the limit of 38 J (1.13 J to spare)',
      counted: true,
    },
    {
      id: 'life',
      quantity: 'reliability',
      limit: { atLeast: 0.6, unit: '1' },
      rule: 'lower-bound',
      confidence: 0.9,
      estimate: null,
      standardError: null,
      specimens: 0,
      bounds: { lower: null, upper: null },
      basis: { method: null, interval: null },
      verdict: 'not-tested',
      why: 'rests on protocol drum-two-block@1.0.0, and this run followed pinch-up-down@1.0.0',
      counted: false,
    },
    {
      id: 'mass',
      quantity: 'mass',
      limit: { within: { lower: 855, upper: 945 }, unit: 'g' },
      rule: 'each',
      confidence: 0.95,
      estimate: null,
      standardError: null,
      specimens: 28,
      bounds: { lower: null, upper: null },
      basis: { method: null, interval: null },
      verdict: 'pass',
      why: 'all 28 measured tyres meet 855 to 945 g; 2 tyres not measured',
      counted: true,
      measured: { specimens: 28, missing: 2, smallest: 893.5, largest: 918, beyond: [] },
    },
  ],
  verdict: 'pass',
};

/** Few drops on three tyres, one level in common only: no single value, an interval open above, no decision. */
export const undecided: ImpactResult = {
  ...passing,
  run: null,
  rig: null,
  conformance: { status: 'conforming', why: null, deviations: [], excluded: 0 },
  sample: { specimens: 3, drops: 12, validDrops: 12, failures: 5, censored: null },
  path: staircase('oxoxoxoxoxoo').map((drop, i) => ({ ...drop, specimen: `T-${1 + (i % 3)}` })),
  estimates: [
    {
      ...likelihood,
      specimens: 3,
      drops: 12,
      quantity: 'medianFailureEnergy',
      value: null,
      standardError: null,
      interval: profile(38.1, null),
      why: 'failures and survivals share one level only (common level), so the spread has no single best value',
    },
    {
      ...likelihood,
      specimens: 3,
      drops: 12,
      quantity: 'energySpread',
      value: null,
      standardError: null,
      interval: null,
      why: 'failures and survivals share one level only (common level), so the spread has no single best value',
    },
  ],
  criteria: [
    {
      ...passing.criteria[0]!,
      estimate: null,
      bounds: { lower: 38.4, upper: null },
      limit: { atLeast: 45, unit: 'J' },
      verdict: 'inconclusive',
      why: 'the limit, at least 45 J, is not decided by a lower 95 % bound of 38.40 J and no upper one',
      more: {
        specimens: null,
        why: 'without an estimate nobody can say how many more tyres would decide',
      },
    },
  ],
  verdict: 'inconclusive',
};

/** A rising-height test without specification. */
export const rising: ImpactResult = {
  ...passing,
  protocol: { id: 'city-rising', version: '2.1.0', method: 'rising-height', title: null },
  specification: null,
  conformance: { status: 'conforming', why: null, deviations: [], excluded: 0 },
  sample: { specimens: 6, drops: 26, validDrops: 26, failures: 5, censored: 1 },
  path: pathOf(
    [4, 5, 3, 6, 4, 4].flatMap((drops, tyre) =>
      Array.from(
        { length: drops },
        (_, i) => [350 + 25 * i, i === drops - 1 && tyre !== 3 ? 'x' : 'o'] as const,
      ),
    ),
  ),
  estimates: [
    {
      ...likelihood,
      specimens: 6,
      drops: 26,
      quantity: 'medianFailureEnergy',
      value: 33.1,
      standardError: 0.92,
      interval: profile(31.2, 35.6),
      why: 'bound to the start of 350 mm and the step of 25 mm',
    },
  ],
  criteria: [],
  verdict: null,
};

/** A hundred thousand drops: the counts of each level stand for the picture. */
export const long: ImpactResult = {
  ...passing,
  sample: { specimens: 100_000, drops: 100_000, validDrops: 100_000, failures: 50_000, censored: null },
  path: pathOf(
    Array.from({ length: 100_000 }, (_, i) => {
      const level = (i * 7919) % 9;
      return [400 + 25 * level, (i * 31) % 9 < level ? 'x' : 'o'] as const;
    }),
  ),
  conformance: {
    status: 'deviating',
    why: null,
    excluded: 0,
    deviations: Array.from({ length: 21 }, (_, i) => ({
      ...passing.conformance.deviations[0]!,
      line: i === 20 ? null : 13 + i,
      count: i === 20 ? 4980 : 1,
      ...(i === 20 ? { firstLine: 40, lastLine: 99_000, message: '4980 more of DROP-21', drop: null } : {}),
    })),
  },
};
