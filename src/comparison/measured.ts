import type {
  MeasuredComparison,
  MeasuredDifference,
  MeasuredPair,
  VarianceEffect,
} from '../result/measured-comparison.ts';
import { analyseBalanced } from '../statistics/analysis-of-variance/balanced.ts';
import { analyseOneWay } from '../statistics/analysis-of-variance/one-way.ts';
import { analyseUnequalSpreads } from '../statistics/analysis-of-variance/welch.ts';
import { detectableDifference } from '../statistics/comparison-tests/detectable.ts';
import { ratioToReference } from '../statistics/comparison-tests/non-inferiority.ts';
import { randomisationTest } from '../statistics/comparison-tests/randomisation.ts';
import { type MeanDifference, pairedTest, welchTest } from '../statistics/comparison-tests/student.ts';
import { adjust } from '../statistics/multiplicity/adjust.ts';
import { compareAllPairs } from '../statistics/multiplicity/all-pairs.ts';
import { groupsNotToldApart } from '../statistics/multiplicity/groups.ts';
import { mean, variance } from '../statistics/summary/moments.ts';
import { judgeMargin } from './joined.ts';

/** What was measured on one tyre, and where it stood in a layout. */
export interface Measured {
  readonly value: number;
  /** What it shares with one tyre of each other construction; null where no pairs were named. */
  readonly pair: string | null;
  /** Level of each block that was named, in their order. */
  readonly blocks: readonly string[];
}

export interface MeasuredSettings {
  readonly confidence: number;
  readonly margin: number | null;
  readonly blocks: readonly string[];
}

type Compared = Pick<MeasuredComparison, 'pairs' | 'overall' | 'blocked' | 'ranking' | 'groups'>;

/** Constructions by a quantity of their tyres: all pairs, all at once, and with blocks where the layout has them. */
export function compareMeasured(
  samples: readonly (readonly Measured[])[],
  settings: MeasuredSettings,
): Compared & { readonly notes: readonly string[] } {
  const values = samples.map((sample) => sample.map(({ value }) => value));
  const common = tried(() => compareAllPairs(values, settings.confidence));
  const places = values.flatMap((_, i) => values.slice(i + 1).map((__, k) => [i, i + 1 + k] as const));
  const bare = places.map(([first, second], i) => {
    const line = common.ok ? common.value[i]! : null;
    return pairOf(samples, first, second, line, settings);
  });
  const ps = bare.map(({ paired, separate }) => (paired ?? separate)?.p ?? null);
  const holm = adjust(
    ps.map((p) => p ?? 1),
    'holm',
  );
  const pairs = bare.map((pair, i): MeasuredPair => {
    const own = ps[i] === null ? null : holm[i]!;
    return { ...pair, holm: own, toldApart: own === null ? null : own <= 1 - settings.confidence };
  });
  const ranking = values.map((_, i) => i).sort((a, b) => mean(values[a]!) - mean(values[b]!) || a - b);
  const blocked = tried(() => blocksOf(samples, settings.blocks));
  return {
    pairs,
    overall: overallOf(values),
    blocked: blocked.ok ? blocked.value : [],
    ranking,
    groups: groupsNotToldApart(
      ranking,
      pairs.filter(({ toldApart }) => toldApart === true),
    ),
    notes: blocked.ok ? [] : [`the blocks are not allowed for: ${blocked.why}`],
  };
}

function pairOf(
  samples: readonly (readonly Measured[])[],
  first: number,
  second: number,
  line: ReturnType<typeof compareAllPairs>[number] | null,
  { confidence, margin }: MeasuredSettings,
): MeasuredPair {
  const [a, b] = [samples[first]!, samples[second]!];
  const [x, y] = [a, b].map((sample) => sample.map(({ value }) => value)) as [number[], number[]];
  const welch = tried(() => welchTest(y, x, confidence));
  const positive = [...x, ...y].every((value) => value > 0);
  const ratioAt = (level: number) => tried(() => ratioToReference(y, x, 0, level));
  const ratio = positive ? ratioAt(0.5 + confidence / 2) : null;
  const bound = positive && margin !== null ? ratioAt(confidence) : null;
  const paired = pairsOf(a, b);
  const test = paired.length < 2 ? null : tried(() => pairedOf(paired, confidence));
  return {
    first,
    second,
    separate: welch.ok ? differenceOf(welch.value) : null,
    common:
      line === null
        ? null
        : {
            value: -line.difference,
            lower: -line.upper,
            upper: -line.lower,
            p: line.p,
            holm: line.holm,
            bonferroni: line.bonferroni,
            tukey: line.tukey,
          },
    ratio: ratio?.ok
      ? { value: ratio.value.ratio, lower: ratio.value.lower, upper: ratio.value.upper }
      : null,
    paired: test?.ok ? test.value : null,
    randomisation: randomised(paired),
    holm: null,
    toldApart: null,
    smallestDifference: smallest(x, y, confidence),
    nonInferiority:
      margin !== null && bound?.ok
        ? judgeMargin(
            { value: bound.value.ratio, lower: bound.value.lower, upper: bound.value.upper },
            margin,
          )
        : null,
    why: welch.ok ? null : 'fewer than two values, or values that do not vary: no test is possible',
  };
}

