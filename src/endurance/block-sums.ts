import type { ChannelState, ConditionJudge } from './condition-judge.ts';
import { addSums, type ChannelSums, emptySums, type Frame } from './frame.ts';

/** One channel over a block. */
export interface ChannelTotals {
  /** Milliseconds of turning within and outside the limits, and without a value. */
  within: number;
  outside: number;
  missing: number;
  /** Steps outside. */
  outsideDistance: number;
  /** All rows, standing or turning. */
  readonly sums: ChannelSums;
}

/** One block of the schedule, as far as it was run; distances in steps, times in milliseconds. */
export interface BlockSums {
  rows: number;
  time: number;
  turning: number;
  atCondition: number;
  /** Outside the limits, or counted while the drum stood. */
  excluded: number;
  standing: number;
  unverified: number;
  /** What of `unverified` lies in gaps, where no speed was logged either. */
  gaps: number;
  integral: number;
  readonly channels: readonly ChannelTotals[];
}

export function emptyBlock(channels: number): BlockSums {
  return {
    rows: 0,
    time: 0,
    turning: 0,
    atCondition: 0,
    excluded: 0,
    standing: 0,
    unverified: 0,
    gaps: 0,
    integral: 0,
    channels: Array.from({ length: channels }, () => ({
      within: 0,
      outside: 0,
      missing: 0,
      outsideDistance: 0,
      sums: emptySums(),
    })),
  };
}

/**
 * Adds a frame to the block it was run in. A channel that is logged less often than the speed leaves cells empty:
 * those of a minute in which every value lies within the limits pass for within; without any value, or with one
 * outside, nobody knows, and the distance is unverified.
 */
export function settle(block: BlockSums, frame: Frame, judge: ConditionJudge): void {
  block.rows += frame.rows;
  block.time += frame.time;
  block.integral += frame.integral;
  block.standing += frame.standing;
  block.excluded += frame.standing;
  block.unverified += frame.unverified;
  block.gaps += frame.unverified;
  const covered = coveredChannels(frame, judge);
  for (const { condition, time, distance } of frame.conditions) {
    const { isTurning, channels } = judge.judge(condition);
    if (isTurning) block.turning += time;
    const states = channels.map(
      (state, c): ChannelState => (state === 'missing' && covered[c] ? 'in' : state),
    );
    if (states.some((state) => state === 'below' || state === 'above')) block.excluded += distance;
    else if (states.includes('missing')) block.unverified += distance;
    else block.atCondition += distance;
    for (const [c, state] of channels.entries()) {
      if (state === 'free' || !isTurning) continue;
      const totals = block.channels[c]!;
      if (state === 'in') totals.within += time;
      else if (state === 'missing') totals.missing += time;
      else {
        totals.outside += time;
        totals.outsideDistance += distance;
      }
    }
  }
  // Squares of a whole test need more than 53 bits; frames come in their order whatever the cut, so it is no matter.
  for (const [c, totals] of block.channels.entries()) addSums(totals.sums, frame.channels[c]!);
}

/** Channels of which every value of the frame lies within the limits, and there is one. */
function coveredChannels(frame: Frame, judge: ConditionJudge): readonly boolean[] {
  return frame.channels.map((sums, c) => {
    if (sums.count === 0 || sums.missing === 0) return false;
    return frame.conditions.every(({ condition, rows }) => {
      const state = judge.judge(condition).channels[c];
      return rows === 0 || state === 'in' || state === 'missing';
    });
  });
}
