import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { RigCheck } from '../../logs/checks.ts';
import { instantOf } from '../../logs/instant.ts';
import { dayOf } from '../../logs/span.ts';
import { quote } from '../../problem/echo.ts';
import { upTo } from '../../quantity/format.ts';
import type { Visit } from './replayed.ts';
import type { Session } from './session.ts';

/** The drops of one rig on one day. */
interface Day {
  readonly day: string;
  readonly first: Visit;
  readonly start: number;
  end: number;
  readonly checks: readonly RigCheck[];
}

/**
 * Holds the drops against the rig's checks, day by day: none before the first drop (DROP-29), a reference out of its
 * limits (DROP-30), base or bolts loose (DROP-20), a gauge past its calibration (DROP-24). A failed check that was
 * settled is told as a note.
 *
 * @returns why the numbers are provisional.
 */
export function checkRigChecks(session: Session, list: DeviationList): readonly string[] {
  const { protocol, visits } = session;
  const checks = session.checks ?? (protocol.rigCheck === 'daily' ? [] : null);
  if (checks === null) return [];
  const provisional: string[] = [];
  const days = daysOf(visits, checks);
  for (const day of days) {
    checkDaily(day, list, provisional);
    for (const value of VALUES) checkValue(value, day, list, provisional);
  }
  checkBase(days, checks, list);
  checkGauges(visits, checks, list);
  return provisional;
}

function checkDaily(day: Day, list: DeviationList, provisional: string[]): void {
  const { first, start, checks } = day;
  const made = checks.filter(({ kind, passed }) => kind === 'reference' || (kind === 'daily' && passed));
  if (made.some(({ instant }) => instant <= start)) return;
  const [late] = made;
  const failed = checks.find(({ kind, passed }) => kind === 'daily' && !passed);
  const what =
    late !== undefined
      ? `the check of ${day.day} was made at ${late.time.slice(11, 16)}, after the first drop`
      : failed === undefined
        ? `no rig check on ${day.day} before the first drop`
        : `the rig check of ${day.day} (line ${failed.line}) failed`;
  const settled = (late ?? failed)?.settled ?? null;
  raise(list, first, 'DROP-29', what, settled);
  if (settled === null) provisional.push(`${what} (DROP-29)`);
}

/** Checks of a value held against limits, and how a message calls them. */
const VALUES = new Map([
  ['reference', 'the reference'],
  ['velocity', 'the velocity check'],
  ['height', 'the check of the height scale'],
  ['mass', 'the check of the falling mass'],
]);

function checkValue(
  [kind, name]: readonly [string, string],
  { start, end, checks, first, day }: Day,
  list: DeviationList,
  provisional: string[],
): void {
  const own = checks.filter((check) => check.kind === kind);
  // What failed in the morning and passed again before the first drop was settled by that.
  const before = own.filter(({ instant }) => instant <= start).at(-1);
  const during = own.filter(({ instant }) => instant > start);
  const bad = [before, ...during].find((check) => check !== undefined && !check.passed);
  if (bad === undefined || end < start) return;
  const limits = [bad.lower, bad.upper].map((limit) => (limit === null ? '…' : upTo(limit, 4))).join(' to ');
  const value = bad.value === null ? 'failed' : `read ${upTo(bad.value, 4)}, limits ${limits}`;
  const what = `${name} of ${day} ${value} (line ${bad.line} of the checks)`;
  raise(list, first, 'DROP-30', what, bad.settled);
  if (bad.settled === null) provisional.push(`${what} (DROP-30)`);
}

/** Loose base or bolts spoil everything since the last look that found them fast. */
function checkBase(days: readonly Day[], checks: readonly RigCheck[], list: DeviationList): void {
  const looks = checks.filter(({ kind }) => kind === 'base').toSorted((a, b) => a.instant - b.instant);
  for (const [i, look] of looks.entries()) {
    if (look.passed) continue;
    const since = looks.slice(0, i).findLast(({ passed }) => passed)?.instant ?? -Infinity;
    const day = days.find(({ start, end }) => end > since && start < look.instant);
    if (day === undefined) continue;
    raise(
      list,
      day.first,
      'DROP-20',
      `base or bolts found loose at ${look.time} (line ${look.line} of the checks)`,
      look.settled,
    );
  }
}

function checkGauges(visits: readonly Visit[], checks: readonly RigCheck[], list: DeviationList): void {
  const due = new Map<string, number>();
  for (const { kind, gauge, due: until } of checks) {
    if (kind === 'gauge' && gauge !== null && until !== null)
      due.set(gauge, Math.max(until, due.get(gauge) ?? until));
  }
  if (due.size === 0) return;
  const told = new Set<string>();
  for (const visit of visits) {
    const { gauge } = visit.drop.details ?? { gauge: null };
    const instant = visit.drop.time === null ? null : instantOf(visit.drop.time);
    const name = gauge ?? (due.size === 1 ? [...due.keys()][0]! : null);
    if (name === null || instant === null || told.has(name) || !(instant > (due.get(name) ?? Infinity)))
      continue;
    told.add(name);
    raise(list, visit, 'DROP-24', `calibration of gauge ${quote(name, 24)} was due before this drop`, null);
  }
}

function daysOf(visits: readonly Visit[], checks: readonly RigCheck[]): Day[] {
  const days = new Map<string, Day>();
  for (const visit of visits) {
    const { time, details } = visit.drop;
    const instant = time === null ? null : instantOf(time);
    if (time === null || instant === null || visit.use === 'set-aside') continue;
    const rig = details?.rig ?? null;
    const key = `${rig}\n${dayOf(time)}`;
    const known = days.get(key);
    if (known !== undefined) known.end = Math.max(known.end, instant);
    else {
      const own = checks.filter((check) => dayOf(check.time) === dayOf(time) && isOf(check, rig));
      days.set(key, { day: dayOf(time), first: visit, start: instant, end: instant, checks: own });
    }
  }
  for (const day of days.values()) (day.checks as RigCheck[]).sort((a, b) => a.instant - b.instant);
  return [...days.values()];
}

function isOf(check: RigCheck, rig: string | null): boolean {
  return check.rig === null || rig === null || check.rig === rig || check.rig === rig.split('@')[0];
}

const SETTLED = { severity: 'note', effect: 'it was settled, and the result stands' } as const;

function raise(
  list: DeviationList,
  { drop, place }: Visit,
  code: string,
  what: string,
  settled: string | null,
): void {
  const found = () => (settled === null ? what : `${what}, settled: ${quote(settled)}`);
  const at = { file: drop.file, line: drop.line, drop: drop.number ?? place };
  list.add({ code, found, ...at, ...(settled === null ? {} : SETTLED) });
}
