import { type MeanDifference, pairedTest, welchTest } from '../comparison-tests/student.ts';

/** How a new batch of reference specimens reads against the old one. */
export interface Bridge extends MeanDifference {
  /** `paired` where both were read on the same occasions, so that the rig's wandering drops out. */
  readonly layout: 'paired' | 'separate';
}

/**
 * The offset new − old by which the chart is carried on with a new batch, with its interval. Its standard error belongs to every later
 * point of the new batch alike.
 *
 * @param old readings of the old batch
 * @param fresh readings of the new batch; in order of the same occasions where `layout` is paired
 */
export function bridgeBatches(
  old: readonly number[],
  fresh: readonly number[],
  layout: 'paired' | 'separate',
  level: number,
): Bridge {
  const test = layout === 'paired' ? pairedTest : welchTest;
  return { ...test(fresh, old, level), layout };
}
