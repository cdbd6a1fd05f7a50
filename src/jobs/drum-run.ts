import type { ListedDeviation } from '../conformance/deviation.ts';
import type { EnduranceProtocol } from '../documents/kinds.ts';
import { drumDeviations } from '../endurance/deviations.ts';
import { type DrumPass, type LogFile, passDrumLogs } from '../endurance/drum-pass.ts';
import type { Frame } from '../endurance/frame.ts';
import type { LedgerOptions } from '../endurance/ledger.ts';
import type { Reached } from '../endurance/life/found-lives.ts';
import type { ReadLog } from '../endurance/log-book.ts';
import { inlineRunner, type PartRunner } from '../endurance/part-runner.ts';
import type { FoldPlan } from '../endurance/plan.ts';
import { LOG_RULES, type LogRules } from '../endurance/rules.ts';
import { type TyreOnDrum, tyresOnDrum } from '../endurance/stints.ts';
import { type DrumSummary, kilometres, summarise } from '../endurance/summary.ts';
import type { LogSource } from '../logs/bytes.ts';
import type { DrumEvent } from '../logs/events.ts';
import type { ExportProfile } from '../logs/export/profile.ts';
import type { Register } from '../logs/register.ts';
import { sampleDialect } from '../logs/samples/dialect.ts';
import { positionsOfLog } from '../logs/samples/head.ts';
import type { Guard } from '../logs/samples/side-file.ts';
import { type KeptLog, keepAsFile } from '../logs/samples/spool.ts';
import { type Zone, zoneOf } from '../logs/time/zone.ts';
import { writtenOffset } from '../logs/written-offset.ts';
import { InputError } from '../problem/problem.ts';

/** How long logs are read. */
export interface DrumReading {
  /** Who reads a log of so many bytes; the calling thread where it is left out. */
  readonly runner?: (bytes: number) => PartRunner | Promise<PartRunner>;
  readonly onProgress?: (done: number, all: number, rows: number) => void;
  /** Is given every minute in order: what pictures are drawn from. */
  readonly onFrame?: (frame: Frame, plan: FoldPlan) => void;
  /** Keeps the minutes of each log in a file beside it, and uses them again while the log is the same. */
  readonly minutes?: Guard;
}

/** What the samples of the drum say. */
export interface DrumRun {
  /** Whose columns they are, where each position has its own; null for a drum with one tyre. */
  readonly tyre: TyreOnDrum | null;
  readonly pass: DrumPass;
  /** Each log once, also where it was read for several stretches of time. */
  readonly files: readonly ReadLog[];
  readonly summary: DrumSummary;
  readonly deviations: readonly ListedDeviation[];
  /** How far the test had come at the time of an event. */
  readonly reached: (time: number) => Reached;
}

/** A log of samples, and how its rig writes it. */
export interface Samples {
  readonly source: LogSource;
  readonly profile: ExportProfile | null;
}

/**
 * Reads the samples: one run of the whole drum, or where each position has columns of its own, one for each tyre that
 * stood there. What is said of a file is said under the name that the person gave it.
 *
 * @param who tells the tyres at the positions
 */
export async function readSamples(
  sources: readonly Samples[],
  protocol: EnduranceProtocol,
  who: { readonly events: readonly DrumEvent[]; readonly register: Register | null },
  { runner, onProgress, onFrame, minutes, instants }: DrumReading & Pick<LedgerOptions, 'instants'>,
): Promise<readonly DrumRun[]> {
  const kept = await keepAll(sources);
  const bytes = kept.reduce((sum, log) => sum + log.bytes, 0);
  const reader = (await runner?.(bytes)) ?? inlineRunner();
  const files = kept.map((log) => ({ ...log, beside: isAsGiven(log) ? log.path : null }));
  try {
    const options = {
      schedule: protocol.schedule,
      sampling: protocol.sampling,
      rules: rulesOf(protocol),
      instants,
      zone: await zoneOfLogs(files),
      runner: reader,
      ...(onProgress ? { onProgress } : {}),
      ...(minutes ? { minutes } : {}),
    };
    const positions = positionsIn(files);
    if (positions.length === 0) {
      const pass = await passDrumLogs(files, { ...options, ...(onFrame ? { onFrame } : {}) });
      return [runOf(pass, kept, null)];
    }
    const { tyres, problems } = tyresOnDrum(positions, who.events, who.register);
    if (problems.length > 0) throw new InputError(problems);
    const runs: DrumRun[] = [];
    for (const tyre of tyres) {
      // Pictures are of the first: a chart of two tyres in one would be of neither.
      const told = runs.length === 0 && onFrame ? { onFrame } : {};
      const pass = await passDrumLogs(atTheirTimes(files, tyre), { ...options, ...told, isOrdered: true });
      runs.push(runOf(pass, kept, tyre));
    }
    return runs;
  } catch (error) {
    throw error instanceof InputError ? underGivenNames(error, kept) : error;
  } finally {
    await reader.close();
    for (const { remove } of kept) remove();
  }
}

