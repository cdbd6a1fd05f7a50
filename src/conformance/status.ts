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

type Found = Pick<DeviationList, 'heaviest' | 'condemning'>;

const COMPARISON =
  'invalidates the comparison: each sample stands by itself, and no verdict may be given on them together.';

/** A verdict waits for its cause to be settled; numbers are given until then, and called provisional. */
const PENDING = 'DROP-30';

/**
 * How a run stands to its protocol (CONTRACT, conformance.status): `invalid` only where a deviation invalidates the
 * run or the comparison, or where more than a fifth of the drops or a third of the specimens are out; `deviating`
 * from the first minor deviation or drop left out; `conforming` with notes at most. `why` is null for the latter two.
 *
 * @param samples what is out of each sample of the run
 */
export function conformanceStatus(
  deviations: Found,
  ...samples: readonly LeftOut[]
): { readonly status: ConformanceStatus; readonly why: string | null } {
  const condemned = [...deviations.condemning];
  const ofRun = condemned.filter(([code, scope]) => scope === 'run' && code !== PENDING);
  const broken = [
    ...ofRun.map(([code]) => `${code} invalidates the whole run`),
    ...samples.flatMap(tooMuchOut),
  ];
  const why = [
    ...(broken.length > 0 ? [`${broken.join('; ')}: no estimate can be trusted.`] : []),
    ...condemned.filter(([, scope]) => scope === 'comparison').map(([code]) => `${code} ${COMPARISON}`),
    ...(deviations.condemning.has(PENDING)
      ? [`${PENDING} waits to be settled: every number is provisional.`]
      : []),
  ];
  if (why.length > 0) return { status: 'invalid', why: why.join(' ') };
  const isClean =
    samples.every(({ dropsOut }) => dropsOut === 0) &&
    (deviations.heaviest === null || deviations.heaviest === 'note');
  return { status: isClean ? 'conforming' : 'deviating', why: null };
}

/**
 * Why a sample may not be estimated at all; null where it may. A comparison that is not allowed leaves each sample an
 * estimate of its own, and what waits to be settled is given as provisional.
 */
export function refusalOf({ condemning }: Pick<Found, 'condemning'>, sample: LeftOut): string | null {
  const run = [...condemning].filter(([code, scope]) => scope === 'run' && code !== PENDING);
  const why = [...run.map(([code]) => `${code} invalidates the whole run`), ...tooMuchOut(sample)];
  return why.length === 0 ? null : `${why.join('; ')}: no estimate can be trusted.`;
}

function tooMuchOut(out: LeftOut): string[] {
  const why: string[] = [];
  if (out.dropsOut * 5 > out.drops) {
    why.push(`${out.dropsOut} of ${counted(out.drops, 'drop')} are left out, more than a fifth`);
  }
  if (out.specimensOut * 3 > out.specimens) {
    why.push(`${out.specimensOut} of ${counted(out.specimens, 'specimen')} are left out, more than a third`);
  }
  return why;
}
