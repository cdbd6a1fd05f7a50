// The pass over a drum log once more, row by row, slow and plain: what tests hold the fold against. It shares no
// code with it. Distances in whole metres, times in milliseconds.
import type { EnduranceBlock } from '../../src/documents/kinds.ts';
import type { Quantity } from '../../src/quantity/quantity.ts';
import type { PlainRow } from './drum-log.ts';

interface Step {
  kind: string;
  time: number;
  distance: number;
  standing: number;
  unverified: number;
}

const STANDSTILL = 0.5;
const INTERVAL = 1000;
const GAP = 3000;
const JUMP = 2000;

const metres = (row: PlainRow): number | null =>
  row.distance === null ? null : Math.round(row.distance * 1000);

/** See `LinkKind`: the rules in the order in which they are written there, for a log with a counter. */
function stepBetween(before: PlainRow, row: PlainRow): Step {
  const elapsed = row.time - before.time;
  const [from, to] = [metres(before), metres(row)];
  const gained = from === null || to === null ? null : to - from;
  const known = before.speed !== null && row.speed !== null;
  const speeds = (before.speed ?? 0) + (row.speed ?? 0);
  // (v₁ + v₂)/2 in km/h over milliseconds, in metres: rounded to the millimetre, the counter's own step.
  const run = (time: number): number => (known ? Math.round((speeds / 2 / 3600) * time * 1000) / 1000 : 0);
  const turns = (speed: number | null): boolean => speed !== null && speed > STANDSTILL;
  const step = { kind: 'run', time: 0, distance: 0, standing: 0, unverified: 0 };
  if (elapsed > GAP) {
    const both = turns(before.speed) && turns(row.speed);
    const near = (speeds / 3600) * GAP;
    if (
      both &&
      elapsed >= 60_000 &&
      gained !== null &&
      gained > 0 &&
      gained <= near &&
      near * 20 < (speeds / 3600) * elapsed
    )
      return { ...step, kind: 'clock', time: INTERVAL, distance: gained };
    if (gained === null) return { ...step, kind: both ? 'gap' : 'pause' };
    if (gained === 0) return { ...step, kind: 'pause' };
    if (gained > 0) return { ...step, kind: 'gap', unverified: gained };
    return {
      ...step,
      kind: 'gap-reset',
      unverified: known ? Math.max(0, Math.min(to!, JUMP + 2 * (speeds / 3600) * elapsed)) : 0,
    };
  }
  if (elapsed < 0) {
    const most = JUMP + (200 / 3600) * -elapsed;
    if (gained !== null && gained < 0 && -gained <= most)
      return { ...step, kind: 'overlap', time: elapsed, distance: gained };
    if (gained !== null && gained < 0) return { ...step, kind: 'gap-reset' };
    if (gained !== null && gained > JUMP)
      return { ...step, kind: 'clock', time: INTERVAL, unverified: gained };
    return { ...step, kind: 'clock', time: INTERVAL, distance: gained ?? run(INTERVAL) };
  }
  if (gained === null) return { ...step, time: elapsed, distance: run(elapsed) };
  if (gained > JUMP) return { ...step, kind: 'jump', time: elapsed, distance: run(elapsed) };
  if (gained < 0) return { ...step, kind: 'reset', time: elapsed, distance: run(elapsed) };
  if (gained > 0 && known && !turns(before.speed) && !turns(row.speed))
    return { ...step, kind: 'standing', time: elapsed, standing: gained };
  return { ...step, time: elapsed, distance: gained };
}

export interface ReferenceBlock {
  rows: number;
  atCondition: number;
  excluded: number;
  unverified: number;
  within: Record<string, number>;
  outside: Record<string, number>;
}

export interface ReferenceMinute {
  time: number;
  state: string;
  rows: number;
  channels: {
    n: number;
    missing: number;
    mean: number;
    min: number;
    max: number;
    sd: number | null;
    first: number;
    last: number;
  }[];
}

const CHANNELS = ['speed', 'load', 'pressure'] as const;

