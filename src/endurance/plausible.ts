import type { SampleLog } from '../logs/samples/head.ts';
import { SAMPLE_QUANTITIES } from '../logs/samples/quantities.ts';
import { placeOfCell } from '../logs/samples/row-place.ts';
import { quote } from '../problem/echo.ts';
import type { Problem } from '../problem/problem.ts';
import { valueOfSteps } from './channel-unit.ts';
import type { Frame, FrameRange } from './frame.ts';
import type { FoldChannel, FoldPlan } from './plan.ts';

/** Minutes that are looked up row by row; a channel of another unit would have all of them wrong. */
const MOST_LOOKED_UP = 20;

/**
 * Looks whether the values of each minute can be what their column says. What lies beyond all measure is another unit,
 * or a rig's word for "no value" that its profile does not name: nothing of it may be averaged.
 */
export class Plausibility {
  readonly #plan: FoldPlan;
  readonly #reread: (range: FrameRange) => readonly Frame[];
  #lookedUp = 0;

  /** @param reread the rows of a stretch once more, each a frame */
  constructor(plan: FoldPlan, reread: (range: FrameRange) => readonly Frame[]) {
    this.#plan = plan;
    this.#reread = reread;
  }

  /** The problems of a minute, each at its row and column. */
  problems(frame: Frame, log: SampleLog): readonly Problem[] {
    const wrong = this.#plan.channels.filter((channel, c) => {
      const { count, min, max } = frame.channels[c]!;
      return count > 0 && (isBeyond(min, channel) || isBeyond(max, channel));
    });
    if (wrong.length === 0 || this.#lookedUp === MOST_LOOKED_UP) return [];
    this.#lookedUp += 1;
    const rows = frame.ranges.flatMap((range) => this.#reread(range));
    return wrong.flatMap((channel) =>
      rows.flatMap((row) => {
        const steps = row.first.columns[channel.source]!;
        return Number.isNaN(steps) || !isBeyond(steps, channel) ? [] : [problemOf(row, steps, channel, log)];
      }),
    );
  }
}

function isBeyond(steps: number, channel: FoldChannel): boolean {
  const { least, most } = quantityOf(channel);
  const value = valueOfSteps(steps, channel);
  return value < least || value > most;
}

function quantityOf({ name }: FoldChannel) {
  return SAMPLE_QUANTITIES.find((quantity) => quantity.name === name)!;
}

function problemOf(row: Frame, steps: number, channel: FoldChannel, log: SampleLog): Problem {
  const { least, most, unit } = quantityOf(channel);
  const { from, to } = row.ranges[0]!;
  const { line } = row.first;
  const found = quote(`${Number((steps / 10 ** channel.decimals).toPrecision(12))} ${channel.unit}`);
  const message =
    `${channel.name}: found ${found}, expected at least ${least} ${unit} and at most ${most} ${unit}; ` +
    `where it stands for no value, the profile lists it (export.sentinels); or another unit was meant (export.columns.${channel.name})`;
  const column = placeOfCell(log, from, to, log.layout.columns[channel.source]!.index);
  return { file: log.path, line, column, code: 'out-of-range', message };
}
