import type { SampleBatch } from '../logs/samples/batch.ts';
import { addColumn } from './add-column.ts';
import { EventTally } from './event-tally.ts';
import { conditionOf, emptySums, type Frame, type RowMark } from './frame.ts';
import { Link } from './link.ts';
import type { FoldPlan } from './plan.ts';
import { dropRepeats, type Repeat } from './repeats.ts';

const MINUTE = 60_000;

/**
 * Rows → frames, in constant memory: a frame is handed on when the next begins. The row before is all that is
 * remembered, so the links between frames are left to whoever puts the frames together.
 */
export class SampleFold {
  readonly #plan: FoldPlan;
  readonly #emit: (frame: Frame) => void;
  readonly #isRowByRow: boolean;
  readonly #link = new Link();
  #frame: Frame | null = null;
  #state = 0;
  /** Row before, for links within the frame. */
  #time = 0;
  #counter = Number.NaN;
  #speed = Number.NaN;
  /** Classes of the condition at hand, by channel. */
  readonly #classes: number[];
  readonly #weights: number[];
  /** Rows taken out of the batch at hand. */
  #repeats: Repeat[] = [];

  /** @param isRowByRow makes each row a frame, to find where within a minute a block ends */
  constructor(plan: FoldPlan, emit: (frame: Frame) => void, isRowByRow = false) {
    this.#plan = plan;
    this.#emit = emit;
    this.#isRowByRow = isRowByRow;
    this.#classes = plan.channels.map(() => 0);
    this.#weights = conditionWeights(plan);
  }

  take(batch: SampleBatch): void {
    this.#repeats = dropRepeats(batch, this.#frame);
    const { time, state } = batch;
    let begin = 0;
    while (begin < batch.rows) {
      const minute = Math.floor(time[begin]! / MINUTE);
      const word = state[begin]!;
      const isNew = this.#frame?.minute !== minute || this.#state !== word || this.#isRowByRow;
      const from = minute * MINUTE;
      let end = begin + 1;
      if (!this.#isRowByRow) {
        while (end < batch.rows && time[end]! >= from && time[end]! < from + MINUTE && state[end] === word)
          end++;
      }
      if (isNew) {
        this.end();
        this.#open(batch, begin, minute, word);
      }
      this.#extend(batch, begin, end, isNew);
      begin = end;
    }
  }

