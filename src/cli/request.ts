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

/** Gathers an option that may be given again. */
export function collect(value: string, before: readonly string[] = []): readonly string[] {
  return [...before, value];
}
