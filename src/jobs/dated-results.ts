import { findResults } from '../documents/find-results.ts';
import { isMap, type Json } from '../documents/stored-result.ts';
import { type Span, spanOf } from '../logs/span.ts';

/** What a later look at a rig or a gauge needs of a stored result. */
export interface DatedResult {
  readonly path: string;
  readonly run: string | null;
  /** `id@config`. */
  readonly rig: string | null;
  /** As written. */
  readonly from: string | null;
  readonly to: string | null;
  /** Null where the result does not say when it was measured. */
  readonly span: Span | null;
  readonly gauges: readonly string[];
}

/**
 * The stored results under some paths with the time at which they were measured.
 *
 * @throws InputError as findResults does
 */
export function datedResults(paths: readonly string[]): DatedResult[] {
  return findResults(paths).map(({ path, document }) => {
    const { run, rig, period } = document;
    const of = (value: Json | undefined) => (typeof value === 'string' ? value : null);
    const map = isMap(period) ? period : {};
    const [from, to] = [of(map.from), of(map.to)];
    const [first, last] = [from, to].map((time) => (time === null ? null : spanOf(time, 'Z')));
    const id = isMap(rig) ? of(rig.id) : null;
    const config = isMap(rig) ? of(rig.config) : null;
    return {
      path,
      run: of(run),
      rig: id === null || config === null ? id : `${id}@${config}`,
      from,
      to,
      span: first && last ? { from: first.from, to: last.to } : null,
      gauges: Array.isArray(map.gauges) ? map.gauges.filter((one) => typeof one === 'string') : [],
    };
  });
}

/** Whether two names may be those of one rig: where one of them leaves the configuration open, or the rig. */
export function mayBeRig(one: string | null, other: string | null): boolean {
  if (one === null || other === null || one === other) return true;
  const [[id, config], [otherId, otherConfig]] = [one.split('@'), other.split('@')];
  return id === otherId && (config === undefined || otherConfig === undefined);
}
