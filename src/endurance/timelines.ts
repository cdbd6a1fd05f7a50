import type { EnduranceBlock } from '../documents/kinds.ts';
import { band } from '../quantity/quantity.ts';
import type { ReportedTimeline, TimelineMinute, TimelineStretch } from '../result/report.ts';
import { SAMPLE_UNITS } from './channel-unit.ts';
import type { Frame } from './frame.ts';
import { type FoldPlan, heldQuantity } from './plan.ts';
import { reduceMinute } from './reduction.ts';

const MINUTE = 60_000;

/** Channels that a report draws, where the log has them. */
const DRAWN: ReadonlySet<string> = new Set(['speed', 'load', 'pressure', 'ambient temperature']);

/**
 * Keeps the minutes of a drum test as a report draws them: of each channel the mean and the extremes, and the stretches
 * of the schedule. Where a block ends is told by the integral of the speed, to the minute: enough for a picture; the
 * ledger has it to the row.
 */
export class Timelines {
  readonly #schedule: readonly EnduranceBlock[];
  readonly #minutes = new Map<string, TimelineMinute[]>();
  readonly #borders: { block: number; from: number; to: number }[] = [];
  #block = 0;
  #distance = 0;
  #time = 0;

  constructor(schedule: readonly EnduranceBlock[]) {
    this.#schedule = schedule;
  }

  /** Takes every frame of a pass, in order. */
  take(frame: Frame, plan: FoldPlan): void {
    const { time, channels } = reduceMinute(frame, plan);
    const running = frame.channels[0]!.max > plan.standstill;
    for (const { channel, mean, min, max } of channels) {
      if (!DRAWN.has(channel)) continue;
      const kept = this.#minutes.get(channel) ?? [];
      if (kept.length === 0) this.#minutes.set(channel, kept);
      kept.push({ time, running, mean, min, max });
    }
    const last = this.#borders.at(-1);
    if (last?.block === this.#block) last.to = time + MINUTE;
    else this.#borders.push({ block: this.#block, from: time, to: time + MINUTE });
    this.#go(frame.integral * plan.kilometresPerIntegral, running ? frame.time / 1000 : 0);
  }

  #go(distance: number, seconds: number): void {
    this.#distance += distance;
    this.#time += seconds;
    const block = this.#schedule[this.#block];
    if (block === undefined || this.#block + 1 >= this.#schedule.length) return;
    const isOver =
      block.distance === null ? this.#time >= (block.duration ?? Infinity) : this.#distance >= block.distance;
    if (!isOver) return;
    this.#block += 1;
    this.#distance -= block.distance ?? this.#distance;
    this.#time = 0;
  }

  all(): ReportedTimeline[] {
    return [...this.#minutes].map(([channel, minutes]) => ({
      channel,
      unit: SAMPLE_UNITS.get(channel) ?? '',
      minutes,
      schedule: this.#borders.flatMap(({ block, from, to }): TimelineStretch[] => {
        const held = heldQuantity(this.#schedule[block]!, channel);
        if (held === null) return [];
        const limits = band(held);
        return [{ from, to, value: held.value, lower: limits?.lower ?? null, upper: limits?.upper ?? null }];
      }),
    }));
  }
}