  /** Hands on the frame that is open. */
  end(): void {
    if (this.#frame) this.#emit(this.#frame);
    this.#frame = null;
  }

  #open(batch: SampleBatch, row: number, minute: number, word: number): void {
    this.#state = word;
    const mark = { ...NO_MARK, line: batch.line[row]! };
    this.#frame = {
      minute,
      state: batch.states[word]!,
      ranges: [{ file: 0, from: batch.from[row]!, to: batch.to[row]!, line: batch.line[row]! }],
      rows: 0,
      first: mark,
      last: mark,
      channels: this.#plan.channels.map(emptySums),
      conditions: [],
      time: 0,
      integral: 0,
      standing: 0,
      unverified: 0,
      events: null,
    };
  }

  /** Adds rows of one frame; the first of a new frame has no link yet. */
  #extend(batch: SampleBatch, begin: number, end: number, isNew: boolean): void {
    const frame = this.#frame!;
    const { channels } = this.#plan;
    let base = 0;
    let isSteady = true;
    for (let c = 0; c < channels.length; c++) {
      const plan = channels[c]!;
      const sums = frame.channels[c]!;
      const before = sums.missing;
      const range = addColumn(sums, batch.values[plan.source]!, begin, end, plan.reference);
      if (plan.cuts.length === 0) continue;
      const missing = sums.missing - before;
      const low = missing > 0 ? plan.cuts.length + 1 : classOf(plan.cuts, range.min);
      const isOne = missing === end - begin || (missing === 0 && low === classOf(plan.cuts, range.max));
      this.#classes[c] = isOne ? low : -1;
      if (isOne) base += low * this.#weights[c]!;
      else isSteady = false;
    }
    const first = isSteady ? base : this.#conditionAt(batch, begin, base);
    if (isNew) {
      (frame as { first: RowMark }).first = this.#mark(batch, begin, first);
      conditionOf(frame, first, batch.line[begin]!).rows += 1;
      this.#remember(batch, begin);
    }
    const linked = isNew ? begin + 1 : begin;
    if (isSteady) this.#linkSteady(batch, linked, end, base);
    else this.#linkEach(batch, linked, end, base);
    frame.rows += end - begin;
    const last = end - 1;
    while (this.#repeats.length > 0 && this.#repeats[0]!.row <= last) {
      frame.events ??= new EventTally();
      frame.events.add(this.#repeats.shift()!.event);
    }
    frame.last = this.#mark(batch, last, isSteady ? base : this.#conditionAt(batch, last, base));
    frame.ranges[0] = { ...frame.ranges[0]!, to: batch.to[last]! };
    this.#remember(batch, last);
  }

  /** Rows that are all of one condition, as most are: no row is looked at twice. */
  #linkSteady(batch: SampleBatch, begin: number, end: number, condition: number): void {
    if (end <= begin) return;
    const frame = this.#frame!;
    const plan = this.#plan;
    const { gap, counterJump, standstill } = plan;
    const { time } = batch;
    const speed = batch.values[plan.channels[0]!.source]!;
    const hasCounter = plan.counter >= 0;
    const counter = hasCounter ? batch.values[plan.counter]! : speed;
    let time0 = this.#time;
    let counter0 = hasCounter ? this.#counter : this.#speed;
    let speed0 = this.#speed;
    let spent = 0;
    let distance = 0;
    let integral = 0;
    for (let row = begin; row < end; row++) {
      const t = time[row]!;
      const n = counter[row]!;
      const v = speed[row]!;
      const elapsed = t - time0;
      const gained = n - counter0;
      if (
        elapsed >= 0 &&
        elapsed <= gap &&
        v + speed0 >= 0 &&
        (!hasCounter ||
          (gained >= 0 &&
            gained <= counterJump &&
            // Asked in this order since a turning drum is the rule, and whether the counter ticked is a toss.
            (v > standstill || speed0 > standstill || gained === 0)))
      ) {
        const part = (v + speed0) * elapsed;
        spent += elapsed;
        integral += part;
        distance += hasCounter ? gained : part;
      } else {
        const link = this.#unusual(batch, row, time0, hasCounter ? counter0 : Number.NaN, speed0);
        spent += link.time;
        integral += link.integral;
        distance += link.distance;
      }
      time0 = t;
      counter0 = n;
      speed0 = v;
    }
    const sums = conditionOf(frame, condition, batch.line[begin]!);
    sums.rows += end - begin;
    sums.time += spent;
    sums.distance += distance;
    sums.lastLine = batch.line[end - 1]!;
    frame.time += spent;
    frame.integral += integral;
  }

  /** Rows of which some channel changes its class: stretches of one condition are handed to `#linkSteady`. */
  #linkEach(batch: SampleBatch, begin: number, end: number, base: number): void {
    let from = begin;
    while (from < end) {
      const condition = this.#conditionAt(batch, from, base);
      let to = from + 1;
      while (to < end && this.#conditionAt(batch, to, base) === condition) to++;
      this.#linkSteady(batch, from, to, condition);
      this.#remember(batch, to - 1);
      from = to;
    }
  }

  #unusual(batch: SampleBatch, row: number, time0: number, counter0: number, speed0: number): Link {
    const plan = this.#plan;
    const frame = this.#frame!;
    const link = this.#link;
    const time = batch.time[row]!;
    const counter = plan.counter >= 0 ? batch.values[plan.counter]![row]! : Number.NaN;
    const speed = batch.values[plan.channels[0]!.source]![row]!;
    const kind = link.measure(plan, time0, counter0, speed0, time, counter, speed);
    frame.standing += link.standing;
    frame.unverified += link.unverified;
    if (kind !== 'run') {
      frame.events ??= new EventTally();
      const gained = counter - counter0;
      frame.events.add({ kind, file: 0, line: batch.line[row]!, from: time0, to: time, gained });
    }
    return link;
  }

  /** The condition of a row: classes that are one for the whole stretch are in `base` already. */
  #conditionAt(batch: SampleBatch, row: number, base: number): number {
    let condition = base;
    for (let c = 0; c < this.#classes.length; c++) {
      if (this.#classes[c]! >= 0) continue;
      const { cuts, source } = this.#plan.channels[c]!;
      condition += classOf(cuts, batch.values[source]![row]!) * this.#weights[c]!;
    }
    return condition;
  }

  #remember(batch: SampleBatch, row: number): void {
    this.#time = batch.time[row]!;
    this.#counter = this.#plan.counter >= 0 ? batch.values[this.#plan.counter]![row]! : Number.NaN;
    this.#speed = batch.values[this.#plan.channels[0]!.source]![row]!;
  }

  #mark(batch: SampleBatch, row: number, condition: number): RowMark {
    const columns = batch.values.map((column) => column[row]!);
    return { time: batch.time[row]!, line: batch.line[row]!, columns, condition };
  }
}

const NO_MARK: RowMark = { time: 0, line: 0, columns: [], condition: 0 };

/** How much a step of a channel's class adds to the number of a condition: places of a number of mixed radix. */
export function conditionWeights(plan: FoldPlan): number[] {
  let weight = 1;
  return plan.channels.map(({ cuts }) => {
    const own = weight;
    if (cuts.length > 0) weight *= cuts.length + 2;
    return own;
  });
}

/** Number of cuts at or below a value; one more than there are cuts where the value is missing. */
export function classOf(cuts: readonly number[], value: number): number {
  if (Number.isNaN(value)) return cuts.length + 1;
  let below = 0;
  while (below < cuts.length && cuts[below]! <= value) below++;
  return below;
}
