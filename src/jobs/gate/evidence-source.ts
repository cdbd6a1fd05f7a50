import type { Specification } from '../../documents/kinds.ts';
import type { LogSource } from '../../logs/bytes.ts';
import { echo } from '../../problem/echo.ts';
import type { JudgedCriterion } from '../../result/criterion.ts';
import { rejudge } from '../../verdict/rejudge.ts';
import { openTest } from '../analyze.ts';
import type { Documents } from '../documents-of.ts';
import { nameOf } from './repository.ts';
import type { GateResultFile } from './stored-results.ts';
import type { Unreadable } from './unreadable.ts';

/** What one run has to say, and from where. */
export interface EvidenceSource {
  readonly run: string;
  /** Of the run's file, or of the stored result where the run is not under the paths. */
  readonly path: string;
  /** `id@revision` of what was tested. */
  readonly constructions: ReadonlySet<string>;
  /** Id of the run that this one repeats. */
  readonly replaces: string | null;
  /** Every file that it rests on. */
  readonly files: readonly string[];
  /**
   * The run judged by each of some specifications: from stored results where they are current, else from its logs,
   * which are read once. Null where the run could not be read.
   */
  judge(specifications: readonly Specification[]): Promise<Judgements | null>;
}

/** By the name of the specification: the criteria, and the stored result that they were taken from. */
export type Judgements = ReadonlyMap<
  string,
  { readonly criteria: readonly JudgedCriterion[]; readonly result: string | null }
>;

interface RunFile extends Omit<EvidenceSource, 'constructions' | 'judge'> {
  readonly stored: readonly GateResultFile[];
  /** Null where it could not be read. */
  readonly documents: () => Documents | null;
  readonly constructions: readonly string[];
  readonly unreadable: Unreadable;
}

/** A run under the paths. */
export function ofRunFile({ stored, documents, unreadable, ...file }: RunFile): EvidenceSource {
  return {
    ...file,
    constructions: new Set(file.constructions),
    async judge(specifications) {
      let analyse: Awaited<ReturnType<typeof openTest>> | null = null;
      const judged = new Map<string, { criteria: readonly JudgedCriterion[]; result: string | null }>();
      for (const specification of specifications) {
        const name = nameOf(specification);
        const kept = stored.find((one) => one.specification === name && one.found.state === 'current');
        if (kept !== undefined) {
          judged.set(name, { criteria: honest(kept, specification), result: kept.path });
          continue;
        }
        const opened = documents();
        if (opened === null) return null;
        analyse ??= await unreadable.wait(file.path, () => openTest(opened));
        if (analyse === null) return null;
        judged.set(name, { criteria: analyse(specification).criteria, result: null });
      }
      return judged;
    },
  };
}

/** A stored result whose run is not under the paths: as it stands where it is current, else not valid. */
export function ofResultAlone(stored: GateResultFile): EvidenceSource {
  const { path, run, constructions, replaces, files, found } = stored;
  return {
    run: run ?? path,
    path,
    constructions: new Set(constructions),
    replaces,
    files,
    async judge(specifications) {
      const own = specifications.filter((specification) => nameOf(specification) === stored.specification);
      const why = `the stored result is stale (${found.why}), and its run is not here`;
      return new Map(
        own.map((specification) => {
          const criteria =
            found.state === 'current'
              ? honest(stored, specification)
              : stored.criteria.map((criterion) => ({ ...criterion, verdict: 'invalid' as const, why }));
          return [nameOf(specification), { criteria, result: path }];
        }),
      );
    },
  };
}

/** The criteria of a stored result; one whose verdict its own numbers contradict is evidence of nothing. */
function honest({ criteria }: GateResultFile, specification: Specification): JudgedCriterion[] {
  return criteria.map((stored) => {
    const criterion = specification.criteria.find(({ id }) => id === stored.id);
    const { verdict } = criterion === undefined ? stored : rejudge(criterion, stored);
    if (verdict === stored.verdict) return stored;
    const why = `the stored verdict is ${echo(stored.verdict)}, and the numbers beside it say ${verdict}: "tirelab verify" shows what was changed`;
    return { ...stored, verdict: 'invalid', why };
  });
}

/** Every file that a run rests on: its documents, its tables, its logs, and the results stored of it. */
export function filesOf(path: string, documents: Documents, stored: readonly GateResultFile[]): string[] {
  const { specimens, mountings, checks, amendments, inspections, events, logs, inputs } = documents;
  const tables = [specimens, mountings, checks, amendments, inspections, events];
  return [
    path,
    ...inputs.map((input) => input.path),
    ...[...tables, ...logs.map(({ source }) => source)].flatMap(pathOf),
    ...stored.map((result) => result.path),
  ];
}

function pathOf(source: LogSource | null): string[] {
  if (source === null) return [];
  if (typeof source === 'string') return [source];
  return 'path' in source ? [source.path] : [];
}
