import { counted } from '../quantity/format.ts';
import type { ConformanceStatus } from './deviation.ts';
import type { DeviationList } from './deviation-list.ts';

/** What was left out of an estimate, and of how much. */
export interface LeftOut {
  readonly dropsOut: number;
  readonly drops: number;
  /** Specimens of which nothing is left in the estimate. */
  readonly specimensOut: number;
  readonly specimens: number;
}

/**
 * How a run stands to its protocol (CONTRACT, conformance.status): `invalid` only where a deviation invalidates the
 * run or the comparison, or where more than a fifth of the drops or a third of the specimens are out; `deviating`
 * from the first minor deviation or drop left out; `conforming` with notes at most. `why` is null for the latter two.
 */
export function conformanceStatus(
  deviations: Pick<DeviationList, 'heaviest' | 'condemning'>,
  out: LeftOut,
): { readonly status: ConformanceStatus; readonly why: string | null } {
  const why = reasonsToReject(deviations, out);
  if (why.length > 0) return { status: 'invalid', why: `${why.join('; ')}: no estimate can be trusted.` };
  const isClean = out.dropsOut === 0 && (deviations.heaviest === null || deviations.heaviest === 'note');
  return { status: isClean ? 'conforming' : 'deviating', why: null };
}

function reasonsToReject({ condemning }: Pick<DeviationList, 'condemning'>, out: LeftOut): string[] {
  const why: string[] = [];
  if (condemning !== null) why.push(`${condemning} invalidates the whole run`);
  if (out.dropsOut * 5 > out.drops) {
    why.push(`${out.dropsOut} of ${counted(out.drops, 'drop')} are left out, more than a fifth`);
  }
  if (out.specimensOut * 3 > out.specimens) {
    why.push(`${out.specimensOut} of ${counted(out.specimens, 'specimen')} are left out, more than a third`);
  }
  return why;
}
