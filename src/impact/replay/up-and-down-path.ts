import type { DeviationList } from '../../conformance/deviation-list.ts';
import { sayer } from '../rules/levels.ts';
import { stepAt } from '../rules/method-rules.ts';
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
import { changedStep } from './step-change.ts';
import { nextTrial } from './tyre.ts';

/**
 * Follows one up-and-down series: each height against the one that the rule asks for after the drops as they were.
 * The levels are anchored at the start; a first drop off it, or a new step, anchors them anew, so that one departure
 * is told once.
 */
export function upAndDownPath(settings: PathSettings): SeriesPath {
  const { rule, tolerance, varied, waits } = settings;
  const say = sayer(varied);
  let state: SeriesState = rule.start;
  let before: { readonly visit: Visit; readonly asked: number } | null = null;
  let beyond: { first: Visit; count: number } | null = null;
  let brokenBy: string | null = null;
  const moves = new MoveTally();

  return {
    moves,
    progress: () => state.progress,
    levels: () => state.levels,
    lacking: () => null,
    advice: () => rule.advice(state),
    beyondStop: () => beyond,
    broken: () => brokenBy,
    take(visit, following, list) {
      const asked = askedFor();
      visit.ruleHeight = asked.height;
      if (visit.use !== 'used') brokenBy ??= `the drop of line ${visit.drop.line} is out (${visit.because})`;
      if (!visit.steers) return;
      if (rule.advice(state).decision === 'stop') {
        beyond ??= { first: visit, count: 0 };
        beyond.count += 1;
      }
      checkHeight(visit, asked, following, list);
      if (visit.acted !== visit.drop.outcome)
        brokenBy ??= `the outcome of line ${visit.drop.line} was amended`;
      state = rule.step(state, trialOf(visit, nextTrial(visit.tyre, settings.series)));
      visit.level = state.last!.index;
      before = { visit, asked: asked.height };
    },
  };

  function askedFor(): Asked {
    const { levels, last } = state;
    const asked = heightAfter(rule, levels, last);
    const from = last === null ? asked : levels.at(last.index);
    const step = asked === from ? stepAt(asked, levels.step) : Math.abs(asked - from);
    const also: number[] = [];
    if (last !== null && before !== null) {
      const { plannedSetting } = before.visit;
      // Whoever sets a height wrongly may go on from the one that was meant.
      if (plannedSetting !== null) {
        also.push(heightAfter(rule, levels, { ...last, index: levels.nearest(plannedSetting) }));
      }
      if (before.visit.use === 'left-out') also.push(before.asked);
    }
    return { height: asked, also, step, tolerance };
  }

  function checkHeight(
    visit: Visit,
    asked: Asked,
    following: () => readonly Visit[],
    list: DeviationList,
  ): void {
    if (isAsAsked(visit, asked)) {
      if (before !== null) moves.count(visit, null);
      const isOff = checkOwnPlan(visit, tolerance, list);
      if (isOff) brokenBy ??= `the height of line ${visit.drop.line} was not the planned one (DROP-01)`;
      const stays = !waits && state.last !== null && asked.height === state.levels.at(state.last.index);
      if (stays)
        brokenBy ??= `the series stayed at a limit of the ${varied === 'height' ? 'rig' : 'masses'} on line ${visit.drop.line}`;
      return;
    }
    const code =
      before === null
        ? checkStart(visit, asked, list)
        : checkMove(visit, before.visit, asked, following, list);
    if (code !== null)
      brokenBy ??= `the ${varied} of line ${visit.drop.line} was not the planned one (${code}; amend it if it was written wrongly)`;
  }

  function checkStart(visit: Visit, asked: Asked, list: DeviationList): string | null {
    if (isSettingError(visit, asked)) {
      raiseSettingError(visit, asked, varied, list);
      return varied === 'height' ? 'DROP-01' : 'DROP-11';
    }
    const found = () => `the series starts at ${say(visit.setting)}, planned ${say(asked.height)}`;
    raiseAt(list, visit, 'DROP-06', found, { scope: 'run' });
    checkOwnPlan(visit, tolerance, list);
    const { levels } = state;
    const onLevel = levels.at(levels.nearest(visit.setting));
    if (!isNear(onLevel, visit.setting, tolerance)) {
      state = { ...state, levels: settings.relevel(visit.setting, levels.step) };
    }
    // Another start is a whole series shifted: its levels are as evenly spaced.
    return null;
  }

  function checkMove(
    visit: Visit,
    last: Visit,
    asked: Asked,
    following: () => readonly Visit[],
    list: DeviationList,
  ): string {
    // A rule that waits moves by outcomes of several drops, which a look at three moves cannot tell.
    const step = waits ? null : changedStep(last, following(), state.levels.step, tolerance);
    if (step !== null) {
      const size = step.kind === 'additive' ? say(step.size) : `${Number((step.ratio * 100).toFixed(1))} %`;
      raiseAt(
        list,
        visit,
        'DROP-05',
        () => `from here on the step is ${size}: ${moved(visit, last, varied)}, planned ${say(asked.height)}`,
      );
      state = { ...state, levels: settings.relevel(last.setting, step) };
      moves.count(visit, null);
      checkOwnPlan(visit, tolerance, list);
      return 'DROP-05';
    }
    if (isSettingError(visit, asked)) {
      raiseSettingError(visit, asked, varied, list);
      moves.count(visit, null);
      return varied === 'height' ? 'DROP-01' : 'DROP-11';
    }
    const move = visit.setting - last.setting;
    const from = state.levels.at(state.last!.index);
    const outward = last.acted === 'survived' ? 1 : -1;
    const wanted = waits && asked.height === from ? 0 : outward;
    const code = Math.abs(move) <= tolerance || Math.sign(move) !== wanted ? 'DROP-04' : 'DROP-05';
    moves.count(visit, code, Math.sign(move) === -outward && Math.abs(move) > tolerance);
    raiseAt(list, visit, code, () => `${moved(visit, last, varied)}, planned ${say(asked.height)}`);
    checkOwnPlan(visit, tolerance, list);
    return code;
  }
}
