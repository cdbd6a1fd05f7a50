import { serveTasks } from '../logs/samples/threads.ts';
import { type DrumReply, type DrumTask, taskAnswerer } from './part-runner.ts';

// The entry of a thread that reads parts of drum logs; built as dist/drum-worker.js.
serveTasks<DrumTask, DrumReply>(taskAnswerer(), (reply) =>
  'frames' in reply ? [reply.frames.numbers.buffer] : [],
);
