import process from 'node:process';
import { run } from './program.ts';
import { EXIT, type Shell } from './shell.ts';

const undoings = new Set<() => void>();

const shell: Shell = {
  stdin: process.stdin,
  stdout: process.stdout,
  stderr: process.stderr,
  env: process.env,
  onInterrupt(undo) {
    undoings.add(undo);
    return () => undoings.delete(undo);
  },
};

process.once('SIGINT', () => {
  for (const undo of undoings) undo();
  process.exit(EXIT.interrupted);
});

// A reader that has seen enough (`| head -1`) is no fault: end quietly.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(EXIT.done);
    throw error;
  });
}

// Set, never process.exit(): that would cut output that a slow pipe has not taken yet.
void run(process.argv.slice(2), shell).then((status) => {
  process.exitCode = status;
});
