import type { Trial } from './rule.ts';
import type { LastTrial } from './series-state.ts';

/** How often one specimen may be hit by a method of single looks. */
export interface Specimens {
  /** Hits that one specimen may take. */
  readonly perSpecimen: number;
  /** Whether a specimen that failed may be hit again at another site. */
  readonly goesOnAfterFailure: boolean;
}

/** Whether a specimen may not be hit again in this series. */
export function isUsedUp(last: LastTrial | Trial, specimens: Specimens): boolean {
  return last.hit >= specimens.perSpecimen || (last.outcome === 'failed' && !specimens.goesOnAfterFailure);
}
