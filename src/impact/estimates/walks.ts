import type { ImpactProtocol, Stop } from '../../documents/kinds.ts';
import type { Experiment } from '../../statistics/calibration/experiment.ts';
import type { Levels } from '../rules/levels.ts';
import { specimensOf } from '../rules/method-rules.ts';
import type { MethodRule } from '../rules/rule.ts';
import type { MethodState } from '../rules/series-state.ts';
import { NO_PROGRESS, type Progress, stopReached } from '../rules/stop.ts';

/** One series of a method that moves by one level, as it was made. */
export interface SteppedSeries {
  readonly levels: Levels;
  /** Index of the level of its first drop. */
  readonly start: number;
  readonly stop: Stop;
  /** The tyre of each drop, numbered over all series. */
  readonly specimens: readonly number[];
}

/** Steps from the start that are simulated at most; the walk stays at the last as at a limit of the rig. */
const FARTHEST = 60;

/**
 * Carries out all series of an up-and-down test, one after another, all on the levels of the first: the rule of
 * up-and-down.ts in numbers alone, since thousands of tests are simulated for one interval (a test holds one to the other).
 * The tyres are hit in the order in which they were; where a failure retires a tyre with sites left, each is used up
 * before the next is taken.
 */
export function steppedWalk(series: readonly SteppedSeries[], protocol: ImpactProtocol) {
  const sites = specimensOf(protocol);
  const keepsOrder = sites.goesOnAfterFailure || sites.perSpecimen === 1;
  const drops = series.map(({ stop, specimens }) => dropsAtMost(stop, specimens.length));
  const mostDrops = drops.reduce((sum, most) => sum + most, 0);
  const { levels: from, start: origin } = series[0]!;
  const reach = Math.min(FARTHEST, Math.max(...drops));
  const lowest = Math.max(from.lowest, origin - reach);
  const highest = Math.min(from.highest, origin + reach);
  const heights = Array.from({ length: highest - lowest + 1 }, (_, i) => from.at(lowest + i));
  const named = new Set(series.flatMap(({ specimens }) => specimens)).size;
  const runs = series.map(({ start, stop, specimens }, index) => {
    const at = Math.min(Math.max(start, lowest), highest) - lowest;
    return { at, stop, specimens, most: drops[index]! };
  });
  const raiseAfter = protocol.survivalsToRaise ?? 1;
  const hits = new Int32Array(named + mostDrops);
  const walk: Experiment['walk'] = (fails, into) => {
    let fresh = named;
    let drop = 0;
    for (const { at, stop, specimens, most } of runs) {
      const progress = { ...NO_PROGRESS };
      let level = at;
      let survivals = 0;
      let specimen = -1;
      let before = -1;
      let isOver = true;
      hits.fill(0);
      for (let i = 0; i < most && stopReached(stop, progress) === null; i++) {
        if (keepsOrder) specimen = specimens[i] ?? fresh++;
        else if (isOver) specimen = fresh++;
        const failed = fails(level, specimen) ? 1 : 0;
        into.level[drop] = level;
        into.failed[drop] = failed;
        into.specimen[drop++] = specimen;
        const hit = ++hits[specimen]!;
        isOver = hit >= sites.perSpecimen || (failed === 1 && !sites.goesOnAfterFailure);
        count(progress, failed, before, hit, isOver);
        before = failed;
        survivals = failed ? 0 : survivals + 1;
        const move = failed ? -1 : survivals % raiseAfter === 0 ? 1 : 0;
        const next = Math.min(Math.max(level + move, 0), heights.length - 1);
        if (next !== level) survivals = 0;
        level = next;
      }
    }
    into.size = drop;
  };
  return { heights, walk, mostDrops, mostSpecimens: named + mostDrops };
}

/** What a stop rule counts, to be counted in place. */
export type RunningCount = { -readonly [Key in keyof Progress]: Progress[Key] };

/** What `counting` of the rules does, in place: no object a drop. */
export function count(
  progress: RunningCount,
  failed: number,
  before: number,
  hit: number,
  isOver: boolean,
): void {
  const begun = hit === 1 ? 1 : 0;
  progress.drops += 1;
  progress.failures += failed;
  if (before >= 0 && before !== failed) progress.reversals += 1;
  progress.specimens += begun;
  progress.open = Math.max(0, progress.open + begun - (isOver ? 1 : 0));
}

/** Each specimen from the lowest level upwards until it fails or has survived the highest: the rising-height rule. */
export function risingWalk(levels: number, specimens: number): Experiment['walk'] {
  return (fails, into) => {
    let drop = 0;
    for (let specimen = 0; specimen < specimens; specimen++) {
      for (let level = 0; level < levels; level++) {
        const failed = fails(level, specimen);
        into.level[drop] = level;
        into.failed[drop] = failed ? 1 : 0;
        into.specimen[drop++] = specimen;
        if (failed) break;
      }
    }
    into.size = drop;
  };
}

/** A hit at a level (by its place among the planned ones), of a specimen numbered from 0. */
export interface FixedHit {
  readonly level: number;
  readonly specimen: number;
}

/** Hits at fixed levels: outcomes have no say in what follows. */
export function fixedWalk(hits: readonly FixedHit[]): Experiment['walk'] {
  return (fails, into) => {
    hits.forEach(({ level, specimen }, i) => {
      into.level[i] = level;
      into.failed[i] = fails(level, specimen) ? 1 : 0;
      into.specimen[i] = specimen;
    });
    into.size = hits.length;
  };
}

/** One series of a method that chooses its levels itself. */
export interface ChosenSeries {
  readonly rule: MethodRule<MethodState>;
  /** Levels (mm, or kg) that stand for all that it may choose, rising and evenly spaced: each is taken to the nearest. */
  readonly levels: readonly number[];
  /** Drops after which a test is cut where its stop rule has not come. */
  readonly mostDrops: number;
}

/** Asks the rule itself drop by drop; a site of the last specimen is used where the rule leaves it open. */
export function chosenWalk({ rule, levels, mostDrops }: ChosenSeries): Experiment['walk'] {
  const lowest = levels[0]!;
  const spacing = (levels.at(-1)! - lowest) / (levels.length - 1);
  return (fails, into) => {
    let state = rule.start;
    let specimen = -1;
    let hit = 0;
    let drop = 0;
    for (; drop < mostDrops; drop++) {
      const advice = rule.advice(state);
      if (advice.decision === 'stop') break;
      const isNew = advice.specimen === 'new' || specimen < 0;
      if (isNew) specimen += 1;
      hit = isNew ? 1 : hit + 1;
      const place = Math.round((advice.height - lowest) / spacing);
      const level = Math.min(Math.max(place, 0), levels.length - 1);
      const failed = fails(level, specimen);
      into.level[drop] = level;
      into.failed[drop] = failed ? 1 : 0;
      into.specimen[drop] = specimen;
      const outcome = failed ? 'failed' : 'survived';
      state = rule.step(state, { height: levels[level]!, outcome, specimen: '', hit });
    }
    into.size = drop;
  };
}

/** Where the number of drops is chance, tests longer than twice the one made (and 20 more) are cut. */
export function dropsAtMost({ drops, rarer, atMost }: Stop, made: number): number {
  if (atMost !== undefined) return Math.max(atMost, made);
  return drops !== undefined && rarer === undefined ? Math.max(drops, made) : 2 * made + 20;
}
