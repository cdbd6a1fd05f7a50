import { count } from '../impact/estimates/walks.ts';
import { isStepping, plannedLevels, specimensOf } from '../impact/rules/method-rules.ts';
import { NO_PROGRESS, stopReached } from '../impact/rules/stop.ts';
import { type Carrying, carryOut, MOST_DROPS } from './carry-out.ts';
import { bySites } from './carry-sites.ts';
import { type Design, ruleOf } from './design.ts';

/**
 * How the tests of a design are carried out: by the protocol's own rule, or, for methods that move from level to level,
 * by the same moves in numbers alone, which takes half the time; a test holds the one to the other.
 */
export function carrying(design: Design): Carrying {
  if (design.protocol.sites.each === 'series-per-site') return bySites(design);
  if (isStepping(design.protocol.method)) return bySteps(design);
  const rule = ruleOf(design);
  return (...test) => carryOut(rule, ...test);
}

function bySteps({ protocol, rig }: Design): Carrying {
  const { lowest, highest, at } = plannedLevels(protocol, rig);
  const { stop } = protocol;
  const isRise = protocol.method === 'rising-height';
  const { perSpecimen, goesOnAfterFailure } = specimensOf(protocol);
  const raiseAfter = protocol.survivalsToRaise ?? 1;
  const first = Math.min(highest, Math.max(lowest, 0));
  // Numbers of the levels in the table, by index from the start; no test goes further than it has drops.
  const numbers = new Int32Array(2 * MOST_DROPS + 1).fill(-1);
  return (tyres, drawsEffects, levels, stream, into) => {
    const progress = { ...NO_PROGRESS };
    let index = first;
    let survivals = 0;
    let specimen = -1;
    let hit = 0;
    let effect = 0;
    let before = -1;
    let isOver = true;
    for (let drop = 0; ; drop++) {
      if (stopReached(stop, progress) !== null) {
        into.size = drop;
        into.specimens = specimen + 1;
        return true;
      }
      if (drop === MOST_DROPS) return false;
      if (isOver) {
        specimen += 1;
        hit = 0;
        if (drawsEffects) effect = stream.normal();
      }
      let level = numbers[MOST_DROPS + index]!;
      if (level < 0) {
        level = levels.place(at(index));
        numbers[MOST_DROPS + index] = level;
      }
      const failed = stream.uniform() < tyres.chance(levels.energy[level]!, effect, hit) ? 1 : 0;
      hit += 1;
      into.level[drop] = level;
      into.failed[drop] = failed;
      into.specimen[drop] = specimen;
      isOver = isRise
        ? failed === 1 || index >= highest
        : hit >= perSpecimen || (failed === 1 && !goesOnAfterFailure);
      count(progress, failed, before, hit, isOver);
      before = failed;
      if (isRise) {
        index = isOver ? first : index + 1;
        continue;
      }
      survivals = failed ? 0 : survivals + 1;
      const move = failed ? -1 : survivals % raiseAfter === 0 ? 1 : 0;
      const next = Math.min(highest, Math.max(lowest, index + move));
      if (next !== index) survivals = 0;
      index = next;
    }
  };
}
