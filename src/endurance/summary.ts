import type { BlockSums, ChannelTotals } from './block-sums.ts';
import { SAMPLE_UNITS, valueOfSteps } from './channel-unit.ts';
import type { DrumPass } from './drum-pass.ts';
import { type FoldChannel, type FoldPlan, heldQuantity } from './plan.ts';

/** One channel over one block, in the units of the results. */
export interface ChannelSummary {
  readonly channel: string;
  readonly unit: string;
  /** Share of the turning time with a value in which it lay within the limits; null without limits or values. */
  readonly inTolerance: number | null;
  /** km run outside the limits. */
  readonly outside: number;
  readonly values: number;
  readonly missing: number;
  readonly mean: number | null;
  readonly min: number | null;
  readonly max: number | null;
}

/** Kilometres of a ledger; `logged` is the sum of the other three. */
export interface Kilometres {
  readonly logged: number;
  /** Every channel that the block holds and the log has lay within its limits. */
  readonly atCondition: number;
  /** Outside a limit, or counted while the drum stood. */
  readonly excluded: number;
  /** Across gaps, or while a channel had no value. */
  readonly unverified: number;
}

export interface BlockSummary {
  readonly block: string;
  /** km and s as planned; null where the plan is by the other. */
  readonly plannedDistance: number | null;
  readonly plannedTime: number | null;
  readonly distance: Kilometres;
  /** Seconds that rows answer for, and those of them in which the drum turned. */
  readonly loggedTime: number;
  readonly turningTime: number;
  readonly channels: readonly ChannelSummary[];
}

export interface DrumSummary {
  readonly schedule: readonly BlockSummary[];
  readonly distance: Kilometres;
  /** Where `logged` comes from. */
  readonly distanceFrom: 'counter' | 'integral of speed';
  /** km by the integral of speed, over the time that was logged; km a revolution where both are counted. */
  readonly integral: number;
  readonly revolutions: number | null;
  readonly kilometresPerRevolution: number | null;
  /** Conditions that the schedule limits and the log has no column for, as `pressure (run-in)`. */
  readonly unseen: readonly string[];
  /** Milliseconds of the first and last row. */
  readonly firstTime: number;
  readonly lastTime: number;
}

/** Says the sums of a pass in the units of the results. */
export function summarise({ ledger, plan, schedule }: DrumPass): DrumSummary {
  const blocks = ledger.blocks.map((sums, b): BlockSummary => {
    const { block, distance, duration } = schedule[b]!;
    return {
      block,
      plannedDistance: distance,
      plannedTime: duration,
      distance: kilometresOf([sums], plan),
      loggedTime: sums.time / 1000,
      turningTime: sums.turning / 1000,
      channels: plan.channels.map((channel, c) => channelSummary(channel, sums.channels[c]!, plan)),
    };
  });
  const distance = kilometresOf(ledger.blocks, plan);
  const hasRevolutions = plan.revolutions >= 0 && ledger.revolutions > 0;
  const revolutions = hasRevolutions ? ledger.revolutions / 1000 : null;
  return {
    schedule: blocks,
    distance,
    distanceFrom: plan.counter >= 0 ? 'counter' : 'integral of speed',
    integral: sum(ledger.blocks.map((block) => block.integral)) * plan.kilometresPerIntegral,
    revolutions,
    kilometresPerRevolution: revolutions === null ? null : distance.logged / revolutions,
    unseen: unseenConditions(plan, schedule),
    firstTime: ledger.firstTime,
    lastTime: ledger.lastTime,
  };
}

function kilometresOf(blocks: readonly BlockSums[], plan: FoldPlan): Kilometres {
  const steps = (pick: (block: BlockSums) => number): number => sum(blocks.map(pick));
  const atCondition = steps((block) => block.atCondition);
  const excluded = steps((block) => block.excluded);
  const unverified = steps((block) => block.unverified);
  return {
    logged: kilometres(atCondition + excluded + unverified, plan),
    atCondition: kilometres(atCondition, plan),
    excluded: kilometres(excluded, plan),
    unverified: kilometres(unverified, plan),
  };
}

/** Steps of distance in km; divided where that is exact in decimals, so that 100 km is not 100.00000000000001. */
export function kilometres(steps: number, { kilometresPerStep }: FoldPlan): number {
  const perKilometre = Math.round(1 / kilometresPerStep);
  const isWhole = Math.abs(perKilometre * kilometresPerStep - 1) < 1e-12;
  return isWhole ? steps / perKilometre : steps * kilometresPerStep;
}

function channelSummary(channel: FoldChannel, totals: ChannelTotals, plan: FoldPlan): ChannelSummary {
  const { sums, within, outside } = totals;
  const isEmpty = sums.count === 0;
  return {
    channel: channel.name,
    unit: SAMPLE_UNITS.get(channel.name)!,
    inTolerance: within + outside > 0 ? within / (within + outside) : null,
    outside: kilometres(totals.outsideDistance, plan),
    values: sums.count,
    missing: sums.missing,
    mean: isEmpty ? null : valueOfSteps(channel.reference + sums.sum / sums.count, channel),
    min: isEmpty ? null : valueOfSteps(sums.min, channel),
    max: isEmpty ? null : valueOfSteps(sums.max, channel),
  };
}

function unseenConditions(plan: FoldPlan, schedule: DrumPass['schedule']): string[] {
  const logged = new Set(plan.channels.map(({ name }) => name));
  return ['pressure', 'ambient temperature']
    .filter((name) => !logged.has(name))
    .flatMap((name) =>
      schedule.filter((block) => heldQuantity(block, name)).map(({ block }) => `${name} (${block})`),
    );
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
