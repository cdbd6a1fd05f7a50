import { serveTasks } from '../logs/samples/threads.ts';
import { answerTask, type DrumReply, type DrumTask } from './part-runner.ts';

// The entry of a thread that reads parts of drum logs; built as dist/drum-worker.js.
serveTasks<DrumTask, DrumReply>(answerTask, (reply) =>
  'frames' in reply ? [reply.frames.numbers.buffer] : [],
);
