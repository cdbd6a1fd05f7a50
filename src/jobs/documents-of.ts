import { follow } from '../documents/follow.ts';
import type { Construction, Protocol, Rig, Run, Source, Specification } from '../documents/kinds.ts';
import { type Library, OPEN_SHELF } from '../documents/library.ts';
import { loadRun, type Whereabouts } from '../documents/load.ts';
import { namedFile } from '../documents/run.ts';
import type { LogSource } from '../logs/bytes.ts';
import { quote } from '../problem/echo.ts';
import { InputError, type Problem } from '../problem/problem.ts';
import type { Input } from '../result/analysis.ts';

/** What a person hands to a job: a run file, or a protocol with what goes with it. */
export type Request =
  | { readonly kind: 'run'; readonly path: string }
  | {
      readonly kind: 'files';
      readonly protocol: string;
      readonly rig: string | null;
      readonly constructions: readonly string[];
      readonly specification: string | null;
      readonly specimens: string | null;
      readonly logs: readonly string[];
    };

/** A log to read, and the rig that wrote it: its own where the run names one, else that of the run. */
export interface LogOfRig {
  readonly source: LogSource;
  readonly rig: Rig | null;
}

/** A run that another one repeats. */
export interface Retest {
  readonly run: string;
  readonly path: string;
  readonly sha256: string;
  readonly reason: string;
  readonly approver: string;
}

/** Every document of a request, read and valid; its tables, found but not read yet. */
export interface Documents {
  readonly run: string | null;
  readonly protocol: Protocol;
  readonly rig: Rig | null;
  readonly constructions: readonly Construction[];
  readonly specification: Specification | null;
  readonly specimens: LogSource | null;
  readonly logs: readonly LogOfRig[];
  readonly mountings: LogSource | null;
  readonly checks: LogSource | null;
  readonly amendments: LogSource | null;
  /** Of drum tests. */
  readonly inspections: LogSource | null;
  readonly events: LogSource | null;
  /** The run that this one repeats; null as a rule. */
  readonly replaces: Retest | null;
  readonly inputs: readonly Input[];
}

/**
 * Reads the documents of a request. What is wrong with any of them is reported at once.
 *
 * @param stdin what `-` among the logs stands for.
 * @param library where documents come from that many runs may share.
 * @throws InputError with the problems of all documents.
 */
export function documentsOf(
  request: Request,
  stdin: AsyncIterable<Uint8Array>,
  library: Library = OPEN_SHELF,
): Documents {
  const gather = new Gathering();
  if (request.kind === 'run') return fromRun(request.path, gather, library);
  const at = (path: string): Whereabouts => ({ path });
  const optional = <Kind>(path: string | null, load: (where: Whereabouts) => Kind) =>
    path === null ? null : gather.take(() => load(at(path)));
  const protocol = gather.take(() => library.protocol(at(request.protocol)));
  const rig = optional(request.rig, library.rig);
  const constructions = request.constructions.map((path) =>
    gather.take(() => library.construction(at(path))),
  );
  const specification = optional(request.specification, library.specification);
  gather.throwIfAny();
  return assemble(null, {
    protocol: protocol!,
    rig,
    constructions: constructions.map((construction) => construction!),
    specification,
    specimens: request.specimens,
    logs: request.logs.map((path) => ({ source: path === '-' ? stdin : path, rig })),
    mountings: null,
    checks: null,
    amendments: null,
    inspections: null,
    events: null,
    replaces: null,
  });
}

type Loaded = Omit<Documents, 'run' | 'inputs'>;

