import type { Readable, Writable } from 'node:stream';

/**
 * The world around a command: streams, environment and terminal. Commands get it as an argument, so that tests run
 * them in process; only main.ts fills it from `process`.
 */
export interface Shell {
  readonly stdin: Readable & { readonly isTTY?: boolean };
  readonly stdout: Writable & { readonly isTTY?: boolean; readonly columns?: number };
  readonly stderr: Writable & { readonly isTTY?: boolean; readonly columns?: number };
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Registers what must be undone when the user interrupts; returns how to take that back. */
  readonly onInterrupt: (undo: () => void) => () => void;
}

/** Exit statuses of every command; `--help` and the README list them with these words. */
export const EXIT = {
  done: 0,
  notMet: 1,
  wrongUse: 2,
  undecided: 3,
  fault: 70,
  interrupted: 130,
} as const;

/** Writes all of a text and waits until the stream has taken it, however slow the reader is. */
export function write(stream: Writable, text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    if (text === '') resolve();
    else stream.write(text, (error) => (error ? reject(error) : resolve()));
  });
}
