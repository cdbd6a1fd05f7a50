import { SampleBatch } from '../logs/samples/batch.ts';
import type { SampleLayout } from '../logs/samples/layout.ts';
import { type FilePart, type PartScan, scanPart } from '../logs/samples/part.ts';
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

/** Reads one part of a log. What comes of it does not depend on where the other parts are cut. */
export function foldPart({ part, layout, plan }: PartTask): FoldedPart {
  const frames: Frame[] = [];
  const fold = new SampleFold(plan, (frame) => frames.push(frame));
  let rows = 0;
  const scan = scanPart(part, layout, new SampleBatch(layout), (batch) => {
    rows += batch.rows;
    fold.take(batch);
  });
  fold.end();
  return { ...scan, rows, frames: writeTape(frames) };
}

/** The rows of a stretch, each a frame of its own. */
export function foldRows({ part, layout, plan }: PartTask): Frame[] {
  const frames: Frame[] = [];
  const fold = new SampleFold(plan, (frame) => frames.push(frame), true);
  scanPart(part, layout, new SampleBatch(layout), (batch) => fold.take(batch));
  fold.end();
  return frames;
}
