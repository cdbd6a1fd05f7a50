import { EventTally } from './event-tally.ts';
import { addRange, append, dropFirst, type Frame, follow, type RowMark } from './frame.ts';
import { Link, type LinkKind } from './link.ts';
import type { FoldPlan } from './plan.ts';
import { isSameRow } from './repeats.ts';

/**
 * Links frames that come in their order, and joins the halves of a minute: what goes out is whole minutes, each with
 * the link from the row before it. One chain serves the frames of a file, another the files of a test, and both do the
 * same, so that a minute is the same wherever it was cut.
 */
export class FrameChain {
  readonly #plan: FoldPlan;
  readonly #emit: (frame: Frame, before: RowMark | null) => void;
  readonly #link = new Link();
  #pending: Frame | null = null;
  /** Last row before the pending frame. */
  #before: RowMark | null = null;

  /** @param emit is given each whole minute and the last row before it */
  constructor(plan: FoldPlan, emit: (frame: Frame, before: RowMark | null) => void) {
    this.#plan = plan;
    this.#emit = emit;
  }

  /** @param isLinked whether the frame is a whole minute whose link to the frame before is in it already */
  add(frame: Frame, isLinked = false): void {
    const pending = this.#pending;
    if (!pending) {
      this.#pending = frame;
      return;
    }
    const isSame = !isLinked && pending.minute === frame.minute && pending.state === frame.state;
    if (!isLinked) this.#connect(pending, frame, isSame);
    if (isSame && frame.rows === 0) {
      for (const range of frame.ranges) addRange(pending.ranges, range);
      pending.events = joinedEvents(pending.events, frame.events);
    } else if (isSame) {
      append(pending, frame);
    } else {
      this.#emit(pending, this.#before);
      this.#before = pending.last;
      this.#pending = frame;
    }
  }

  /** Hands on the last minute; what is added behind it has no link to it. */
  end(): void {
    if (this.#pending) this.#emit(this.#pending, this.#before);
    this.#pending = null;
    this.#before = null;
  }

  #connect(pending: Frame, frame: Frame, isSame: boolean): void {
    if (isSame && isSameRow(pending.last, frame.first)) {
      this.#noteFirst(frame, 'duplicate', pending.last);
      dropFirst(frame, this.#plan.channels);
      return;
    }
    const kind = measureRows(this.#link, this.#plan, pending.last, frame.first);
    follow(frame, this.#link);
    if (kind !== 'run') this.#noteFirst(frame, kind, pending.last);
  }

  #noteFirst(frame: Frame, kind: Exclude<LinkKind, 'run'> | 'duplicate', before: RowMark): void {
    const { counter } = this.#plan;
    const gained = counter < 0 ? Number.NaN : frame.first.columns[counter]! - before.columns[counter]!;
    const tally = new EventTally();
    const { file } = frame.ranges[0]!;
    tally.add({ kind, file, line: frame.first.line, from: before.time, to: frame.first.time, gained });
    frame.events = joinedEvents(tally, frame.events);
  }
}

/** Measures from one row to the next; the link holds what lies between. */
export function measureRows(link: Link, plan: FoldPlan, before: RowMark, row: RowMark): LinkKind {
  const { counter, channels } = plan;
  const speed = channels[0]!.source;
  return link.measure(
    plan,
    before.time,
    counter < 0 ? Number.NaN : before.columns[counter]!,
    before.columns[speed]!,
    row.time,
    counter < 0 ? Number.NaN : row.columns[counter]!,
    row.columns[speed]!,
  );
}

function joinedEvents(earlier: EventTally | null, later: EventTally | null): EventTally | null {
  if (!earlier || !later) return earlier ?? later;
  earlier.merge(later);
  return earlier;
}
