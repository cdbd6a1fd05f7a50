import type { SampleLayout } from '../logs/samples/layout.ts';
import { type FilePart, type PartScan, PartScanner } from '../logs/samples/part.ts';
import { SampleFold } from './fold.ts';
import type { Frame } from './frame.ts';
import { type FrameTape, writeTape } from './frame-tape.ts';
import type { FoldPlan } from './plan.ts';

/** What is to be folded: plain data, fit for a thread. */
export interface PartTask {
  readonly part: FilePart;
  readonly layout: SampleLayout;
  readonly plan: FoldPlan;
}

/** A part of a log, read and reduced. */
export interface FoldedPart extends PartScan {
  readonly rows: number;
  readonly frames: FrameTape;
}

/** Reads parts of logs. What comes of one does not depend on where the others are cut, nor on those read before. */
export class PartFolder {
  #scanner: PartScanner | null = null;
  #layout = '';

  fold({ part, layout, plan }: PartTask): FoldedPart {
    const frames: Frame[] = [];
    const fold = new SampleFold(plan, (frame) => frames.push(frame));
    let rows = 0;
    const scan = this.#scannerOf(layout).scan(part, (batch) => {
      rows += batch.rows;
      fold.take(batch);
    });
    fold.end();
    return { ...scan, rows, frames: writeTape(frames) };
  }

  /** The rows of a part, each a frame of its own. */
  rows({ part, layout, plan }: PartTask): Frame[] {
    const frames: Frame[] = [];
    const fold = new SampleFold(plan, (frame) => frames.push(frame), true);
    this.#scannerOf(layout).scan(part, (batch) => fold.take(batch));
    fold.end();
    return frames;
  }

  /** A thread gets the layout anew with every part; it is the same one almost always. */
  #scannerOf(layout: SampleLayout): PartScanner {
    const text = JSON.stringify(layout);
    if (!this.#scanner || text !== this.#layout) {
      this.#scanner = new PartScanner(layout);
      this.#layout = text;
    }
    return this.#scanner;
  }
}
