import type { EnduranceBlock, EnduranceProtocol, PauseRule } from '../documents/kinds.ts';
import { CLOCK_FROM, duration } from '../endurance/duration.ts';
import { hoursBetween, inspectionsDue, scheduleDistance } from '../endurance/schedule-distances.ts';
import { ledgerEntry } from '../endurance/schedule-entries.ts';
import { wearEstimates } from '../endurance/wear/wear-estimates.ts';
import { wearOf } from '../endurance/wear/wear-readings.ts';
import type { DrumEvent } from '../logs/events.ts';
import { InputError, type Problem } from '../problem/problem.ts';
import { counted } from '../quantity/format.ts';
import type { Forecast, RunStatus, StatusResult } from '../result/status.ts';
import { documentsOf } from './documents-of.ts';
import type { DrumReading, DrumRun } from './drum-run.ts';
import { type EnduranceTest, readEnduranceTest } from './endurance-test.ts';

/** km by which a look may come before its distance and still be that one. Common practice, no source. */
const LOOK_NEAR = 10;
/** Events told again, from the last one back. */
const LAST_EVENTS = 5;

/**
 * How running drum tests stand: kilometres and block reached, what is due by the end of a day, when blocks and the wear
 * limit are reached.
 *
 * @param day as asked, and the end of it in ms since 1970
 * @throws InputError with every problem where no run can be read, as one of a drop test cannot
 */
export async function status(
  paths: readonly string[],
  day: { readonly date: string; readonly until: number },
  reading: DrumReading = {},
): Promise<StatusResult> {
  const runs: RunStatus[] = [];
  const unread: { path: string; problems: readonly Problem[] }[] = [];
  for (const path of paths) {
    try {
      runs.push(statusOf(await testOf(path, reading), day.until));
    } catch (error) {
      // One broken run does not hide how the others stand.
      if (!(error instanceof InputError)) throw error;
      unread.push({ path, problems: error.problems });
    }
  }
  if (runs.length === 0) throw new InputError(unread.flatMap(({ problems }) => problems));
  return { asOf: day.date, runs, unread };
}

async function testOf(path: string, reading: DrumReading): Promise<EnduranceTest> {
  const documents = documentsOf({ kind: 'run', path }, none());
  const { protocol } = documents;
  if (protocol.kind === 'endurance') return readEnduranceTest({ ...documents, protocol }, reading);
  const { path: file, locate } = protocol.source;
  const message =
    'found kind: impact, expected kind: endurance: only drum tests run on by themselves; "tirelab next" advises drop tests';
  throw new InputError([{ file, ...locate(['kind']), code: 'kind-not-running', message }]);
}

async function* none(): AsyncGenerator<Uint8Array> {}

function statusOf(test: EnduranceTest, until: number): RunStatus {
  const { protocol, drum } = test;
  const summary = drum?.summary ?? null;
  const logged = summary?.distance.logged ?? null;
  const hasClock = summary !== null && summary.lastTime > CLOCK_FROM;
  const last = hasClock ? summary.lastTime : null;
  const hours = hasClock ? (summary.lastTime - summary.firstTime) / 3_600_000 : 0;
  const pace = logged !== null && hours > 0 && logged > 0 ? logged / hours : null;
  const looks = (test.inspections?.records ?? []).map(({ distance }) => distance);
  const lastLook = looks.length === 0 ? null : Math.max(...looks);
  const interruptions = countOf(drum?.deviations ?? [], 'DRUM-17');
  const events = test.events?.records ?? [];
  return {
    run: test.run,
    protocol: { id: protocol.id, version: protocol.version },
    distance: ledgerEntry(summary?.distance ?? null),
    planned: scheduleDistance(protocol.schedule),
    block: logged === null ? null : blockAt(protocol.schedule, logged),
    firstTime: hasClock ? iso(summary.firstTime) : null,
    lastTime: last === null ? null : iso(last),
    pace,
    interruptions,
    restart: restartOf(protocol.pauses ?? null, interruptions),
    deviations: summed(drum?.deviations ?? []),
    eventsSinceLook: drum === null ? null : eventsSince(lastLook ?? 0, events, drum),
    lastEvents: events
      .toSorted((a, b) => b.time - a.time)
      .slice(0, LAST_EVENTS)
      .map(({ time, specimen, event, value }) => ({ time: iso(time), specimen, event, value })),
    lastInspection:
      lastLook === null ? null : { distance: lastLook, ago: logged === null ? null : logged - lastLook },
    forecasts:
      logged === null
        ? []
        : forecastsOf(milestonesOf(protocol, lastLook), {
            logged,
            last,
            pace,
            until,
            runs: protocol.schedule.map(({ distance, speed }) => ({ distance, speed: speed.value })),
          }),
    wear: wearEstimates(
      wearOf(test.inspections?.records ?? []),
      protocol.wearLimit ?? null,
      protocol.confidence,
    ),
  };
}

