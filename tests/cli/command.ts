import { PassThrough, Readable, Writable } from 'node:stream';
import { run } from '../../src/cli/program.ts';
import type { Shell } from '../../src/cli/shell.ts';

/** What a command left behind. */
export interface Ran {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command line in process, on invented streams. */
export async function tirelab(
  args: readonly string[],
  world: {
    readonly input?: string;
    readonly env?: Record<string, string>;
    readonly terminal?: boolean;
    /** Told all of the output so far, whenever something was written. */
    readonly onOutput?: (text: string) => void;
  } = {},
): Promise<Ran> {
  const out = new Captured(world.onOutput);
  const err = new Captured();
  const stdin =
    world.input === undefined ? new PassThrough().end() : Readable.from([Buffer.from(world.input)]);
  const shell: Shell = {
    stdin,
    stdout: Object.assign(out, { isTTY: world.terminal === true }),
    stderr: err,
    env: world.env ?? {},
    onInterrupt: () => () => {},
  };
  const status = await run(args, shell);
  return { status, out: out.text, err: err.text };
}

class Captured extends Writable {
  text = '';
  readonly #told: ((text: string) => void) | undefined;

  constructor(told?: (text: string) => void) {
    super();
    this.#told = told;
  }

  override _write(chunk: Buffer, _encoding: string, done: () => void): void {
    this.text += chunk.toString('utf8');
    this.#told?.(this.text);
    done();
  }
}

/** One estimate of a result's JSON: the first of its quantity, method, share failed and, where given, kind of interval. */
export function estimateOf(
  result: { readonly estimates: readonly JsonEstimate[] },
  quantity: string,
  method: string,
  probability?: number,
  interval?: string,
): JsonEstimate {
  const found = result.estimates.find(
    (estimate) =>
      estimate.quantity === quantity &&
      estimate.method === method &&
      estimate.probability === probability &&
      (interval === undefined || estimate.interval?.method === interval),
  );
  if (!found) throw new Error(`no ${quantity} by ${method}`);
  return found;
}

export interface JsonEstimate {
  readonly quantity: string;
  readonly method: string;
  readonly probability?: number;
  readonly unit: string;
  readonly value: number | null;
  readonly standardError: number | null;
  readonly interval: {
    readonly level: number;
    readonly sides: number;
    readonly lower: number | null;
    readonly upper: number | null;
    readonly method: string;
  } | null;
  readonly why: string | null;
}
