import type { ChannelState, JudgedFrame } from './condition-judge.ts';
import type { ConditionSums, Frame } from './frame.ts';
import type { FoldPlan } from './plan.ts';
import type { LogRules } from './rules.ts';
import { Stretches, type StretchPart } from './stretches.ts';

/** Looks at the frames in their order for what lasts: channels out of their limits or frozen, a drum that stands. */
export class Watch {
  /** By channel. */
  readonly below: readonly Stretches[];
  readonly above: readonly Stretches[];
  readonly missing: readonly Stretches[];
  readonly frozen: readonly Stretches[];
  readonly lifted = new Stretches();
  /** Rows at standstill that answer for a distance: the drum ran down to them. */
  readonly slowing = new Stretches();
  readonly standing: Stretches;
  readonly standingLoaded: Stretches;
  /** Frames in which the drum turned throughout, and by channel those in which its value moved. */
  turningFrames = 0;
  readonly moving: number[];
  readonly #plan: FoldPlan;
  /** Those that a judgement of the frame's conditions feeds. */
  readonly #all: readonly Stretches[];

  constructor(plan: FoldPlan, rules: LogRules) {
    const each = (make: () => Stretches) => plan.channels.map(make);
    this.#plan = plan;
    this.below = each(() => new Stretches());
    this.above = each(() => new Stretches());
    this.missing = each(() => new Stretches());
    this.frozen = each(() => new Stretches(({ from, to }) => to - from >= rules.frozen * 1000));
    this.moving = plan.channels.map(() => 0);
    const lasts = ({ time }: { time: number }) => time >= rules.interruption * 1000;
    this.standing = new Stretches(lasts);
    this.standingLoaded = new Stretches(lasts);
    const alone = [this.lifted, this.slowing, this.standing, this.standingLoaded];
    this.#all = [...this.below, ...this.above, ...this.missing, ...alone];
  }

  /** A frame that lies in one block as a whole. */
  next(frame: Frame, judged: JudgedFrame): void {
    // Most minutes are like that, and looking for what they do not have would take longer than all else.
    if (judged.every(({ isOrdinary }) => isOrdinary)) {
      for (const stretches of this.#all) stretches.next(frame, null);
      this.#watchFrozen(frame, true);
      return;
    }
    const where = (test: (row: JudgedFrame[number]) => boolean): StretchPart | null =>
      joined(judged.filter((row) => row.sums.rows > 0 && test(row)).map(({ sums }) => sums));
    const of = (c: number, state: ChannelState) =>
      where(({ isTurning, channels }) => isTurning && channels[c] === state);
    for (let c = 0; c < this.#plan.channels.length; c++) {
      this.below[c]!.next(frame, of(c, 'below'));
      this.above[c]!.next(frame, of(c, 'above'));
      this.missing[c]!.next(frame, of(c, 'missing'));
    }
    this.lifted.next(
      frame,
      where(({ isTurning, isLifted }) => isTurning && isLifted),
    );
    this.slowing.next(
      frame,
      where(({ isTurning, sums }) => !isTurning && sums.distance > 0),
    );
    const stands = judged.every(({ isTurning, sums }) => !isTurning || sums.rows === 0);
    this.standing.next(frame, stands ? where(() => true) : null);
    const isLoaded = stands && judged.every(({ isLifted }) => !isLifted);
    this.standingLoaded.next(frame, isLoaded ? where(() => true) : null);
    this.#watchFrozen(
      frame,
      judged.every(({ isTurning, sums }) => isTurning || sums.rows === 0),
    );
  }

  close(): void {
    for (const stretches of [...this.#all, ...this.frozen]) stretches.close();
  }

  #watchFrozen(frame: Frame, isTurning: boolean): void {
    if (isTurning) this.turningFrames += 1;
    for (let c = 0; c < frame.channels.length; c++) {
      const sums = frame.channels[c]!;
      const isStill = isTurning && sums.count > 1 && sums.min === sums.max;
      if (isTurning && sums.count > 1 && !isStill) this.moving[c]! += 1;
      this.frozen[c]!.next(frame, isStill ? { ...wholeFrame(frame), value: sums.min } : null);
    }
  }
}

function wholeFrame(frame: Frame): Omit<StretchPart, 'value'> {
  return {
    firstLine: frame.first.line,
    lastLine: frame.last.line,
    rows: frame.rows,
    time: frame.time,
    distance: 0,
  };
}

function joined(sums: readonly ConditionSums[]): StretchPart | null {
  if (sums.length === 0) return null;
  return {
    firstLine: Math.min(...sums.map(({ firstLine }) => firstLine)),
    lastLine: Math.max(...sums.map(({ lastLine }) => lastLine)),
    rows: sums.reduce((sum, { rows }) => sum + rows, 0),
    time: sums.reduce((sum, { time }) => sum + time, 0),
    distance: sums.reduce((sum, { distance }) => sum + distance, 0),
  };
}
