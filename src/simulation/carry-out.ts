import type { MethodRule } from '../impact/rules/rule.ts';
import type { RandomStream } from '../statistics/random/random-stream.ts';
import type { LevelTable } from './level-table.ts';
import type { Tyres } from './strength.ts';

/** The drops of one simulated test in order; the arrays are refilled by each test. */
export interface Trials {
  size: number;
  specimens: number;
  /** Number of the drop's level in the level table. */
  readonly level: Int32Array;
  readonly failed: Uint8Array;
  /** Numbered from 0 in order of first use. */
  readonly specimen: Int32Array;
}

/** Drops after which a test that has not stopped is taken for one that cannot stop. */
export const MOST_DROPS = 10_000;

export function emptyTrials(): Trials {
  return {
    size: 0,
    specimens: 0,
    level: new Int32Array(MOST_DROPS),
    failed: new Uint8Array(MOST_DROPS),
    specimen: new Int32Array(MOST_DROPS),
  };
}

/** Names of specimens, so that no test makes its own. */
const NAMES: string[] = [];

/**
 * Carries out one test: the protocol's own rule, asked drop by drop, on tyres whose strength is known. Where the rule
 * leaves it open whether the next drop takes a new specimen or a free site of the last one, the site is used.
 *
 * @param drawsEffects whether each specimen has an effect of its own
 * @returns false where the rule had not stopped after `MOST_DROPS` drops
 */
export function carryOut<State>(
  rule: MethodRule<State>,
  tyres: Tyres,
  drawsEffects: boolean,
  levels: LevelTable,
  stream: RandomStream,
  into: Trials,
): boolean {
  let state = rule.start;
  let specimen = -1;
  let hit = 0;
  let effect = 0;
  for (let drop = 0; ; drop++) {
    const advice = rule.advice(state);
    if (advice.decision === 'stop') {
      into.size = drop;
      into.specimens = specimen + 1;
      return true;
    }
    if (drop === MOST_DROPS) return false;
    if (advice.specimen === 'new' || specimen < 0) {
      specimen += 1;
      hit = 0;
      if (drawsEffects) effect = stream.normal();
    }
    hit += 1;
    const level = levels.place(advice.height);
    const failed = stream.uniform() < tyres.chance(levels.energy[level]!, effect, hit - 1);
    into.level[drop] = level;
    into.failed[drop] = failed ? 1 : 0;
    into.specimen[drop] = specimen;
    NAMES[specimen] ??= `${specimen + 1}`;
    state = rule.step(state, {
      height: advice.height,
      outcome: failed ? 'failed' : 'survived',
      specimen: NAMES[specimen]!,
      hit,
    });
  }
}

/** Carries out one test of a design; false where it had not stopped after `MOST_DROPS` drops. */
export type Carrying = (
  tyres: Tyres,
  drawsEffects: boolean,
  levels: LevelTable,
  stream: RandomStream,
  into: Trials,
) => boolean;
