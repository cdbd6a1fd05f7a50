import type { ImpactProtocol, Protocol, Rig } from '../documents/kinds.ts';
import { type Amendment, readAmendments } from '../logs/amendments.ts';
import type { LogSource } from '../logs/bytes.ts';
import { type RigCheck, readChecks } from '../logs/checks.ts';
import type { DropLog } from '../logs/drop.ts';
import { readDropLog } from '../logs/drops.ts';
import { type Mounting, readMountings } from '../logs/mountings.ts';
import type { RecordTable } from '../logs/records.ts';
import type { Register } from '../logs/register.ts';
import { readSpecimens } from '../logs/specimens.ts';
import { InputError, type Problem } from '../problem/problem.ts';
import type { Input } from '../result/analysis.ts';
import type { Documents } from './documents-of.ts';

/** A test as it lies before a job: its documents, its logs and its register, all read. */
export interface ImpactTest
  extends Omit<Documents, 'logs' | 'specimens' | 'mountings' | 'checks' | 'amendments'> {
  readonly protocol: ImpactProtocol;
  readonly logs: readonly DropLog[];
  readonly register: Register | null;
  readonly mountings: RecordTable<Mounting> | null;
  readonly checks: RecordTable<RigCheck> | null;
  readonly amendments: RecordTable<Amendment> | null;
  /** The rig that wrote each log. */
  readonly rigs: readonly (Rig | null)[];
}

/**
 * Reads the tables that the documents of a drop test name.
 *
 * @throws InputError with the problems of all of them.
 */
export async function readImpactTest(documents: Documents): Promise<ImpactTest> {
  const protocol = impactOnly(documents.protocol);
  const problems: Problem[] = [];
  const gather = async <Value>(reading: Promise<Value>): Promise<Value | null> => {
    try {
      return await reading;
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      problems.push(...error.problems);
      return null;
    }
  };
  const register = documents.specimens === null ? null : await gather(readSpecimens(documents.specimens));
  const optional = <Table>(source: LogSource | null, read: (from: LogSource) => Promise<Table>) =>
    source === null ? null : gather(read(source));
  const mountings = await optional(documents.mountings, readMountings);
  const checks = await optional(documents.checks, readChecks);
  const amendments = await optional(documents.amendments, readAmendments);
  const logs: (DropLog | null)[] = [];
  // One after the other: two logs at once would not be read sooner, and their problems would come in any order.
  for (const { source, rig } of documents.logs) logs.push(await gather(readDropLog(source, rig?.export)));
  if (problems.length > 0) throw new InputError(problems);
  const read = logs.map((log) => log!);
  return {
    ...documents,
    protocol,
    logs: read,
    register,
    mountings,
    checks,
    amendments,
    rigs: documents.logs.map(({ rig }) => rig),
    inputs: [
      ...documents.inputs,
      ...(register ? [tableInput('specimens', register, register.specimens.length)] : []),
      ...(mountings ? [tableInput('mountings', mountings, mountings.records.length)] : []),
      ...(checks ? [tableInput('checks', checks, checks.records.length)] : []),
      ...(amendments ? [tableInput('amendments', amendments, amendments.records.length)] : []),
      ...read.map((log) => ({ ...tableInput('log', log, log.drops.length), import: log.import })),
    ],
  };
}

function impactOnly(protocol: Protocol): ImpactProtocol {
  if (protocol.kind === 'impact') return protocol;
  const { path, locate } = protocol.source;
  const message =
    'found kind: endurance, expected kind: impact; this command reads drop tests only; "tirelab analyze" and "tirelab status" read drum tests';
  throw new InputError([{ file: path, ...locate(['kind']), code: 'kind-not-analysed', message }]);
}

function tableInput(
  role: Input['role'],
  { path, sha256, bytes }: { readonly path: string; readonly sha256: string; readonly bytes: number },
  rows: number,
): Input {
  return { role, path, sha256, bytes, rows };
}
