import { answerPair, type PairAnswer, type PairTask } from '../../comparison/pair-task.ts';
import { serveTasks } from '../../logs/samples/threads.ts';

// The entry of a thread that compares pairs of constructions; built as dist/compare-worker.js.
serveTasks<PairTask, PairAnswer>(answerPair, () => []);
