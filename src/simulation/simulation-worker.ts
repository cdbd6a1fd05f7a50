import { serveTasks } from '../logs/samples/threads.ts';
import { type Block, type BlockTask, simulateBlock } from './block.ts';

// The entry of a thread that simulates; built as dist/simulation-worker.js.
serveTasks<BlockTask, Block>(simulateBlock, ({ drops, specimens, errors }) =>
  [drops, specimens, ...errors].map(({ buffer }) => buffer),
);
