import { valueOfSteps } from './channel-unit.ts';
import type { ChannelSums, Frame } from './frame.ts';
import type { FoldChannel, FoldPlan } from './plan.ts';

/** One channel over one minute, in the unit of the results; null where there is no value. */
export interface MinuteChannel {
  readonly channel: string;
  readonly n: number;
  readonly missing: number;
  readonly mean: number | null;
  readonly min: number | null;
  readonly max: number | null;
  /** Sample standard deviation; null below two values. */
  readonly sd: number | null;
  readonly first: number | null;
  readonly last: number | null;
}

/** A minute of the log: what charts are drawn from. */
export interface Minute {
  /** Milliseconds of its begin: since 1970, or since the start for `elapsed`. */
  readonly time: number;
  readonly state: string;
  readonly rows: number;
  readonly channels: readonly MinuteChannel[];
}

/** Says a complete frame in the units of the results. */
export function reduceMinute(frame: Frame, plan: FoldPlan): Minute {
  return {
    time: frame.minute * 60_000,
    state: frame.state,
    rows: frame.rows,
    channels: plan.channels.map((channel, c) => reduceChannel(frame.channels[c]!, channel)),
  };
}

/** Sums are whole and small, so mean and deviation are rounded once: sd² = (Σd² − (Σd)²/n)/(n − 1). */
function reduceChannel(sums: ChannelSums, channel: FoldChannel): MinuteChannel {
  const { count, missing } = sums;
  const value = (steps: number): number | null => (count === 0 ? null : valueOfSteps(steps, channel));
  const variance = Math.max(0, (sums.squares - sums.sum ** 2 / count) / (count - 1));
  const unit = valueOfSteps(1, channel) - valueOfSteps(0, channel);
  return {
    channel: channel.name,
    n: count,
    missing,
    mean: value(channel.reference + sums.sum / count),
    min: value(sums.min),
    max: value(sums.max),
    sd: count < 2 ? null : Math.sqrt(variance) * unit,
    first: value(sums.first),
    last: value(sums.last),
  };
}
