import type { EnduranceProtocol } from '../documents/kinds.ts';
import { protocolOnDrum } from '../endurance/by-drum.ts';
import type { LogSource } from '../logs/bytes.ts';
import { type RigCheck, readChecks } from '../logs/checks.ts';
import type { ColumnKind } from '../logs/columns.ts';
import { type DrumEvent, EVENT_COLUMNS, readEvents } from '../logs/events.ts';
import type { ExportProfile } from '../logs/export/profile.ts';
import { INSPECTION_COLUMNS, type Inspection, readInspections } from '../logs/inspections.ts';
import { type DrumOutcome, readOutcomes } from '../logs/outcomes.ts';
import type { RecordTable } from '../logs/records.ts';
import type { Register } from '../logs/register.ts';
import { readSpecimens } from '../logs/specimens.ts';
import { isPlainTable, lookAt } from '../logs/table-kind.ts';
import { InputError, type Problem } from '../problem/problem.ts';
import type { Input } from '../result/analysis.ts';
import type { Documents } from './documents-of.ts';
import { type DrumReading, type DrumRun, readSamples, type Samples } from './drum-run.ts';

/** A drum test as it lies before a job: its documents and its tables, all read. */
export interface EnduranceTest
  extends Omit<
    Documents,
    'protocol' | 'logs' | 'specimens' | 'inspections' | 'events' | 'checks' | 'inputs'
  > {
  readonly protocol: EnduranceProtocol;
  readonly outcomes: readonly RecordTable<DrumOutcome>[];
  /** Null where no log of the drum was given; of several tyres on one drum the first. */
  readonly drum: DrumRun | null;
  /** Each tyre of a drum with several positions; empty where the log has one. */
  readonly tyres: readonly DrumRun[];
  readonly register: Register | null;
  readonly inspections: RecordTable<Inspection> | null;
  readonly events: RecordTable<DrumEvent> | null;
  readonly checks: RecordTable<RigCheck> | null;
  readonly inputs: readonly Input[];
}

/**
 * Reads the tables that the documents of a drum test name: samples of the drum and outcomes, told apart by their headers.
 *
 * @throws InputError with the problems of all of them.
 */
export async function readEnduranceTest(
  documents: Documents & { readonly protocol: EnduranceProtocol },
  reading: DrumReading = {},
): Promise<EnduranceTest> {
  const gather = new Problems();
  const protocol = protocolOnDrum(documents.protocol, documents.rig?.drum ?? null);
  const register =
    documents.specimens === null ? null : await gather.take(readSpecimens(documents.specimens));
  const outcomes: RecordTable<DrumOutcome>[] = [];
  const samples: Samples[] = [];
  for (const { source, rig } of documents.logs) {
    const profile = rig?.export ?? null;
    const { kind, source: log, isPlain } = await lookAt(source, profile);
    if (kind === 'drum outcomes')
      outcomes.push(...present(await gather.take(readOutcomes(log, isPlain ? null : profile))));
    else if (kind === 'drops' || kind === 'specimens') gather.add(otherTable(log, kind));
    else samples.push({ source: log, profile });
  }
  const profile = documents.rig?.export ?? null;
  const inspections = await table(
    gather,
    documents.inspections,
    INSPECTION_COLUMNS,
    readInspections,
    profile,
  );
  const events = await table(gather, documents.events, EVENT_COLUMNS, readEvents, profile);
  const checks = documents.checks === null ? null : await gather.take(readChecks(documents.checks));
  const instants = (events?.records ?? []).map(({ time }) => time);
  const who = { events: events?.records ?? [], register };
  const runs =
    samples.length === 0
      ? null
      : await gather.take(readSamples(samples, protocol, who, { ...reading, instants }));
  const drum = runs?.[0] ?? null;
  gather.checkOnce(outcomes);
  gather.throwIfAny();
  return {
    ...documents,
    protocol,
    outcomes,
    drum,
    tyres: (runs ?? []).filter(({ tyre }) => tyre !== null),
    register,
    inspections,
    events,
    checks,
    inputs: [
      ...documents.inputs,
      ...(register ? [tableInput('specimens', register, register.specimens.length)] : []),
      ...(inspections ? [tableInput('inspections', inspections, inspections.records.length)] : []),
      ...(events ? [tableInput('events', events, events.records.length)] : []),
      ...(checks ? [tableInput('checks', checks, checks.records.length)] : []),
      ...outcomes.map((table) => tableInput('log', table, table.records.length)),
      ...(drum?.files.map((log) => tableInput('log', log, log.rows)) ?? []),
    ],
  };
}

/** Reads a table of the lab, in plain form wherever its header is, else as the profile of the rig says. */
async function table<Item>(
  gather: Problems,
  source: LogSource | null,
  kinds: readonly ColumnKind<string>[],
  read: (source: LogSource, profile: ExportProfile | null) => Promise<RecordTable<Item>>,
  profile: ExportProfile | null,
): Promise<RecordTable<Item> | null> {
  if (source === null) return null;
  const isFile = typeof source === 'string' || 'named' in source;
  const isPlain = profile === null || !isFile || (await isPlainTable(source, kinds));
  return gather.take(read(source, isPlain ? null : profile));
}

function otherTable(source: LogSource, kind: string): Problem {
  const file = typeof source === 'string' ? source : 'named' in source ? source.named : '-';
  const message = `found a table of ${kind}, expected samples of the drum (time, speed, load) or outcomes (specimen, survived, failed); the protocol is of kind endurance`;
  return { file, line: 1, column: null, code: 'not-a-drum-log', message };
}

function tableInput(
  role: Input['role'],
  { path, sha256, bytes }: { readonly path: string; readonly sha256: string; readonly bytes: number },
  rows: number,
): Input {
  return { role, path, sha256, bytes, rows };
}

function present<Value>(value: Value | null): Value[] {
  return value === null ? [] : [value];
}

/** Goes on after a table that is wrong, so that a person sees the faults of all of them in one go. */
class Problems {
  readonly #all: Problem[] = [];

  add(problem: Problem): void {
    this.#all.push(problem);
  }

  async take<Value>(reading: Promise<Value>): Promise<Value | null> {
    try {
      return await reading;
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      this.#all.push(...error.problems);
      return null;
    }
  }

  /** A tyre has one life: no two tables may tell of it. */
  checkOnce(tables: readonly RecordTable<DrumOutcome>[]): void {
    const seen = new Map<string, DrumOutcome>();
    for (const outcome of tables.flatMap(({ records }) => records)) {
      const { specimen, file, line } = outcome;
      const before = seen.get(specimen);
      if (before === undefined) seen.set(specimen, outcome);
      else {
        const message = `specimen: found a tyre that stands in ${before.file}:${before.line} too, expected one row a tyre; keep one of the two, or correct the name`;
        this.add({ file, line, column: 1, code: 'duplicate-specimen', message });
      }
    }
  }

  throwIfAny(): void {
    if (this.#all.length > 0) throw new InputError(this.#all);
  }
}
