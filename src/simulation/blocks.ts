import { InputError } from '../problem/problem.ts';
import { type Block, type BlockTask, simulateBlock } from './block.ts';
import { MOST_DROPS } from './carry-out.ts';
import { type Design, posted } from './design.ts';
import { type Wanted, WHOLE } from './estimators.ts';
import type { AssumedStrength } from './strength.ts';

/** Who carries the blocks out: this thread, or several. The blocks come back in the order of their tasks. */
export type BlockRunner = (
  tasks: readonly BlockTask[],
  finished: (tests: number) => void,
) => Promise<readonly Block[]>;

/** Tests of one block: some hundredths of a second. */
const BLOCK = 1000;

/** The tests of one true median, cut into blocks. */
export function blockTasks(
  design: Design,
  assumed: AssumedStrength,
  {
    tests,
    seed,
    wanted = WHOLE,
  }: { readonly tests: number; readonly seed: number; readonly wanted?: Wanted },
): BlockTask[] {
  const given = posted(design);
  return Array.from({ length: Math.ceil(tests / BLOCK) }, (_, k) => ({
    design: given,
    assumed,
    wanted,
    seed,
    first: k * BLOCK,
    tests: Math.min(BLOCK, tests - k * BLOCK),
  }));
}

/** Carries the blocks out in the calling thread; between two of them others have their turn. */
export const runInline: BlockRunner = async (tasks, finished) => {
  const blocks: Block[] = [];
  for (const task of tasks) {
    blocks.push(simulateBlock(task));
    finished(task.tests);
    await new Promise((resolve) => setImmediate(resolve));
  }
  return blocks;
};

/** @throws InputError where tests went on without end. */
export function refuseEndless({ protocol }: Design, blocks: readonly Block[]): void {
  const endless = blocks.reduce((sum, block) => sum + block.endless, 0);
  if (endless === 0) return;
  const tests = blocks.reduce((sum, block) => sum + block.tests, 0);
  const { path, locate } = protocol.source;
  const message =
    `found a stop rule that ${endless} of ${tests} simulated tests did not reach within ${MOST_DROPS} drops, ` +
    'expected one that ends; add "drops" to it, or "atMost" beside "rarer"';
  throw new InputError([{ file: path, ...locate(['stop']), code: 'protocol-cannot-stop', message }]);
}