/** Whether another stop is within the protocol. */
function restartOf(pauses: PauseRule | null, interruptions: number): RunStatus['restart'] {
  if (pauses === null) return null;
  const { allowed, from } = pauses;
  const had = `${counted(interruptions, 'pause')} of ${duration(from * 1000)} or more so far, at most ${allowed} allowed`;
  return { allowed: interruptions <= allowed, why: had };
}

/** Events at a time when the test had come further than `distance`. */
function eventsSince(distance: number, events: readonly DrumEvent[], { reached }: DrumRun): number {
  return events.filter(({ time }) => reached(time).run > distance).length;
}

interface Now {
  readonly logged: number;
  readonly last: number | null;
  readonly pace: number | null;
  readonly until: number;
  readonly runs: Parameters<typeof hoursBetween>[2];
}

interface Milestone {
  readonly what: string;
  /** km. */
  readonly at: number;
  /** Due, once reached, until it was looked. */
  readonly isLook: boolean;
}

/** Ends of blocks, while they go by distance, and the looks at the tyres that are to come. */
function milestonesOf(protocol: EnduranceProtocol, lastLook: number | null): Milestone[] {
  const ends: Milestone[] = [];
  let end = 0;
  for (const { block, distance } of protocol.schedule) {
    if (distance === null) break;
    end += distance;
    ends.push({ what: `end of ${block}`, at: end, isLook: false });
  }
  const looks = inspectionsDue(protocol)
    .filter((at) => at > (lastLook ?? 0) + LOOK_NEAR)
    .map((at) => ({ what: `look at ${Number(at.toPrecision(6))} km`, at, isLook: true }));
  return [...ends, ...looks].sort((a, b) => a.at - b.at);
}

/** When each is reached: at the set speeds without a stop, and at the pace so far. */
function forecastsOf(milestones: readonly Milestone[], now: Now): Forecast[] {
  return milestones.map(({ what, at, isLook }) => {
    const isReached = now.logged >= at;
    const hours = isReached ? 0 : hoursBetween(now.logged, at, now.runs);
    const earliest = now.last === null || hours === null ? null : now.last + hours * 3_600_000;
    const atPace =
      now.last === null || now.pace === null ? null : now.last + ((at - now.logged) / now.pace) * 3_600_000;
    return {
      what,
      at,
      earliest: isReached || earliest === null ? null : iso(earliest),
      atPace: isReached || atPace === null ? null : iso(atPace),
      standing: isReached ? (isLook ? 'due' : 'reached') : standing(earliest, now.until),
    };
  });
}

/** Due is what may be reached within the day: it goes by the earliest time, so that nobody comes too late. */
function standing(earliest: number | null, until: number): Forecast['standing'] {
  if (earliest === null) return 'unknown';
  return earliest < until ? 'due' : 'later';
}

function blockAt(schedule: readonly EnduranceBlock[], logged: number): string | null {
  let end = 0;
  for (const { block, distance } of schedule) {
    if (distance === null) return null;
    end += distance;
    if (logged < end) return block;
  }
  return null;
}

function countOf(
  deviations: readonly { readonly code: string; readonly count: number }[],
  code: string,
): number {
  return deviations.filter((one) => one.code === code).reduce((sum, { count }) => sum + count, 0);
}

function summed(
  deviations: readonly { readonly code: string; readonly severity: string; readonly count: number }[],
) {
  const keys = [...new Set(deviations.map(({ code, severity }) => `${code} ${severity}`))];
  return keys.map((key) => {
    const [code, severity] = key.split(' ') as [string, string];
    return {
      code,
      severity,
      count: countOf(
        deviations.filter((one) => one.severity === severity),
        code,
      ),
    };
  });
}

function iso(time: number): string {
  return new Date(Math.round(time / 1000) * 1000).toISOString().replace('.000Z', 'Z');
}
