import { amount, decimalsToTell } from '../quantity/amount.ts';
import { decimalsFor } from '../quantity/format.ts';
import type { Evidence } from './evidence.ts';

/**
 * A number of the evidence as a sentence shows it: as fine as its uncertainty makes sensible, and finer where it
 * would else look like the limit that it misses or passes.
 *
 * @param beside the number it is compared with.
 */
export function said(value: number, beside: number, evidence: Evidence, unit: string): string {
  return amount(value, decimalsToTell(value, beside, decimalsFor(scaleOf(evidence))), unit);
}

/** About one standard error, however it can be had; 0 where it cannot. */
function scaleOf({ standardError, lower, upper, estimate }: Evidence): number {
  if (standardError !== null) return standardError;
  if (lower !== null && upper !== null) return (upper - lower) / 4;
  const end = lower ?? upper;
  return end === null || estimate === null ? 0 : Math.abs(estimate - end) / 2;
}
