import type { ComparedPair, Influence } from '../result/comparison.ts';
import type { LawName } from '../statistics/law.ts';
import { laws } from '../statistics/laws/laws.ts';
import { adjust } from '../statistics/multiplicity/adjust.ts';
import { groupsNotToldApart } from '../statistics/multiplicity/groups.ts';
import { joinedDifferences, joinedRatio, judgeMargin } from './joined.ts';
import { answerPair, type PairAnswer, type PairTask } from './pair-task.ts';
import type { Side } from './side.ts';
import { survivalTest } from './survival-test.ts';

export interface SamplesCompared {
  readonly pairs: readonly ComparedPair[];
  readonly ranking: readonly number[] | null;
  readonly groups: readonly (readonly number[])[];
  readonly influence: readonly Influence[];
}

/** By what all pairs are compared. */
export interface PairSettings {
  readonly kind: 'impact' | 'endurance';
  readonly law: LawName;
  readonly confidence: number;
  /** Share that may be lost against the first of a pair; null where none was given. */
  readonly margin: number | null;
  /** Whether single hits on fresh tyres are compared, and nothing else can be. */
  readonly bySingleHits: boolean;
  /** Carries pairs out, in their order; the calling thread where it is left out. */
  readonly runner?: (tasks: readonly PairTask[]) => Promise<PairAnswer[]>;
}

/** All pairs of samples, with Holm's adjustment of the test of equal medians over them. */
export async function compareSamples(
  sides: readonly Side[],
  settings: PairSettings,
): Promise<SamplesCompared> {
  const { law, confidence, bySingleHits } = settings;
  const places = sides.flatMap((_, i) => sides.slice(i + 1).map((__, k) => [i, i + 1 + k] as const));
  if (bySingleHits) {
    const pairs = places.map(([first, second]) => singleHitPair(sides, first, second, settings));
    return concluded(sides.length, pairs, []);
  }
  const tasks = places.map(([a, b]) => ({
    first: sides[a]!.looks,
    second: sides[b]!.looks,
    law,
    confidence,
  }));
  const answers = await (settings.runner ?? here)(tasks);
  const holm = holmOf(answers.map(({ p }) => p));
  const pairs = places.map(([first, second], i) =>
    pairOf(sides, first, second, answers[i]!, holm[i]!, settings),
  );
  const influence = pairs.flatMap((pair, i) => influenceOn(pair, answers[i]!, confidence));
  return concluded(sides.length, pairs, influence);
}

async function here(tasks: readonly PairTask[]): Promise<PairAnswer[]> {
  return tasks.map(answerPair);
}

/** A pair without an estimate still counts as a question asked. */
function holmOf(ps: readonly (number | null)[]): (number | null)[] {
  if (ps.every((p) => p === null)) return ps.map(() => null);
  const adjusted = adjust(
    ps.map((p) => p ?? 1),
    'holm',
  );
  return ps.map((p, i) => (p === null ? null : adjusted[i]!));
}

function pairOf(
  sides: readonly Side[],
  first: number,
  second: number,
  { differences, p, equalSpreads, smallestRatio, bounds }: PairAnswer,
  holm: number | null,
  { kind, law, confidence, margin }: PairSettings,
): ComparedPair {
  const [a, b] = [sides[first]!.calibrated, sides[second]!.calibrated];
  const { scale } = laws[law];
  const joined = a === null || b === null ? [] : joinedDifferences(a, b, scale, confidence, 'calibrated');
  const [x, y] = [a?.(0.5, confidence, 1), b?.(0.5, confidence, 1)];
  const oneSided = x && y ? joinedRatio(x, y, scale) : bounds;
  return {
    first,
    second,
    differences: [...joined, ...differences],
    equalSpreads,
    p,
    logRank: kind === 'endurance' ? survivalTest(sides[first]!.looks, sides[second]!.looks) : null,
    nonInferiority: margin === null ? null : judgeMargin(oneSided, margin),
    holm,
    toldApart: holm === null ? null : holm <= 1 - confidence && !holdsOne(joined[0]?.ratio ?? null),
    smallestRatio,
  };
}

