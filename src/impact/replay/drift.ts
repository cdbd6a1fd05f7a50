import type { DeviationList } from '../../conformance/deviation-list.ts';
import { dayOf } from '../../logs/span.ts';
import { upTo } from '../../quantity/format.ts';
import { impactSpeed } from '../../rig/energy.ts';
import type { Visit } from './replayed.ts';
import type { Session } from './session.ts';

/** Fewest drops of a day, share of speed over them, and how sure the slope must be. Common practice, no source. */
const FEWEST = 8;
const DRIFT = 0.01;
const SURE = 4;

/** Raises DROP-15 at the last drop of a day over which the ratio of speed to free fall drifts. */
export function checkDrift({ visits, columns, scale }: Session, list: DeviationList): void {
  if (!columns.has('velocity')) return;
  const days = new Map<string, Visit[]>();
  for (const visit of visits) {
    if (visit.drop.velocity === null || !visit.drop.valid) continue;
    const day = visit.drop.time === null ? '' : dayOf(visit.drop.time);
    const same = days.get(day);
    if (same === undefined) days.set(day, [visit]);
    else same.push(visit);
  }
  for (const same of days.values()) {
    if (same.length < FEWEST) continue;
    const ratios = same.map(
      ({ drop }) => drop.velocity! / impactSpeed(scale.gravityOf(drop).value, drop.height),
    );
    const { drift, error } = driftOf(ratios);
    if (Math.abs(drift) <= DRIFT || Math.abs(drift) <= SURE * error) continue;
    const { drop, place } = same.at(-1)!;
    const found = () =>
      `speed drifts by ${upTo(100 * drift, 1)} % of free fall over ${same.length} drops, from line ${same[0]!.drop.line}`;
    list.add({ code: 'DROP-15', found, file: drop.file, line: drop.line, drop: drop.number ?? place });
  }
}

/** The straight line's change from first to last value, and its standard error: ordinary least squares. */
export function driftOf(values: readonly number[]): { readonly drift: number; readonly error: number } {
  const n = values.length;
  const middle = (n - 1) / 2;
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  let across = 0;
  let along = 0;
  for (const [i, value] of values.entries()) {
    across += (i - middle) * (value - mean);
    along += (i - middle) ** 2;
  }
  const slope = across / along;
  const rest = values.reduce((sum, value, i) => sum + (value - mean - slope * (i - middle)) ** 2, 0);
  return { drift: slope * (n - 1), error: Math.sqrt(rest / (n - 2) / along) * (n - 1) };
}
