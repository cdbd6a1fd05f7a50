import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { Step } from '../../documents/kinds.ts';
import type { Levels, Varied } from '../rules/levels.ts';
import type { Advice, MethodRule, Trial } from '../rules/rule.ts';
import type { SeriesState } from '../rules/series-state.ts';
import { NO_PROGRESS, type Progress } from '../rules/stop.ts';
import type { MoveTally } from './moves.ts';
import type { Visit } from './replayed.ts';

/** What every path of a replay is given. */
export interface PathBasis {
  /** Number of the series, from 0. */
  readonly series: number;
  /** mm, or kg where the mass is varied. */
  readonly tolerance: number;
  readonly varied: Varied;
}

/** What the path of a method that moves by one level is given besides. */
export interface PathSettings extends PathBasis {
  readonly rule: MethodRule<SeriesState>;
  /** Whether the rule waits at a level for several survivals. */
  readonly waits: boolean;
  /** Levels from another start, or with another step, within the same limits. */
  relevel(start: number, step: Step): Levels;
}

/** One series as the rule goes through it, drop by drop. */
export interface SeriesPath {
  /** @param following the later drops of the series that steer, this one first; at most a few. */
  take(visit: Visit, following: () => readonly Visit[], list: DeviationList): void;
  progress(): Progress;
  /** The levels that it moves on; null where each is chosen by itself. */
  levels(): Levels | null;
  advice(): Advice;
  /** The first drop that was made after the stop, and how many there were. */
  beyondStop(): { readonly first: Visit; readonly count: number } | null;
  /** Why the path is not the one that count formulas suppose; null where it is. */
  broken(): string | null;
  /** The moves of the series, and those of them that its rule did not ask for. */
  readonly moves: MoveTally;
  /** What the series lacks where its own levels, not a stop rule, say how many drops it has; null elsewhere. */
  lacking(): string | null;
}

/** The height that the rule asks for after a state, were there no stop. */
export function heightAfter(
  rule: MethodRule<SeriesState>,
  levels: Levels,
  last: SeriesState['last'],
): number {
  const advice = rule.advice({ levels, last, progress: NO_PROGRESS });
  return advice.decision === 'height' ? advice.height : levels.at(levels.within(0));
}

export function trialOf({ drop, setting, acted }: Visit, hit: number): Trial {
  return { height: setting, outcome: acted as Trial['outcome'], specimen: drop.specimen, hit };
}
