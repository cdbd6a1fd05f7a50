import type { ImpactProtocol, Protocol } from '../documents/kinds.ts';
import type { DropLog } from '../logs/drop.ts';
import { readDropLog } from '../logs/drops.ts';
import type { Register } from '../logs/register.ts';
import { readSpecimens } from '../logs/specimens.ts';
import { InputError, type Problem } from '../problem/problem.ts';
import type { Input } from '../result/analysis.ts';
import type { Documents } from './documents-of.ts';

/** A test as it lies before a job: its documents, its logs and its register, all read. */
export interface ImpactTest extends Omit<Documents, 'logs' | 'specimens'> {
  readonly protocol: ImpactProtocol;
  readonly logs: readonly DropLog[];
  readonly register: Register | null;
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
  const logs: (DropLog | null)[] = [];
  // One after the other: two logs at once would not be read sooner, and their problems would come in any order.
  for (const { source, rig } of documents.logs) logs.push(await gather(readDropLog(source, rig?.export)));
  if (problems.length > 0) throw new InputError(problems);
  const read = logs.map((log) => log!);
  refuseOtherMasses(documents, read);
  return {
    ...documents,
    protocol,
    logs: read,
    register,
    inputs: [
      ...documents.inputs,
      ...(register ? [tableInput('specimens', register, register.specimens.length)] : []),
      ...read.map((log) => ({ ...tableInput('log', log, log.drops.length), import: log.import })),
    ],
  };
}

/** A log without masses has the rig's; the energy of a drop is reckoned with those of the run's rig. */
function refuseOtherMasses({ rig, logs }: Documents, read: readonly DropLog[]): void {
  const problems = read.flatMap(({ path, columns }, i): Problem[] => {
    const own = logs[i]!.rig;
    if (own === rig || columns.has('mass') || own?.mass?.value === rig?.mass?.value) return [];
    const message = `the rig of this log (${own?.id}) has another falling mass than the rig of the run and the log has no column of masses, expected one; add the column, or give the logs of each rig their own run`;
    return [{ file: path, line: null, column: null, code: 'rigs-differ', message }];
  });
  if (problems.length > 0) throw new InputError(problems);
}

function impactOnly(protocol: Protocol): ImpactProtocol {
  if (protocol.kind === 'impact') return protocol;
  const { path, locate } = protocol.source;
  const message =
    'found kind: endurance, expected kind: impact; drum tests are not analysed yet, only drop tests are';
  throw new InputError([{ file: path, ...locate(['kind']), code: 'kind-not-analysed', message }]);
}

function tableInput(
  role: Input['role'],
  { path, sha256, bytes }: { readonly path: string; readonly sha256: string; readonly bytes: number },
  rows: number,
): Input {
  return { role, path, sha256, bytes, rows };
}