function singleHitPair(
  sides: readonly Side[],
  first: number,
  second: number,
  { law, confidence, margin }: PairSettings,
): ComparedPair {
  const [a, b] = [sides[first]!.single, sides[second]!.single];
  if (typeof a === 'string' || typeof b === 'string') throw new Error('refused before, for want of a model');
  const { scale } = laws[law];
  const differences = joinedDifferences(a.limits, b.limits, scale, confidence, 'specimen-effect');
  const [x, y] = [a.limits(0.5, confidence, 1), b.limits(0.5, confidence, 1)];
  const ratio = differences[0]?.ratio ?? null;
  return {
    first,
    second,
    differences,
    equalSpreads: null,
    p: null,
    logRank: null,
    nonInferiority: margin === null || !x || !y ? null : judgeMargin(joinedRatio(x, y, scale), margin),
    holm: null,
    toldApart: ratio === null ? null : !holdsOne(ratio),
    smallestRatio: null,
  };
}

/** Whether equality is not excluded; no interval excludes nothing beyond what the test says. */
function holdsOne(ratio: { readonly lower: number | null; readonly upper: number | null } | null): boolean {
  if (ratio === null) return false;
  return (ratio.lower === null || ratio.lower <= 1) && (ratio.upper === null || ratio.upper >= 1);
}

function concluded(
  size: number,
  pairs: readonly ComparedPair[],
  influence: readonly Influence[],
): SamplesCompared {
  const ranking = rankingOf(size, pairs);
  const apart = pairs.filter(({ toldApart }) => toldApart === true);
  return { pairs, ranking, groups: ranking === null ? [] : groupsNotToldApart(ranking, apart), influence };
}

/** Median of a sample by its own spread where some pair gives one, else under a common spread. */
export function mediansOf(size: number, pairs: readonly ComparedPair[]): (number | null)[] {
  const medians = new Array<number | null>(size).fill(null);
  for (const { first, second, differences } of pairs) {
    const own = differences.find(({ probability, spreads }) => probability === 0.5 && spreads === 'separate');
    const common = differences.find(({ probability }) => probability === 0.5);
    for (const [place, i] of [
      [first, 0],
      [second, 1],
    ] as const) {
      medians[place] ??= own?.values[i] ?? common?.values[i] ?? null;
    }
  }
  return medians;
}

/** Weakest first; null where a median has no value. */
function rankingOf(size: number, pairs: readonly ComparedPair[]): number[] | null {
  const medians = mediansOf(size, pairs);
  if (medians.some((median) => median === null)) return null;
  return medians.map((_, i) => i).sort((a, b) => medians[a]! - medians[b]! || a - b);
}

/** What turns when one specimen at a time is left out: who is stronger, and whether the pair is told apart. */
function influenceOn(
  pair: ComparedPair,
  { differences, p, leftOut }: PairAnswer,
  confidence: number,
): Influence[] {
  const [a, b] = differences[0]!.values;
  if (a === null || b === null) return [];
  const pairwise = p !== null && p <= 1 - confidence;
  // Where Holm's adjustment or the calibrated interval decides otherwise than the test, the test alone says nothing of it.
  const follows = pairwise === pair.toldApart;
  return leftOut.flatMap(({ side, specimen, rest }): Influence[] => {
    const at = { sample: side === 0 ? pair.first : pair.second, specimen };
    if (rest === null) return [{ ...at, effect: 'no estimate is left' }];
    const [x, y] = rest.values;
    if (Math.sign(y - x) !== Math.sign(b - a)) return [{ ...at, effect: 'the two change places' }];
    if (!follows || rest.p === null) return [];
    const apart = rest.p <= 1 - confidence;
    if (apart === pairwise) return [];
    return [{ ...at, effect: apart ? 'the two are told apart' : 'the two are no longer told apart' }];
  });
}