function fromRun(path: string, gather: Gathering, library: Library): Documents {
  const run = loadRun({ path });
  const find = (written: string, at: readonly (string | number)[]): Required<Whereabouts> | null => {
    const found = follow(run.source, written, at);
    if (!found.ok) gather.add(found.problem);
    return found.ok ? found.value : null;
  };
  const load = <Kind>(
    written: string | null,
    at: readonly (string | number)[],
    kind: (where: Whereabouts) => Kind,
  ): Kind | null => {
    const where = written === null ? null : find(written, at);
    return where && gather.take(() => kind(where));
  };
  const table = (key: 'specimens' | 'mountings' | 'checks' | 'amendments' | 'inspections' | 'events') =>
    run[key] === null ? null : find(run[key], [key]);
  const retest = ({ run: written, reason, approver }: NonNullable<Run['replaces']>): Retest | null => {
    const earlier = load(written, ['replaces', 'run'], loadRun);
    if (earlier === null) return null;
    const { path: named, sha256 } = earlier.source;
    return { run: earlier.id, path: named, sha256, reason, approver };
  };
  const rig = load(run.rig, ['rig'], library.rig);
  const ownRigs = new Map<string, Rig | null>();
  const rigOf = (log: Run['logs'][number], i: number): Rig | null => {
    if (typeof log === 'string' || log.rig === run.rig) return rig;
    const own = ownRigs.get(log.rig) ?? load(log.rig, ['logs', i, 'rig'], library.rig);
    ownRigs.set(log.rig, own);
    return own;
  };
  const construction = (entry: Run['constructions'][number], i: number): Construction | null => {
    const isPath = typeof entry === 'string';
    const at = ['constructions', i, ...(isPath ? [] : ['file'])];
    const where = follow(run.source, namedFile(entry), at);
    if (!where.ok) {
      // Told from other missing files: what was tested is then not known at all.
      const isMissing = where.problem.code === 'missing-file';
      gather.add(isMissing ? { ...where.problem, code: 'unknown-construction' } : where.problem);
      return null;
    }
    const found = gather.take(() => library.construction(where.value));
    if (found !== null && !isPath && found.revision !== entry.revision) {
      const tested = `found revision ${quote(entry.revision)} of ${quote(found.id)}`;
      const message = `${tested}, and ${found.source.path} has revision ${quote(found.revision)}; name the file of the revision that was tested`;
      const place = run.source.locate(['constructions', i, 'revision']);
      gather.add({ file: path, ...place, code: 'unknown-revision', message });
    }
    return found;
  };
  const loaded = {
    protocol: load(run.protocol, ['protocol'], library.protocol)!,
    rig,
    constructions: run.constructions.map((entry, i) => construction(entry, i)!),
    specification: load(run.specification, ['specification'], library.specification),
    specimens: table('specimens'),
    mountings: table('mountings'),
    checks: table('checks'),
    amendments: table('amendments'),
    inspections: table('inspections'),
    events: table('events'),
    replaces: run.replaces && retest(run.replaces),
    logs: run.logs.map((log, i) => {
      const at = typeof log === 'string' ? ['logs', i] : ['logs', i, 'file'];
      return { source: find(namedFile(log), at)!, rig: rigOf(log, i) };
    }),
  };
  gather.throwIfAny();
  return assemble({ id: run.id, source: run.source }, loaded);
}

function assemble(run: { id: string; source: Source } | null, loaded: Loaded): Documents {
  const input = (role: Input['role'], { path, sha256, bytes }: Source): Input => ({
    role,
    path,
    sha256,
    bytes,
    rows: null,
  });
  return {
    run: run?.id ?? null,
    ...loaded,
    inputs: [
      ...(run ? [input('run', run.source)] : []),
      input('protocol', loaded.protocol.source),
      ...rigsOf(loaded).map(({ source }) => input('rig', source)),
      ...loaded.constructions.map(({ source }) => input('construction', source)),
      ...(loaded.specification ? [input('specification', loaded.specification.source)] : []),
    ],
  };
}

/** Every rig once, that of the run first. */
function rigsOf({ rig, logs }: Loaded): Rig[] {
  const all = [rig, ...logs.map((log) => log.rig)].filter((it) => it !== null);
  return all.filter((it, i) => all.findIndex(({ source }) => source.path === it.source.path) === i);
}

/** Goes on after a document that is wrong, so that a person sees the faults of all of them in one go. */
class Gathering {
  readonly #problems: Problem[] = [];

  add(problem: Problem): void {
    this.#problems.push(problem);
  }

  take<Value>(load: () => Value): Value | null {
    try {
      return load();
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      this.#problems.push(...error.problems);
      return null;
    }
  }

  throwIfAny(): void {
    if (this.#problems.length > 0) throw new InputError(this.#problems);
  }
}
