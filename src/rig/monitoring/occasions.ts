import type { ReferenceReading } from '../../logs/reference-readings.ts';
import { dayOf } from '../../logs/span.ts';
import { InputError } from '../../problem/problem.ts';
import type { BatchBridge } from '../../result/monitor.ts';
import { bridgeBatches } from '../../statistics/control-chart/bridge.ts';
import { grouped } from '../../statistics/summary/grouped.ts';
import { mean } from '../../statistics/summary/moments.ts';

/** Readings that make one point of a chart, in the scale of the first batch. */
export interface Occasion {
  readonly file: string;
  readonly line: number;
  readonly time: string;
  readonly instant: number;
  readonly batch: string | null;
  readonly values: readonly number[];
  readonly settled: string | null;
}

/** Side-by-side occasions that a bridge needs: two would leave one degree of freedom (common practice, no source). */
const LEAST_BRIDGE = 3;

/**
 * The points of one check standard in order of time. A new batch of reference tyres is tied to the old one by the occasions on
 * which both were read, and carries on its chart; there the old batch is the point.
 *
 * @param readings of one standard on one rig
 * @param level of the intervals of the bridges
 * @throws InputError where a batch was not read beside the one before, or occasions have unequal numbers of readings
 */
export function occasionsOf(
  readings: readonly ReferenceReading[],
  level: number,
): { readonly occasions: readonly Occasion[]; readonly bridges: readonly BatchBridge[] } {
  const sorted = readings.toSorted((a, b) => a.instant - b.instant);
  const batches = [...new Set(sorted.map(({ batch }) => batch))];
  const bridges: BatchBridge[] = [];
  const offsets = new Map<string | null, number>([[batches[0]!, 0]]);
  const bridging = new Set<ReferenceReading>();
  for (const [i, fresh] of batches.slice(1).entries()) {
    const before = batches[i]!;
    const { bridge, used } = bridgeOf(sorted, before, fresh, level);
    bridges.push(bridge);
    offsets.set(fresh, offsets.get(before)! + bridge.difference);
    for (const reading of used) bridging.add(reading);
  }
  const charted = sorted.filter((reading) => !bridging.has(reading));
  const groups = grouped(charted, (reading) =>
    reading.occasion === null ? reading : `${together(reading)}\n${reading.batch}`,
  );
  const occasions = groups.map(([, group]): Occasion => {
    const { file, line, time, instant, batch } = group[0]!;
    const offset = offsets.get(batch)!;
    return {
      file,
      line,
      time,
      instant,
      batch,
      values: group.map(({ value }) => value - offset),
      settled: group.find(({ settled }) => settled !== null)?.settled ?? null,
    };
  });
  checkSizes(occasions);
  return { occasions, bridges };
}

/** What was read together: the occasion, which may be numbered anew each day, else the day. */
function together(reading: ReferenceReading): string {
  return `${reading.occasion ?? ''}\n${dayOf(reading.time)}`;
}

function bridgeOf(
  readings: readonly ReferenceReading[],
  before: string | null,
  fresh: string | null,
  level: number,
): { bridge: BatchBridge; used: readonly ReferenceReading[] } {
  const old = readings.filter(({ batch }) => batch === before);
  const own = readings.filter(({ batch }) => batch === fresh);
  const shared = [...new Set(own.map(together))].filter((key) => old.some((one) => together(one) === key));
  const meanOf = (of: readonly ReferenceReading[], key: string) =>
    mean(of.filter((one) => together(one) === key).map(({ value }) => value));
  const names = `batch ${fresh ?? 'without a name'} after ${before ?? 'one without a name'}`;
  if (shared.length < LEAST_BRIDGE) {
    const message = `found ${names} with ${shared.length} occasion(s) on which both were read, expected ${LEAST_BRIDGE} or more: without them a difference of the batches cannot be told from a drift of the rig; read both side by side, or monitor the new batch in a table of its own`;
    throw problem(own[0]!, 'batches-not-bridged', message);
  }
  try {
    const found = bridgeBatches(
      shared.map((key) => meanOf(old, key)),
      shared.map((key) => meanOf(own, key)),
      'paired',
      level,
    );
    return {
      used: own.filter((one) => shared.includes(together(one))),
      bridge: {
        from: before ?? '',
        to: fresh ?? '',
        layout: 'paired',
        occasions: shared.length,
        difference: found.difference,
        standardError: found.standardError,
        interval: { level, lower: found.lower, upper: found.upper },
        why: null,
      },
    };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const message = `found ${names} with the same difference on every occasion, expected readings that scatter; check whether one was copied from the other`;
    throw problem(own[0]!, 'batches-not-bridged', message);
  }
}

function checkSizes(occasions: readonly Occasion[]): void {
  const size = occasions[0]?.values.length ?? 0;
  const other = occasions.find(({ values }) => values.length !== size);
  if (other === undefined) return;
  const message = `found ${other.values.length} reading(s) on the occasion of ${other.time}, expected ${size} as on the first: limits hold for one size; complete it, or leave the odd readings out`;
  throw problem(other, 'subgroup-size', message);
}

function problem({ file, line }: { file: string; line: number }, code: string, message: string): InputError {
  return new InputError([{ file, line, column: null, code, message }]);
}
