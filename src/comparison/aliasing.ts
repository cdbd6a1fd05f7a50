import type { Aliasing } from '../result/comparison.ts';
import { membersOf, type Side } from './side.ts';

/** What may go together with the construction though nobody meant it to. */
const LOOKED_AT = ['day', 'rig', 'operator', 'batch'] as const;

/** Day, rig, operator, batch and order of the tests: whether each can be told from the construction. */
export function aliasingOf(sides: readonly Side[]): Aliasing[] {
  return [...LOOKED_AT.map((factor) => setsOf(factor, sides)), orderOf(sides)];
}

function setsOf(factor: string, sides: readonly Side[]): Aliasing {
  const members = sides.map((side) => membersOf(side, factor));
  if (members.some((own) => own === null)) {
    return { factor, state: 'unknown', why: 'not recorded for all' };
  }
  const sets = members.map((own) => new Set(own));
  const all = new Set(sets.flatMap((set) => [...set]));
  if (all.size === 1) return { factor, state: 'constant', why: `the same for all: ${[...all][0]}` };
  if (sets.every((set) => set.size === all.size)) {
    return { factor, state: 'crossed', why: `every construction met all ${all.size}` };
  }
  const isDisjoint = sets.every((set, i) =>
    sets.every((other, k) => k <= i || ![...set].some((one) => other.has(one))),
  );
  return isDisjoint
    ? {
        factor,
        state: 'aliased',
        why: 'no value is shared: nothing in the data can tell it from the construction',
      }
    : { factor, state: 'partly', why: 'some values are shared, some belong to one construction alone' };
}

/**
 * The order in which the drops were made, by their times: all of one construction before all of another goes together
 * with whatever drifts; constructions in turn, or drawn by lot, do not.
 */
function orderOf(sides: readonly Side[]): Aliasing {
  const factor = 'order';
  const drops = sides.flatMap(({ tyres }, side) =>
    tyres.drops.map(({ time, file, line }) => ({ side, time, file, line })),
  );
  if (drops.length === 0 || drops.some(({ time }) => time === null)) {
    return { factor, state: 'unknown', why: 'not every drop has a time' };
  }
  const inTime = drops.map((drop) => ({ ...drop, at: Date.parse(drop.time!) }));
  if (inTime.some(({ at }) => Number.isNaN(at))) {
    return { factor, state: 'unknown', why: 'not every time can be placed' };
  }
  inTime.sort((a, b) => a.at - b.at || a.line - b.line);
  const changes = inTime.filter(({ side }, i) => i > 0 && side !== inTime[i - 1]!.side).length;
  if (changes === sides.length - 1) {
    return {
      factor,
      state: 'aliased',
      why: 'one construction after the other: a drift would look like a difference',
    };
  }
  // By lot two of like size change about every other drop; a tenth of that is few.
  return changes >= 0.2 * (drops.length - 1)
    ? {
        factor,
        state: 'crossed',
        why: `the constructions took turns: ${changes} changes in ${drops.length} drops`,
      }
    : { factor, state: 'partly', why: `few turns: ${changes} changes in ${drops.length} drops` };
}
