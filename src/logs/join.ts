import { echo } from '../problem/echo.ts';
import { InputError } from '../problem/problem.ts';
import type { Drop, DropLog } from './drop.ts';
import { instantOf } from './instant.ts';

/** Several logs as one test. */
export interface JoinedLogs {
  readonly drops: readonly Drop[];
  /** Whether the drops of the logs were put in order by their times, or stand one log after another as given. */
  readonly order: 'time' | 'given';
}

/**
 * The drops of several logs as one test: in order of time where every row of every log has an ISO 8601 time with
 * its offset, else one log after another as given. Each log keeps its own order of rows, whatever its clock says: a
 * rig writes its drops as they fall. Equal times stand as given.
 *
 * @throws InputError where the same content is given twice, since its drops would count twice
 */
export function joinLogs(logs: readonly DropLog[]): JoinedLogs {
  refuseTwins(logs);
  const timed = logs.length > 1 ? logs.map(instants) : [];
  if (timed.length === 0 || timed.some((times) => times === null)) {
    return { drops: logs.flatMap(({ drops }) => drops), order: 'given' };
  }
  return { drops: merge(logs, timed as number[][]), order: 'time' };
}

function refuseTwins(logs: readonly DropLog[]): void {
  const first = new Map<string, DropLog>();
  const problems = logs.flatMap((log) => {
    const twin = first.get(log.sha256);
    if (!twin) {
      first.set(log.sha256, log);
      return [];
    }
    const message = `this log has the same content as ${echo(twin.path, 200)}, expected each log once; leave one of them out`;
    return [{ file: log.path, line: null, column: null, code: 'same-log-twice', message }];
  });
  if (problems.length > 0) throw new InputError(problems);
}

function instants(log: DropLog): number[] | null {
  const times: number[] = [];
  for (const { time } of log.drops) {
    const instant = time === null ? null : instantOf(time);
    if (instant === null) return null;
    times.push(instant);
  }
  return times;
}

/** Takes the earliest of the logs' next drops, again and again. */
function merge(logs: readonly DropLog[], times: readonly (readonly number[])[]): Drop[] {
  const next = logs.map(() => 0);
  const merged: Drop[] = [];
  for (;;) {
    let earliest = -1;
    for (let i = 0; i < logs.length; i++) {
      if (next[i]! >= logs[i]!.drops.length) continue;
      if (earliest < 0 || times[i]![next[i]!]! < times[earliest]![next[earliest]!]!) earliest = i;
    }
    if (earliest < 0) return merged;
    merged.push(logs[earliest]!.drops[next[earliest]!]!);
    next[earliest]! += 1;
  }
}
