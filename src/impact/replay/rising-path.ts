import type { DeviationList } from '../../conformance/deviation-list.ts';
import { quote } from '../../problem/echo.ts';
import { height } from '../../quantity/format.ts';
import type { Levels } from '../rules/levels.ts';
import { stepAt } from '../rules/method-rules.ts';
import { hasEnded } from '../rules/rising-height.ts';
import type { Advice } from '../rules/rule.ts';
import type { SeriesState } from '../rules/series-state.ts';
import {
  type Asked,
  checkOwnPlan,
  isAsAsked,
  isNear,
  isSettingError,
  moved,
  raiseSettingError,
} from './height-check.ts';
import { MoveTally } from './moves.ts';
import { heightAfter, type PathSettings, type SeriesPath, trialOf } from './path.ts';
import { raiseAt, type Visit } from './replayed.ts';
import { nextTrial } from './tyre.ts';

/** One specimen, or one site of it, on its way up. */
interface Rise {
  readonly specimen: string;
  readonly number: number;
  levels: Levels;
  last: SeriesState['last'];
  before: { readonly visit: Visit; readonly asked: number } | null;
  /** An invalid hit destroyed the specimen. */
  isLost: boolean;
}

export interface RisingSettings extends PathSettings {
  /** Names the rise that a drop belongs to: its specimen, and its site where each site is a series of its own. */
  riseOf(visit: Visit): unknown;
  /** Whether a specimen that failed rises again, at another site. */
  readonly goesOnAfterFailure: boolean;
  /** Whether only a new specimen, not another drop, can be one too many. */
  readonly stopsBySpecimens: boolean;
  /** The next number of a rise, over all series. */
  nextNumber(): number;
}

export interface RisingSeriesPath extends SeriesPath {
  /** Specimens begun, and those of them whose first hit failed. */
  firstHits(): { readonly specimens: number; readonly failed: number };
  /** Specimens whose rise ended below the top without a failure. */
  unfinished(): readonly string[];
}

