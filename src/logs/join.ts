import { echo } from '../problem/echo.ts';
import { InputError, type Problem } from '../problem/problem.ts';
import type { Drop, DropLog } from './drop.ts';
import { instantOf } from './instant.ts';

/** Several logs as one test. */
export interface JoinedLogs {
  readonly drops: readonly Drop[];
  /** Drops that a rig wrote into two of its files and that count once, by the path of the later file. */
  readonly collapsed: ReadonlyMap<string, number>;
  /** Whether the drops of the logs were put in order by their times, or stand one log after another as given. */
  readonly order: 'time' | 'given';
}

/**
 * The drops of several logs as one test: in order of time where every row of every log has an ISO 8601 time with
 * its offset, else one log after another as given. Each log keeps its own order of rows, whatever its clock says: a
 * rig writes its drops as they fall. Equal times stand as given.
 *
 * A rig whose export has a profile may begin a file with the last rows of the one before: rows of one rig with the
 * same instant, specimen and number are one drop where they say the same.
 *
 * @throws InputError where the same content is given twice, since its drops would count twice, and where such rows
 * differ
 */
export function joinLogs(logs: readonly DropLog[]): JoinedLogs {
  refuseTwins(logs);
  const apart = withoutOverlap(logs);
  const collapsed = new Map(
    logs.flatMap(({ path, drops }, i) => {
      const count = drops.length - apart[i]!.drops.length;
      return count === 0 ? [] : [[path, count] as const];
    }),
  );
  const timed = apart.length > 1 ? apart.map(instants) : [];
  if (timed.length === 0 || timed.some((times) => times === null)) {
    return { drops: apart.flatMap(({ drops }) => drops), collapsed, order: 'given' };
  }
  return { drops: merge(apart, timed as number[][]), collapsed, order: 'time' };
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

/** The logs without the drops that a log of the same rig before them has too. */
function withoutOverlap(logs: readonly DropLog[]): readonly DropLog[] {
  const met = new Map<string, Drop>();
  const problems: Problem[] = [];
  const apart = logs.map((log) => {
    const { rig } = log.import;
    if (rig === null || logs.length === 1) return log;
    const drops = log.drops.filter((drop) => {
      if (drop.time === null || instantOf(drop.time) === null) return true;
      const identity = JSON.stringify([rig, drop.number, drop.time, drop.specimen]);
      const twin = met.get(identity);
      if (!twin || twin.file === drop.file) {
        met.set(identity, drop);
        return true;
      }
      if (content(twin) === content(drop)) return false;
      const message = `found another row for the drop that stands in ${echo(twin.file, 200)} on line ${twin.line}, expected overlapping files to say the same; leave the wrong row out`;
      problems.push({ file: drop.file, line: drop.line, column: null, code: 'overlapping-logs', message });
      return true;
    });
    return drops.length === log.drops.length ? log : { ...log, drops };
  });
  if (problems.length > 0) throw new InputError(problems);
  return apart;
}

function content(drop: Drop): string {
  return JSON.stringify({ ...drop, file: '', line: 0 });
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
