import { answerPair, type PairAnswer, type PairTask } from '../../comparison/pair-task.ts';
import { inOrder } from '../../logs/samples/in-order.ts';
import { taskRunner } from './batch-runner.ts';

/** Fewer pairs than this are compared before a thread has started. */
const WORTH_THREADS = 3;

/**
 * Compares pairs on several cores, in their order.
 *
 * @param workers threads, or null for one a core
 * @param finished told of each pair that is done, and how many there are
 */
export function pairRunner(
  workers: number | null,
  finished: (done: number, all: number) => void,
): (tasks: readonly PairTask[]) => Promise<PairAnswer[]> {
  return async (tasks) => {
    const useful = tasks.length < WORTH_THREADS ? 1 : workers;
    const runner = taskRunner<PairTask, PairAnswer>(
      'compare-worker.js',
      useful,
      tasks.length,
      () => answerPair,
    );
    const answers: PairAnswer[] = [];
    try {
      for await (const answer of inOrder(tasks, runner.run, runner.ahead)) {
        answers.push(answer);
        finished(answers.length, tasks.length);
      }
    } finally {
      await runner.close();
    }
    return answers;
  };
}
