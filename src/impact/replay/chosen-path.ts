import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { ImpactProtocol } from '../../documents/kinds.ts';
import { counted } from '../../quantity/format.ts';
import { type FixedLevelState, nearestOf } from '../rules/fixed-level.ts';
import { sayer } from '../rules/levels.ts';
import type { MethodRule } from '../rules/rule.ts';
import type { MethodState } from '../rules/series-state.ts';
import { NO_PROGRESS } from '../rules/stop.ts';
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
import { type PathBasis, type SeriesPath, trialOf } from './path.ts';
import { raiseAt, type Visit } from './replayed.ts';
import { nextTrial } from './tyre.ts';

/** What a drop was compared with. */
interface Plan {
  readonly asked: Asked | null;
  /** Whether any of several levels was as right, so that a move has no direction. */
  readonly anyOrder: boolean;
}

/**
 * Follows one series of a method that chooses each level: of fixed levels any that the protocol names, in any order; else
 * the one level that the rule asks for after the drops as they were.
 */
export function chosenPath(
  { series, tolerance, varied }: PathBasis,
  protocol: ImpactProtocol,
  rule: MethodRule<MethodState>,
): SeriesPath {
  const say = sayer(varied);
  const fixed = protocol.method === 'fixed-level' ? (protocol.levels ?? []) : null;
  let state = rule.start;
  let before: Visit | null = null;
  let beyond: { first: Visit; count: number } | null = null;
  let brokenBy: string | null = null;
  const moves = new MoveTally();

  return {
    moves,
    progress: () => state.progress,
    levels: () => null,
    advice: () => rule.advice(state),
    beyondStop: () => beyond,
    broken: () => brokenBy,
    lacking: () => (fixed === null || protocol.perLevel === null ? null : lacking(fixed, protocol.perLevel)),
    take(visit, _following, list) {
      const { asked, anyOrder } = planFor(visit);
      visit.ruleHeight = asked?.height ?? null;
      if (!visit.steers) return;
      const isFull = fixed !== null && protocol.perLevel !== null && isFilled(visit, protocol.perLevel);
      if (isFull || rule.advice(state).decision === 'stop') {
        beyond ??= { first: visit, count: 0 };
        beyond.count += 1;
      }
      if (asked !== null) check(visit, asked, anyOrder, list);
      state = rule.step(state, trialOf(visit, nextTrial(visit.tyre, series)));
      if (fixed !== null) visit.level = nearestOf(fixed, visit.setting);
      before = visit;
    },
  };

  function planFor({ setting }: Visit): Plan {
    if (fixed !== null) {
      const at = nearestOf(fixed, setting);
      const level = fixed[at]!;
      const others = fixed.filter((_, index) => index !== at).map((other) => Math.abs(other - level));
      return {
        asked: { height: level, also: [], step: Math.min(...others, level), tolerance },
        anyOrder: true,
      };
    }
    const advice = rule.advice({ ...state, progress: NO_PROGRESS });
    if (advice.decision === 'stop') return { asked: null, anyOrder: false };
    const step = before === null ? advice.height : Math.abs(advice.height - before.setting);
    return { asked: { height: advice.height, also: [], step, tolerance }, anyOrder: false };
  }

  function check(visit: Visit, asked: Asked, anyOrder: boolean, list: DeviationList): void {
    if (isAsAsked(visit, asked)) {
      moves.count(visit, null);
      checkOwnPlan(visit, tolerance, list);
      return;
    }
    brokenBy ??= `the ${varied} of line ${visit.drop.line} was not the planned one`;
    const isSlip = isSettingError(visit, asked);
    if (anyOrder || isSlip) {
      moves.count(visit, isSlip ? null : varied === 'height' ? 'DROP-01' : 'DROP-11');
      raiseSettingError(visit, asked, varied, list);
    } else if (before === null) {
      const found = () => `the series starts at ${say(visit.setting)}, planned ${say(asked.height)}`;
      raiseAt(list, visit, 'DROP-06', found, { scope: 'run' });
    } else {
      const from = before;
      const move = visit.setting - from.setting;
      const isWrongWay =
        isNear(visit.setting, from.setting, tolerance) ||
        Math.sign(move) !== Math.sign(asked.height - from.setting);
      const code = isWrongWay ? 'DROP-04' : 'DROP-05';
      moves.count(visit, code);
      raiseAt(list, visit, code, () => `${moved(visit, from, varied)}, planned ${say(asked.height)}`);
    }
  }

  function isFilled({ setting }: Visit, perLevel: number): boolean {
    return made()[nearestOf(fixed!, setting)]! >= perLevel;
  }

  function lacking(levels: readonly number[], perLevel: number): string {
    const short = levels.flatMap((level, index) => {
      const count = made()[index]!;
      return count < perLevel ? [`${count} of ${counted(perLevel, 'drop')} at ${say(level)}`] : [];
    });
    const shown = short.slice(0, 4).join(', ');
    return short.length > 4 ? `${shown} and too few at ${short.length - 4} more levels` : shown;
  }

  function made(): readonly number[] {
    return (state as FixedLevelState).made;
  }
}
