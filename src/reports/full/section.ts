import type { Block } from '../document/blocks.ts';

/** A part of a full report; left out where it has no blocks. */
export interface Section {
  readonly heading: string;
  readonly blocks: readonly Block[];
}
