import type { EnduranceBlock } from '../documents/kinds.ts';
import type { SampleLog } from '../logs/samples/head.ts';
import type { Problem } from '../problem/problem.ts';
import { convert } from '../quantity/units.ts';
import { valueOfSteps } from './channel-unit.ts';
import type { ChannelSums, Frame } from './frame.ts';
import type { FoldChannel, FoldPlan } from './plan.ts';

/** Units between which a column may change half-way, by channel. Common practice, no source. */
const UNITS: Readonly<Record<string, readonly string[]>> = {
  load: ['N', 'kgf', 'lbf', 'kN'],
  pressure: ['bar', 'psi', 'kPa'],
};
interface UnitRatio {
  readonly from: string;
  readonly to: string;
  readonly ratio: number;
}

/** Worked out once: asked of every minute. */
const RATIOS: Readonly<Record<string, readonly UnitRatio[]>> = Object.fromEntries(
  Object.entries(UNITS).map(([channel, units]) => [
    channel,
    units.flatMap((from) =>
      units.flatMap((to) => (from === to ? [] : [{ from, to, ratio: convert(1, from, to) }])),
    ),
  ]),
);
/** A minute is steady where its standard deviation is within this share of its mean. */
const STEADY = 0.03;
/** How near a step must be to the ratio of two units. */
const NEARNESS = 0.03;
/** How far from a set value a level may lie to be one that was meant. */
const MEANT = 0.25;

interface Level {
  readonly value: number;
  readonly line: number;
}

/**
 * Watches for a column whose values change their unit half-way: two steady levels that stand to one another as one unit
 * to another, the second held for two minutes and near nothing that the schedule asks for. A tyre that loses its air does
 * not stay at a fourteenth of its pressure.
 */
export class UnitStep {
  readonly #plan: FoldPlan;
  readonly #meant: readonly (readonly number[])[];
  /** By channel: the level before, and a new one that must be seen again. */
  readonly #levels: (Level | null)[];
  readonly #candidates: (Level | null)[];
  /** Where a level that is no longer the one before began to change. */
  readonly #since: (number | null)[];

  constructor(plan: FoldPlan, schedule: readonly EnduranceBlock[]) {
    this.#plan = plan;
    this.#meant = plan.channels.map(({ name }) =>
      schedule.flatMap((block) => (name === 'load' ? [block.load.value] : (block.pressure?.value ?? []))),
    );
    this.#levels = plan.channels.map(() => null);
    this.#candidates = plan.channels.map(() => null);
    this.#since = plan.channels.map(() => null);
  }

  /** What a whole minute shows, in the order of the log. */
  problems(frame: Frame, log: SampleLog): readonly Problem[] {
    return this.#plan.channels.flatMap((channel, c) => {
      if (!(channel.name in UNITS)) return [];
      const before = this.#levels[c]!;
      const found = this.#meet(c, channel, frame);
      return found === null ? [] : [problemOf(found, before, channel, log)];
    });
  }

  #meet(c: number, channel: FoldChannel, frame: Frame): Level | null {
    const level = steadyLevel(frame.channels[c]!, channel);
    const before = this.#levels[c];
    if (level === null) {
      if (before) this.#since[c] ??= frame.first.line;
      return null;
    }
    const isStep = before && isUnitStep(before.value, level, channel.name) && !this.#isMeant(c, level);
    const line = this.#since[c] ?? frame.first.line;
    this.#since[c] = null;
    if (!isStep) {
      this.#levels[c] = { value: level, line };
      this.#candidates[c] = null;
      return null;
    }
    const candidate = this.#candidates[c] ?? null;
    this.#candidates[c] = candidate ?? { value: level, line };
    if (candidate) this.#levels[c] = candidate;
    return candidate;
  }

  #isMeant(c: number, level: number): boolean {
    return this.#meant[c]!.some((value) => Math.abs(level - value) <= MEANT * value);
  }
}

function steadyLevel({ count, sum, squares }: ChannelSums, channel: FoldChannel): number | null {
  if (count < 2) return null;
  const step = Math.abs(valueOfSteps(1, channel) - valueOfSteps(0, channel));
  const mean = valueOfSteps(channel.reference + sum / count, channel);
  const deviation = Math.sqrt(Math.max(0, squares / count - (sum / count) ** 2)) * step;
  return mean > 0 && deviation <= STEADY * mean ? mean : null;
}

function isUnitStep(before: number, after: number, channel: string): boolean {
  return RATIOS[channel]!.some(({ ratio }) => Math.abs(after / before / ratio - 1) <= NEARNESS);
}

function problemOf(after: Level, before: Level, channel: FoldChannel, log: SampleLog): Problem {
  const { name } = channel;
  const nearest = RATIOS[name]!.find(
    ({ ratio }) => Math.abs(after.value / before.value / ratio - 1) <= NEARNESS,
  )!;
  const said = (value: number) => Number(value.toPrecision(3));
  const unit = name === 'load' ? 'N' : 'bar';
  const message =
    `${name}: found values about ${said(after.value)} ${unit} from here on, where those before are about ${said(before.value)} ${unit}, ` +
    `as if written in ${nearest.to} and no longer in ${nearest.from}, expected one unit in a column; give the rows of each unit as a log of their own, with its unit (export.columns.${name}.unit)`;
  return { file: log.path, line: after.line, column: null, code: 'mixed-units', message };
}
