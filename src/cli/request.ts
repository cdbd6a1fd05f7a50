import type { Request } from '../jobs/documents-of.ts';
import { UsageError } from './failure.ts';

/** The options by which `analyze` and `next` are handed a protocol and what goes with it. */
export interface RequestOptions {
  readonly protocol?: string;
  readonly rig?: string;
  readonly construction?: readonly string[];
  readonly spec?: string;
  readonly specimens?: string;
}

/**
 * A run file, or with `--protocol` the logs and what goes with them.
 *
 * @throws UsageError where both are mixed
 */
export function requestOf(files: readonly string[], options: RequestOptions): Request {
  const constructions = options.construction ?? [];
  const beside = [options.rig, options.spec, options.specimens, ...constructions];
  if (options.protocol === undefined) {
    if (files.length > 1 || beside.some((path) => path !== undefined)) {
      throw new UsageError('a run file stands alone: it names protocol, rig, specification and logs itself');
    }
    return { kind: 'run', path: files[0]! };
  }
  return {
    kind: 'files',
    protocol: options.protocol,
    rig: options.rig ?? null,
    constructions,
    specification: options.spec ?? null,
    specimens: options.specimens ?? null,
    logs: files,
  };
}

/**
 * The tests of a batch, read from files alone.
 *
 * @param each whether each file is a test of its own: run files, or with `--protocol` logs that share what goes with them
 * @throws UsageError where run files are mixed with what they name themselves, or standard input stands among them
 */
export function requestsOf(files: readonly string[], options: RequestOptions, each: boolean): Request[] {
  if (files.includes('-')) throw new UsageError('several tests are read from files, not from standard input');
  return each ? files.map((file) => requestOf([file], options)) : [requestOf(files, options)];
}

/** Gathers an option that may be given again. */
export function collect(value: string, before: readonly string[] = []): readonly string[] {
  return [...before, value];
}
