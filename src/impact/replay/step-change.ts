import type { Step } from '../../documents/kinds.ts';
import { isNear } from './height-check.ts';
import type { Visit } from './replayed.ts';

/** So many moves of one other size are a new step, fewer are slips. Common practice, no source. */
const MOVES = 3;

/**
 * Whether an up-and-down series goes on with another step from a drop on: three moves in a row, each in the direction
 * that the outcome before asks for, all of one size that is not the planned one.
 *
 * @param before the drop before the first such move.
 * @param following the drops of the series from that move on, in order.
 * @returns the new step, or null.
 */
export function changedStep(
  before: Visit,
  following: readonly Visit[],
  planned: Step,
  tolerance: number,
): Step | null {
  if (following.length < MOVES) return null;
  const sizes: number[] = [];
  let last = before;
  for (const visit of following.slice(0, MOVES)) {
    const up = visit.setting > last.setting;
    if (up !== (last.acted === 'survived')) return null;
    const heights = [last.setting, visit.setting] as const;
    const [low, high] = up ? heights : [heights[1], heights[0]];
    sizes.push(planned.kind === 'additive' ? high - low : high / low - 1);
    last = visit;
  }
  const size = sizes.reduce((sum, value) => sum + value, 0) / MOVES;
  // A share of the height is compared as the millimetres it makes there.
  const inMillimetres = planned.kind === 'additive' ? 1 : before.setting;
  const allowed = tolerance / inMillimetres;
  if (!sizes.every((value) => isNear(value, size, allowed))) return null;
  const plannedSize = planned.kind === 'additive' ? planned.size : planned.ratio;
  if (isNear(size, plannedSize, allowed)) return null;
  return planned.kind === 'additive' ? { kind: 'additive', size } : { kind: 'ratio', ratio: size };
}