export function referencePass(all: readonly PlainRow[], schedule: readonly EnduranceBlock[]) {
  const rows = all.filter((row, i) => i === 0 || row !== all[i - 1]);
  const kinds: Record<string, number> = {};
  if (rows.length < all.length) kinds.duplicate = all.length - rows.length;
  const blocks = schedule.map((): ReferenceBlock => {
    const zero = () => ({ speed: 0, load: 0, pressure: 0 });
    return { rows: 0, atCondition: 0, excluded: 0, unverified: 0, within: zero(), outside: zero() };
  });
  // First each row's step and block, then groups of one minute, state and block: what an empty cell may mean is
  // a question to the whole group.
  let at = 0;
  let progress = 0;
  const placed = rows.map((row, i) => {
    const step =
      i === 0
        ? { kind: 'run', time: 0, distance: 0, standing: 0, unverified: 0 }
        : stepBetween(rows[i - 1]!, row);
    if (step.kind !== 'run') kinds[step.kind] = (kinds[step.kind] ?? 0) + 1;
    progress += step.distance + step.unverified;
    while (at < schedule.length - 1 && progress > schedule[at]!.distance! * 1000 + 1e-9) {
      progress -= schedule[at]!.distance! * 1000;
      at++;
    }
    return { row, step, block: at, minute: Math.floor(row.time / 60_000) };
  });
  const groups = split(
    placed,
    (a, b) => a.minute === b.minute && a.row.state === b.row.state && a.block === b.block,
  );
  for (const group of groups) {
    const { block: b } = group[0]!;
    const sums = blocks[b]!;
    const limits = schedule[b]!;
    const held = CHANNELS.filter((name) => limits[name]?.tolerance);
    const covered = new Set(
      held.filter((name) => {
        const values = group.flatMap(({ row }) => row[name] ?? []);
        return values.length > 0 && values.every((value) => isWithin(value, limits[name]!));
      }),
    );
    for (const { row, step } of group) {
      sums.rows += 1;
      sums.excluded += step.standing;
      sums.unverified += step.unverified;
      const verdicts = held.map((name) => {
        const value = row[name];
        if (value === null) return covered.has(name) ? 'in' : 'missing';
        return isWithin(value, limits[name]!) ? 'in' : 'out';
      });
      if (verdicts.includes('out')) sums.excluded += step.distance;
      else if (verdicts.includes('missing')) sums.unverified += step.distance;
      else sums.atCondition += step.distance;
      for (const [k, name] of held.entries()) {
        // Time within the limits is time with a value: what an empty cell may mean does not make one.
        if ((row.speed !== null && row.speed <= STANDSTILL) || row[name] === null) continue;
        if (verdicts[k] === 'in') sums.within[name]! += step.time;
        if (verdicts[k] === 'out') sums.outside[name]! += step.time;
      }
    }
  }
  const minutes = split(placed, (a, b) => a.minute === b.minute && a.row.state === b.row.state).map(minuteOf);
  return { blocks, kinds, minutes };
}

function minuteOf(group: readonly { row: PlainRow; minute: number }[]): ReferenceMinute {
  return {
    time: group[0]!.minute * 60_000,
    state: group[0]!.row.state,
    rows: group.length,
    channels: CHANNELS.map((name) => {
      const values = group.flatMap(({ row }) => row[name] ?? []);
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
      return {
        n: values.length,
        missing: group.length - values.length,
        mean,
        min: Math.min(...values),
        max: Math.max(...values),
        sd: values.length < 2 ? null : Math.sqrt(squares / (values.length - 1)),
        first: values[0]!,
        last: values.at(-1)!,
      };
    }),
  };
}

function isWithin(value: number, quantity: Quantity): boolean {
  const tolerance = quantity.tolerance!;
  const half = tolerance.kind === 'absolute' ? tolerance.value : quantity.value * tolerance.fraction;
  return Math.abs(value - quantity.value) <= half + 1e-9;
}

function split<T>(items: readonly T[], isSame: (a: T, b: T) => boolean): T[][] {
  const groups: T[][] = [];
  for (const item of items) {
    const last = groups.at(-1);
    if (last && isSame(last.at(-1)!, item)) last.push(item);
    else groups.push([item]);
  }
  return groups;
}
