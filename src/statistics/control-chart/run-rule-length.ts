import { normal } from '../laws/normal.ts';
import { solveLinear } from '../special/linear-system.ts';
import type { RunRule } from './run-rules.ts';

type OneSideRule = RunRule & { kind: 'one-side' };

/**
 * Average run length of a chart of single points under rules of one side together (3 sigma, 2 of 3, 4 of 5, 8 in a row), exactly:
 * a Markov chain whose states are what the rules remember of the last points (Champ & Woodall 1987, Technometrics 29, 393–399).
 *
 * @param shift of the mean, in sigma
 */
export function runRulesLength(rules: readonly OneSideRule[], shift: number): number {
  const edges = [...new Set(rules.flatMap((rule) => [rule.beyond, -rule.beyond]))].sort((a, b) => a - b);
  const zones = [-Infinity, ...edges].map((low, i) => {
    const high = edges[i] ?? Infinity;
    const middle = low === -Infinity ? high - 1 : high === Infinity ? low + 1 : 0.5 * (low + high);
    return { middle, probability: normal.cdf(high - shift) - normal.cdf(low - shift) };
  });
  const states: Memory[] = [rules.map(() => [])];
  const known = new Map([[keyOf(states[0]!), 0]]);
  const moves: { from: number; to: number; probability: number }[] = [];
  for (let from = 0; from < states.length; from++) {
    for (const { middle, probability } of zones) {
      const next = advance(rules, states[from]!, middle);
      if (next === null) continue;
      const key = keyOf(next);
      let to = known.get(key);
      if (to === undefined) {
        to = states.push(next) - 1;
        known.set(key, to);
      }
      moves.push({ from, to, probability });
    }
  }
  const size = states.length;
  const matrix = new Float64Array(size * size);
  for (let i = 0; i < size; i++) matrix[i * size + i] = 1;
  for (const { from, to, probability } of moves) matrix[from * size + to]! -= probability;
  return solveLinear(matrix, new Float64Array(size).fill(1))[0]!;
}

/** For each rule the sides (+1, −1, 0 for neither) of the last points that may still count. */
type Memory = readonly (readonly number[])[];

function keyOf(memory: Memory): string {
  return memory.map((sides) => sides.join(',')).join(';');
}

/** What is remembered after a point, or null where a rule signals. */
function advance(rules: readonly OneSideRule[], memory: Memory, z: number): Memory | null {
  const next: number[][] = [];
  for (const [i, { count, of, beyond }] of rules.entries()) {
    const sides = [...memory[i]!, z > beyond ? 1 : z < -beyond ? -1 : 0].slice(-of);
    const tally = (side: number) => sides.filter((one) => one === side).length;
    if (tally(1) >= count || tally(-1) >= count) return null;
    next.push(of === 1 ? [] : prune(sides.slice(1 - of), count, of));
  }
  return next;
}

/** Drops from the front what cannot be part of a signal any more: too few places are left to fill the window. */
function prune(sides: readonly number[], count: number, of: number): number[] {
  const useful = (side: number, at: number) => {
    const later = sides.slice(at).filter((one) => one === side).length;
    // Counted from this point the window still has so many places.
    return side !== 0 && later + (of - (sides.length - at)) >= count;
  };
  const first = sides.findIndex((side, at) => useful(side, at));
  if (first === -1) return [];
  return sides.slice(first).map((side, i) => (useful(side, first + i) ? side : 0));
}