/** The logs once for each stretch of time in which a tyre stood at a position, in their order. */
function atTheirTimes(files: readonly LogFile[], { stints }: TyreOnDrum): LogFile[] {
  return stints
    .toSorted((a, b) => a.from - b.from)
    .flatMap(({ position, from, to }) => files.map((file) => ({ ...file, position, window: { from, to } })));
}

function positionsIn([first]: readonly LogFile[]): readonly string[] {
  return first ? positionsOfLog(first.path, sampleDialect(first.profile), first.profile) : [];
}

function runOf(read: DrumPass, kept: readonly KeptLog[], tyre: TyreOnDrum | null): DrumRun {
  const originals = new Map(kept.map(({ path, named, original }) => [path, { ...original, path: named }]));
  const logs = read.logs.map((log) => ({ ...log, ...originals.get(log.path) }));
  const pass = { ...read, logs };
  const summary = summarise(pass);
  const files = logs.filter(({ path }, i) => logs.findIndex((other) => other.path === path) === i);
  const deviations = drumDeviations(pass, summary);
  return { tyre, pass, files, summary, deviations, reached: reachedIn(pass) };
}

function underGivenNames({ problems }: InputError, kept: readonly KeptLog[]): InputError {
  const namedAs = new Map(kept.map(({ path, named }) => [path, named]));
  return new InputError(
    problems.map((problem) => ({
      ...problem,
      file: namedAs.get(problem.file) ?? problem.file,
      message: [...namedAs].reduce((text, [path, named]) => text.replaceAll(path, named), problem.message),
    })),
  );
}

/** What a log is measured with: common practice, but where the protocol says something else. */
function rulesOf({ pauses }: EnduranceProtocol): LogRules {
  return pauses
    ? { ...LOG_RULES, interruption: pauses.from, interruptionsAllowed: pauses.allowed }
    : LOG_RULES;
}

/** Whether the file is the person's own, not a copy of standard input, of other text or of a sheet. */
function isAsGiven({ named, original }: KeptLog): boolean {
  return named !== '-' && original === null;
}

function reachedIn({ ledger, plan }: DrumPass): DrumRun['reached'] {
  return (time) => {
    const { run, atCondition, isLogged } = ledger.milestones.at(time);
    return { run: kilometres(run, plan), atCondition: kilometres(atCondition, plan), isLogged };
  };
}

/** The zone of the laboratory's clock, where the profile of a rig or a log itself tells it. */
async function zoneOfLogs(logs: readonly KeptLog[]): Promise<Zone | null> {
  for (const { path, profile, bytes } of logs) {
    const rule = profile?.time ?? null;
    const zone = rule !== null && 'zone' in rule ? rule.zone : null;
    const found = zone ?? (bytes === 0 ? null : zoneOf((await writtenOffset(path)) ?? ''));
    if (found !== null) return found;
  }
  return null;
}

/** Files of all logs; none is left behind where one cannot be read. */
async function keepAll(sources: readonly Samples[]): Promise<KeptLog[]> {
  const kept: KeptLog[] = [];
  try {
    for (const { source, profile } of sources) kept.push(await keepAsFile(source, profile));
  } catch (error) {
    for (const { remove } of kept) remove();
    throw error;
  }
  return kept;
}
