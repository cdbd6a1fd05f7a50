import type { EnduranceBlock } from '../documents/kinds.ts';
import type { SampleColumn, SampleLayout } from '../logs/samples/layout.ts';
import { band, type Quantity } from '../quantity/quantity.ts';
import { convert } from '../quantity/units.ts';
import { SAMPLE_UNITS } from './channel-unit.ts';
import type { LogRules } from './rules.ts';

/** A channel as the fold sees it; `cuts`, `reference` and every value are whole steps of 10^−decimals of `unit`. */
export interface FoldChannel {
  readonly name: string;
  /** Unit of the log. */
  readonly unit: string;
  readonly decimals: number;
  /** Air pressure to take off, in the unit of the results, where the column is absolute. */
  readonly ambient: number;
  /** Place among the layout's columns. */
  readonly source: number;
  /** Sums are of the differences from it, so that squares stay small. */
  readonly reference: number;
  /** Rising; a value's class is the number of cuts at or below it, so all that the blocks ask is said by the class. */
  readonly cuts: readonly number[];
}

/** All that the fold over rows must know: plain data, fit for a thread, and the same for every part. */
export interface FoldPlan {
  /** Speed first, load second. */
  readonly channels: readonly FoldChannel[];
  /** Places among the layout's columns; −1 where the log has none. */
  readonly counter: number;
  readonly revolutions: number;
  /** Milliseconds. */
  readonly interval: number;
  readonly gap: number;
  /** Steps of speed; at or below it the drum stands. */
  readonly standstill: number;
  /** Steps of the counter. */
  readonly counterJump: number;
  /** km of one step of distance: of the counter, or of the integral where there is no counter. */
  readonly kilometresPerStep: number;
  /** km of one unit of the integral of speed, which sums (v₁ + v₂)·Δt in steps of speed times milliseconds. */
  readonly kilometresPerIntegral: number;
  /** km/h of one step of speed. */
  readonly speedStep: number;
}

/** Limits of one channel in one block, as the lowest and highest class within them. */
export interface ClassBand {
  readonly channel: number;
  readonly low: number;
  readonly high: number;
}

/** Which value of a block a channel is held against. */
const HELD: Readonly<Record<string, 'speed' | 'load' | 'pressure' | 'temperature'>> = {
  speed: 'speed',
  load: 'load',
  pressure: 'pressure',
  'ambient temperature': 'temperature',
};

/** What a block asks of a channel; null where it asks nothing, or names no tolerance. */
export function heldQuantity(block: EnduranceBlock, channel: string): Quantity | null {
  const key = HELD[channel];
  const quantity = key ? block[key] : null;
  return quantity?.tolerance ? quantity : null;
}

/**
 * @param interval milliseconds from sample to sample
 */
export function planFold(
  layout: SampleLayout,
  schedule: readonly EnduranceBlock[],
  rules: LogRules,
  interval: number,
): FoldPlan {
  const channels = layout.columns.flatMap((column, source): FoldChannel[] =>
    column.role === 'channel' ? [channelPlan(column, source, schedule, rules)] : [],
  );
  const speed = layout.columns[channels[0]!.source]!;
  const counter = layout.columns.findIndex(({ role }) => role === 'distance');
  const speedStep = stepOf(speed);
  const kilometresPerIntegral = speedStep / 2 / 3_600_000;
  const kilometresPerStep = counter >= 0 ? stepOf(layout.columns[counter]!) : kilometresPerIntegral;
  return {
    channels,
    counter,
    revolutions: layout.columns.findIndex(({ role }) => role === 'revolutions'),
    interval,
    gap: interval * rules.gapIntervals,
    standstill: stepsOf(rules.standstill, speed),
    counterJump: Math.round(rules.counterJump / kilometresPerStep),
    kilometresPerStep,
    kilometresPerIntegral,
    speedStep,
  };
}

/** The classes of a channel that lie within a block's limits; null where the block sets none. */
export function classBand(channel: FoldChannel, index: number, block: EnduranceBlock): ClassBand | null {
  const limits = stepLimits(channel, block);
  if (!limits) return null;
  return {
    channel: index,
    low: channel.cuts.indexOf(limits.low) + 1,
    high: channel.cuts.indexOf(limits.high + 1),
  };
}

/** The class above which the drum turns. */
export function turningClass(plan: FoldPlan): number {
  return plan.channels[0]!.cuts.indexOf(plan.standstill + 1) + 1;
}

/** The class up to which the load arm is lifted. */
export function liftedClass(plan: FoldPlan, schedule: readonly EnduranceBlock[], rules: LogRules): number {
  return plan.channels[1]!.cuts.indexOf(liftedCut(plan.channels[1]!, schedule, rules));
}

function channelPlan(
  column: SampleColumn,
  source: number,
  schedule: readonly EnduranceBlock[],
  rules: LogRules,
): FoldChannel {
  const { name, unit, decimals, ambient } = column;
  const bare = { name, unit, decimals, ambient, source };
  const held = schedule
    .map((block) => heldQuantity(block, column.name))
    .find((quantity) => quantity !== null);
  const reference = held ? stepsOf(held.value, column) : 0;
  const channel = { ...bare, reference, cuts: [] };
  const cuts = schedule.flatMap((block) => {
    const limits = stepLimits(channel, block);
    return limits ? [limits.low, limits.high + 1] : [];
  });
  if (column.name === 'speed') cuts.push(stepsOf(rules.standstill, column) + 1);
  if (column.name === 'load') cuts.push(liftedCut(channel, schedule, rules));
  return { ...channel, cuts: [...new Set(cuts)].sort((a, b) => a - b) };
}

/** Limits are closed: a value on the limit is within. What a product of decimals adds in the last bit is taken off. */
function stepLimits(channel: FoldChannel, block: EnduranceBlock): { low: number; high: number } | null {
  const quantity = heldQuantity(block, channel.name);
  const limits = quantity && band(quantity);
  if (!limits) return null;
  return {
    low: Math.ceil(exactSteps(limits.lower, channel) - 1e-6),
    high: Math.floor(exactSteps(limits.upper, channel) + 1e-6),
  };
}

function liftedCut(channel: FoldChannel, schedule: readonly EnduranceBlock[], rules: LogRules): number {
  return stepsOf(Math.min(...schedule.map(({ load }) => load.value)) * rules.lifted, channel);
}

type Stepped = Pick<FoldChannel, 'name' | 'unit' | 'decimals' | 'ambient'>;

function exactSteps(value: number, channel: Stepped): number {
  return (
    convert(value + channel.ambient, SAMPLE_UNITS.get(channel.name)!, channel.unit) * 10 ** channel.decimals
  );
}

function stepsOf(value: number, channel: Stepped): number {
  return Math.round(exactSteps(value, channel));
}

function stepOf(column: SampleColumn): number {
  return convert(1, column.unit, SAMPLE_UNITS.get(column.name)!) / 10 ** column.decimals;
}
