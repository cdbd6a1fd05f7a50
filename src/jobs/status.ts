import type { EnduranceBlock } from '../documents/kinds.ts';
import { CLOCK_FROM } from '../endurance/duration.ts';
import { ledgerEntry } from '../endurance/schedule-entries.ts';
import { wearEstimates } from '../endurance/wear/wear-estimates.ts';
import { wearOf } from '../endurance/wear/wear-readings.ts';
import { InputError } from '../problem/problem.ts';
import type { Forecast, RunStatus, StatusResult } from '../result/status.ts';
import { documentsOf } from './documents-of.ts';
import { type DrumReading, type EnduranceTest, readEnduranceTest } from './endurance-test.ts';

/** Events told again, from the last one back. */
const LAST_EVENTS = 5;

/**
 * How running drum tests stand: kilometres and block reached, what is due by the end of a day, when blocks and the wear
 * limit are reached.
 *
 * @param day as asked, and the end of it in ms since 1970
 * @throws InputError with every problem of a run, and for a run of a drop test
 */
export async function status(
  paths: readonly string[],
  day: { readonly date: string; readonly until: number },
  reading: DrumReading = {},
): Promise<StatusResult> {
  const runs: RunStatus[] = [];
  for (const path of paths) runs.push(statusOf(await testOf(path, reading), day.until));
  return { asOf: day.date, runs };
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
  return {
    run: test.run,
    protocol: { id: protocol.id, version: protocol.version },
    distance: ledgerEntry(summary?.distance ?? null),
    planned: plannedDistance(protocol.schedule),
    block: logged === null ? null : blockAt(protocol.schedule, logged),
    firstTime: hasClock ? iso(summary.firstTime) : null,
    lastTime: last === null ? null : iso(last),
    pace,
    interruptions: countOf(drum?.deviations ?? [], 'DRUM-17'),
    deviations: summed(drum?.deviations ?? []),
    lastEvents: (test.events?.records ?? [])
      .toSorted((a, b) => b.time - a.time)
      .slice(0, LAST_EVENTS)
      .map(({ time, specimen, event, value }) => ({ time: iso(time), specimen, event, value })),
    lastInspection:
      lastLook === null ? null : { distance: lastLook, ago: logged === null ? null : logged - lastLook },
    forecasts: logged === null ? [] : forecastsOf(protocol.schedule, { logged, last, pace, until }),
    wear: wearEstimates(
      wearOf(test.inspections?.records ?? []),
      protocol.wearLimit ?? null,
      protocol.confidence,
    ),
  };
}

interface Now {
  readonly logged: number;
  readonly last: number | null;
  readonly pace: number | null;
  readonly until: number;
}

/** When each block ends; only while the blocks go by distance. */
function forecastsOf(schedule: readonly EnduranceBlock[], now: Now): Forecast[] {
  const forecasts: Forecast[] = [];
  let end = 0;
  let hours = 0;
  for (const { block, distance, speed } of schedule) {
    if (distance === null) break;
    const begin = end;
    end += distance;
    const left = Math.max(0, end - Math.max(begin, now.logged));
    hours += left / speed.value;
    const earliest = now.last === null ? null : now.last + hours * 3_600_000;
    const atPace =
      now.last === null || now.pace === null ? null : now.last + ((end - now.logged) / now.pace) * 3_600_000;
    const isReached = now.logged >= end;
    forecasts.push({
      what: `end of ${block}`,
      at: end,
      earliest: isReached || earliest === null ? null : iso(earliest),
      atPace: isReached || atPace === null ? null : iso(atPace),
      standing: isReached ? 'reached' : standing(earliest, now.until),
    });
  }
  return forecasts;
}

/** Due is what may be reached within the day: it goes by the earliest time, so that nobody comes too late. */
function standing(earliest: number | null, until: number): Forecast['standing'] {
  if (earliest === null) return 'unknown';
  return earliest < until ? 'due' : 'later';
}

function plannedDistance(schedule: readonly EnduranceBlock[]): number | null {
  if (schedule.some(({ distance }) => distance === null)) return null;
  return schedule.reduce((sum, { distance }) => sum + distance!, 0);
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
