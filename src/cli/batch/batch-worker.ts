import { serveTasks } from '../../logs/samples/threads.ts';
import { type BatchTask, batchAnswerer, type Told } from './answer.ts';

// The entry of a thread that analyses runs of a batch; built as dist/batch-worker.js.
serveTasks<BatchTask, Told[]>(batchAnswerer(), () => []);