/** Follows the rises of one series, in whatever order their drops come. */
export function risingPath(settings: RisingSettings): RisingSeriesPath {
  const { rule, tolerance } = settings;
  const rises = new Map<unknown, Rise>();
  let state: SeriesState = rule.start;
  let current: Rise | null = null;
  let beyond: { first: Visit; count: number } | null = null;
  let started = 0;
  let failedFirst = 0;
  const moves = new MoveTally();

  return {
    moves,
    progress: () => state.progress,
    levels: () => state.levels,
    lacking: () => null,
    advice: adviceNow,
    beyondStop: () => beyond,
    broken: () => null,
    firstHits: () => ({ specimens: started, failed: failedFirst }),
    unfinished: () =>
      [...rises.values()]
        .filter(({ last, levels, isLost }) => last !== null && !isLost && !hasEnded(last, levels))
        .map(({ specimen }) => specimen),
    take(visit, _following, list) {
      const rise = riseFor(visit);
      const asked = askedFor(rise);
      visit.path = rise.number;
      visit.ruleHeight = asked.height;
      if (visit.use === 'ignored') return;
      current = rise;
      if (!visit.steers) {
        if (visit.drop.outcome === 'failed') lose(rise);
        return;
      }
      const hit = nextTrial(visit.tyre, settings.series);
      countBeyond(visit, hit);
      if (rise.before === null) checkFirst(visit, rise, asked, list);
      else checkNext(visit, rise.before.visit, asked, list);
      const wasAtTop = rise.last !== null && hasEnded(rise.last, rise.levels);
      state = rule.step({ ...state, levels: rise.levels, last: rise.last }, trialOf(visit, hit));
      rise.last = state.last;
      rise.isLost = false;
      rise.before = { visit, asked: asked.height };
      visit.level = state.last!.index;
      if (!wasAtTop) checkTop(visit, rise, list);
    },
  };

  function adviceNow(): Advice {
    const isMoved =
      state.levels !== rule.start.levels && current?.last != null && hasEnded(current.last, state.levels);
    // A specimen that an invalid hit destroyed is over, and one rise's own levels are not the next one's.
    return rule.advice(
      current?.isLost || isMoved ? { ...state, levels: rule.start.levels, last: null } : state,
    );
  }

  function riseFor(visit: Visit): Rise {
    const key = settings.riseOf(visit);
    const known = rises.get(key);
    const goesOn =
      known?.last?.outcome === 'failed' && settings.goesOnAfterFailure && visit.use !== 'ignored';
    if (known !== undefined && !goesOn) return known;
    const rise: Rise = {
      specimen: visit.drop.specimen,
      number: settings.nextNumber(),
      levels: rule.start.levels,
      last: null,
      before: null,
      isLost: false,
    };
    rises.set(key, rise);
    return rise;
  }

  function askedFor({ levels, last, before }: Rise): Asked {
    // A specimen that survived the top can only be hit there again.
    const next = (placed: SeriesState['last']) =>
      placed !== null && hasEnded(placed, levels)
        ? levels.at(placed.index)
        : heightAfter(rule, levels, placed);
    const asked = next(last);
    const also: number[] = [];
    if (last !== null && before !== null) {
      const { plannedHeight } = before.visit.drop;
      if (plannedHeight !== null) also.push(next({ ...last, index: levels.nearest(plannedHeight) }));
      if (before.visit.use === 'left-out') also.push(before.asked);
    }
    const below = last === null ? asked : levels.at(last.index);
    return {
      height: asked,
      also,
      step: asked > below ? asked - below : stepAt(asked, levels.step),
      tolerance,
    };
  }

  function countBeyond(visit: Visit, hit: number): void {
    if (rule.advice(state).decision !== 'stop' || (settings.stopsBySpecimens && hit > 1)) return;
    beyond ??= { first: visit, count: 0 };
    beyond.count += 1;
  }

  function lose(rise: Rise): void {
    if (!rise.isLost && rise.last !== null && !hasEnded(rise.last, rise.levels)) {
      state = { ...state, progress: { ...state.progress, open: Math.max(0, state.progress.open - 1) } };
    }
    rise.isLost = true;
  }

  function checkFirst(visit: Visit, rise: Rise, asked: Asked, list: DeviationList): void {
    started += 1;
    if (isAsAsked(visit, asked)) checkOwnPlan(visit, tolerance, list);
    else if (isSettingError(visit, asked)) raiseSettingError(visit, asked, 'height', list);
    else {
      const { drop } = visit;
      const found = () =>
        `${quote(drop.specimen)} starts at ${height(drop.height)}, planned ${height(asked.height)}`;
      raiseAt(list, visit, 'DROP-06', found);
      const onLevel = rise.levels.at(rise.levels.nearest(drop.height));
      if (!isNear(onLevel, drop.height, tolerance)) {
        rise.levels = settings.relevel(drop.height, rise.levels.step);
      }
      checkOwnPlan(visit, tolerance, list);
    }
    if (visit.drop.outcome !== 'failed' || visit.use !== 'used') return;
    failedFirst += 1;
    raiseAt(
      list,
      visit,
      'DROP-07',
      () => `${quote(visit.drop.specimen)} failed at its first hit, ${height(visit.drop.height)}`,
    );
  }

  function checkNext(visit: Visit, last: Visit, asked: Asked, list: DeviationList): void {
    if (isAsAsked(visit, asked)) {
      moves.count(visit, null);
      checkOwnPlan(visit, tolerance, list);
    } else if (isSettingError(visit, asked)) {
      moves.count(visit, null);
      raiseSettingError(visit, asked, 'height', list);
    } else {
      const code = visit.drop.height < last.drop.height - tolerance ? 'DROP-03' : 'DROP-02';
      moves.count(visit, code);
      raiseAt(list, visit, code, () => `${moved(visit, last)}, planned ${height(asked.height)}`);
      checkOwnPlan(visit, tolerance, list);
    }
  }

  function checkTop(visit: Visit, rise: Rise, list: DeviationList): void {
    if (visit.drop.outcome !== 'survived' || !hasEnded(rise.last!, rise.levels)) return;
    const { drop } = visit;
    raiseAt(
      list,
      visit,
      'DROP-08',
      () => `${quote(drop.specimen)} survived the highest level, ${height(drop.height)}`,
    );
  }
}
