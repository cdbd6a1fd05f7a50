import type { EnduranceBlock } from '../documents/kinds.ts';
import type { Zone } from '../logs/time/zone.ts';
import { type BlockSums, emptyBlock, settle } from './block-sums.ts';
import { ConditionJudge } from './condition-judge.ts';
import { EventTally } from './event-tally.ts';
import { append, type Frame, type FrameRange, follow, type RowMark } from './frame.ts';
import { FrameChain, measureRows } from './frame-chain.ts';
import { Link } from './link.ts';
import { Milestones } from './milestones.ts';
import { NightWatch } from './night-watch.ts';
import type { FoldPlan } from './plan.ts';
import { isSameRow } from './repeats.ts';
import { Rewritten } from './rewritten.ts';
import type { LogRules } from './rules.ts';
import { Signs } from './signs.ts';
import { Strips } from './strips.ts';
import { Watch } from './watch.ts';

/** What else is to be known of a test. */
export interface LedgerOptions {
  /** Milliseconds since 1970 at which it is asked how far the test had come. */
  readonly instants?: readonly number[] | undefined;
  /** Of the clock in the laboratory: what a night is. */
  readonly zone?: Zone | null | undefined;
}

/**
 * Takes the frames of a test in their order and keeps the books: links frames, joins halves of a minute, finds the
 * block by the distance (or time) run so far, or by the state where it names one, and only then judges by that
 * block's limits. Memory does not grow with the log.
 */
export class Ledger {
  readonly blocks: readonly BlockSums[];
  readonly events = new EventTally();
  readonly watch: Watch;
  readonly rewritten = new Rewritten();
  readonly signs: Signs;
  readonly strips: Strips;
  readonly nightWatch: NightWatch;
  /** How far the test had come at the instants asked for. */
  readonly milestones: Milestones;
  /** Revolutions counted, in steps of their column; falls of the counter add nothing. */
  revolutions = 0;
  firstTime = Number.NaN;
  lastTime = Number.NaN;
  readonly #plan: FoldPlan;
  readonly #schedule: readonly EnduranceBlock[];
  readonly #judges: readonly ConditionJudge[];
  readonly #reread: (range: FrameRange) => readonly Frame[];
  readonly #onFrame: (frame: Frame) => void;
  readonly #link = new Link();
  readonly #chain: FrameChain;
  #block = 0;
  /** Steps run in all. */
  #run = 0;
  /** Steps, or milliseconds, run in the block at hand. */
  #progress = 0;

  /**
   * @param reread the rows of a stretch once more, each a frame: where within a minute a block ends is looked up
   * @param onFrame is given each minute when it is complete
   */
  constructor(
    plan: FoldPlan,
    schedule: readonly EnduranceBlock[],
    rules: LogRules,
    reread: (range: FrameRange) => readonly Frame[],
    onFrame: (frame: Frame) => void = () => {},
    { instants = [], zone = null }: LedgerOptions = {},
  ) {
    this.#plan = plan;
    this.#schedule = schedule;
    this.#reread = reread;
    this.#onFrame = onFrame;
    this.#judges = schedule.map((block) => new ConditionJudge(plan, block, schedule, rules));
    this.blocks = schedule.map(() => emptyBlock(plan.channels.length));
    this.watch = new Watch(plan, rules);
    this.signs = new Signs(plan, rules);
    this.strips = new Strips(plan);
    this.nightWatch = new NightWatch(plan, zone);
    this.milestones = new Milestones(instants);
    this.#chain = new FrameChain(plan, (frame, before) => this.#complete(frame, before));
  }

  /** @param isLinked whether the frame is a whole minute whose link to the frame before is in it already */
  add(frame: Frame, isLinked = false): void {
    if (Number.isNaN(this.firstTime)) this.firstTime = frame.first.time;
    this.#chain.add(frame, isLinked);
  }

  /** The tyre leaves the drum: what comes behind has no link to what was before. */
  interrupt(): void {
    this.#chain.end();
  }

