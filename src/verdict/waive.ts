import type { Criterion, Waiver } from '../documents/kinds.ts';
import { echo } from '../problem/echo.ts';
import type { Verdict } from '../result/criterion.ts';

/** What waivers make of a verdict. */
export interface Waived {
  readonly verdict: Verdict;
  /** The one that counts; null where none does. */
  readonly waiver: Waiver | null;
  /** Why each of the others does not: half sentences. */
  readonly notes: readonly string[];
}

/**
 * Applies the waivers whose scope is this very criterion. Only what failed or stayed undecided can be waived: what was
 * not tested or is not valid has to be tested. An expired waiver counts as none, and so does one of a safety criterion
 * whose owner has not the safety role. Of several that count, the one that ends last stands.
 *
 * @param asOf the day, such as 2026-03-16; a waiver counts on its last day.
 */
export function waive(
  criterion: Pick<Criterion, 'safety'>,
  verdict: Verdict,
  waivers: readonly Waiver[],
  asOf: string,
): Waived {
  const notes: string[] = [];
  const counting: Waiver[] = [];
  for (const waiver of waivers) {
    const obstacle = obstacleTo(criterion, verdict, waiver, asOf);
    if (obstacle === null) counting.push(waiver);
    else if (obstacle !== '') notes.push(`waiver ${echo(waiver.id)} counts as none: ${obstacle}`);
  }
  const [last = null] = counting.toSorted((a, b) => (a.expires < b.expires ? 1 : -1));
  return { verdict: last === null ? verdict : 'waived', waiver: last, notes };
}

/** Why a waiver does not count; empty where there is nothing to waive, null where it counts. */
function obstacleTo(
  { safety }: Pick<Criterion, 'safety'>,
  verdict: Verdict,
  { expires, role }: Waiver,
  asOf: string,
): string | null {
  if (expires < asOf) return `it ended on ${expires}`;
  if (safety && role !== 'safety') return `a safety criterion needs the role safety, and it has ${role}`;
  if (verdict === 'not-tested') return 'what was not tested cannot be waived';
  if (verdict === 'invalid') return 'evidence that is not valid cannot be waived';
  return verdict === 'fail' || verdict === 'inconclusive' ? null : '';
}