function differenceOf({ difference, lower, upper, t, degrees, p }: MeanDifference): MeasuredDifference {
  return { value: difference, lower, upper, t, degrees, p };
}

/** Values of tyres that share a pair: second and first. */
function pairsOf(first: readonly Measured[], second: readonly Measured[]): (readonly [number, number])[] {
  const known = new Map(first.map(({ pair, value }) => [pair, value]));
  return second.flatMap(({ pair, value }) =>
    pair === null || !known.has(pair) ? [] : [[value, known.get(pair)!] as const],
  );
}

function pairedOf(pairs: readonly (readonly [number, number])[], confidence: number) {
  const found = pairedTest(
    pairs.map(([y]) => y),
    pairs.map(([, x]) => x),
    confidence,
  );
  return { ...differenceOf(found), pairs: pairs.length };
}

/** One-sided towards what was seen. */
function randomised(pairs: readonly (readonly [number, number])[]): MeasuredPair['randomisation'] {
  const differences = pairs.map(([y, x]) => y - x);
  const towards = differences.reduce((sum, one) => sum + one, 0) < 0 ? -1 : 1;
  const found = tried(() => randomisationTest(differences.map((one) => towards * one)));
  return found.ok ? { pOneSided: found.value.pOneSided, pTwoSided: found.value.pTwoSided } : null;
}

function smallest(x: readonly number[], y: readonly number[], confidence: number): number | null {
  const degrees = x.length + y.length - 2;
  if (x.length < 2 || y.length < 2) return null;
  const squares = variance(x) * (x.length - 1) + variance(y) * (y.length - 1);
  const plan = {
    n1: x.length,
    n2: y.length,
    standardDeviation: Math.sqrt(squares / degrees),
    significance: 1 - confidence,
  };
  const found = tried(() => detectableDifference(0.8, plan));
  return found.ok ? found.value : null;
}

function overallOf(values: readonly (readonly number[])[]): MeasuredComparison['overall'] {
  const name = 'construction';
  const one = tried(() => analyseOneWay(values));
  const own = tried(() => analyseUnequalSpreads(values));
  const common = one.ok
    ? [
        {
          spreads: 'common' as const,
          name,
          sumOfSquares: one.value.between.sumOfSquares,
          degrees: one.value.between.degrees,
          below: one.value.within.degrees,
          f: one.value.test?.f ?? null,
          p: one.value.test?.p ?? null,
        },
      ]
    : [];
  if (!own.ok) return common;
  const { f, above, below, p } = own.value;
  return [...common, { spreads: 'separate', name, sumOfSquares: null, degrees: above, below, f, p }];
}

function blocksOf(samples: readonly (readonly Measured[])[], blocks: readonly string[]): VarianceEffect[] {
  if (blocks.length === 0) return [];
  const all = samples.flatMap((sample, place) => sample.map((measured) => ({ ...measured, place })));
  const { factors, error, total } = analyseBalanced(
    all.map(({ value }) => value),
    [
      { name: 'construction', levels: all.map(({ place }) => String(place)) },
      ...blocks.map((name, i) => ({ name, levels: all.map((measured) => measured.blocks[i]!) })),
    ],
  );
  const line = (name: string, of: { sumOfSquares: number; degrees: number }): VarianceEffect => ({
    name,
    sumOfSquares: of.sumOfSquares,
    degrees: of.degrees,
    f: null,
    p: null,
  });
  return [
    ...factors.map((factor) => ({
      ...line(factor.name, factor.line),
      f: factor.test?.f ?? null,
      p: factor.test?.p ?? null,
    })),
    line('error', error),
    line('total', total),
  ];
}

/** What a layout or too few values do not allow is told, not thrown. */
function tried<Value>(act: () => Value): { ok: true; value: Value } | { ok: false; why: string } {
  try {
    return { ok: true, value: act() };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { ok: false, why: error.message };
  }
}