  /** Closes the books; nothing may be added behind it. */
  close(): void {
    this.#chain.end();
    this.watch.close();
  }

  #complete(frame: Frame, before: RowMark | null): void {
    this.lastTime = frame.last.time;
    if (frame.events) this.events.merge(frame.events);
    this.rewritten.meet(frame);
    const { revolutions } = this.#plan;
    if (revolutions >= 0) {
      const from = (before ?? frame.first).columns[revolutions]!;
      const turned = frame.last.columns[revolutions]! - from;
      if (turned > 0) this.revolutions += turned;
    }
    this.#onFrame(frame);
    const named = this.#schedule.findIndex(({ block }) => block === frame.state);
    if (named >= 0) {
      if (named !== this.#block) this.#progress = 0;
      this.#block = named;
      this.#book(frame);
    } else if (this.#progress + this.#gainOf(frame) <= this.#planned()) {
      this.#book(frame);
    } else {
      this.#split(frame, before);
    }
  }

  /** A block ends within this minute: its rows are looked up, and each goes to the block it was run in. */
  #split(frame: Frame, last: RowMark | null): void {
    let before = last;
    let part: Frame | null = null;
    for (const row of frame.ranges.flatMap((range) => this.#reread(range))) {
      if (before && isSameRow(before, row.first) && part) continue;
      row.events = null;
      if (before) {
        measureRows(this.#link, this.#plan, before, row.first);
        follow(row, this.#link);
      }
      before = row.last;
      const gain = this.#gainOf(row) + (part ? this.#gainOf(part) : 0);
      if (this.#progress + gain <= this.#planned()) {
        if (part) append(part, row);
        else part = row;
        continue;
      }
      if (part) this.#book(part);
      part = row;
      while (this.#progress + this.#gainOf(row) > this.#planned()) {
        const isAsBefore = this.#isByTime(this.#block) === this.#isByTime(this.#block + 1);
        this.#progress = isAsBefore ? this.#progress - this.#planned() : 0;
        this.#block += 1;
      }
    }
    if (part) this.#book(part);
  }

  #book(frame: Frame): void {
    const judge = this.#judges[this.#block]!;
    const block = this.blocks[this.#block]!;
    this.#progress += this.#gainOf(frame);
    const before = { run: runOf(block), atCondition: block.atCondition };
    settle(block, frame, judge);
    const gained = runOf(block) - before.run;
    const judged = judge.judgeFrame(frame);
    this.watch.next(frame, judged);
    this.strips.next(frame, judged);
    const signs = this.signs.next(frame, this.#block, this.#run);
    this.nightWatch.next(frame, judged, gained, signs);
    this.milestones.pass(frame, gained, block.atCondition - before.atCondition);
    this.#run += gained;
  }

  /** What the block at hand is to be long; the last has no end, since a test may go on until failure. */
  #planned(): number {
    const { distance, duration } = this.#schedule[this.#block]!;
    if (this.#block === this.#schedule.length - 1) return Number.POSITIVE_INFINITY;
    if (distance !== null) return Math.round(distance / this.#plan.kilometresPerStep);
    return duration === null ? Number.POSITIVE_INFINITY : duration * 1000;
  }

  /** How far a frame brings the block at hand; kilometres counted in standing are none. */
  #gainOf(frame: Frame): number {
    const judge = this.#judges[this.#block]!;
    const isByTime = this.#isByTime(this.#block);
    let gain = isByTime ? 0 : frame.unverified;
    for (const { condition, time, distance } of frame.conditions) {
      if (!isByTime) gain += distance;
      else if (judge.judge(condition).isTurning) gain += time;
    }
    return gain;
  }

  #isByTime(block: number): boolean {
    return this.#schedule[block]!.distance === null;
  }
}

/** Every step of a block: at the condition, outside it, unverified. */
function runOf({ atCondition, excluded, unverified }: BlockSums): number {
  return atCondition + excluded + unverified;
}
