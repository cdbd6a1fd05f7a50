import { normal } from '../statistics/laws/normal.ts';
import type { Acceptance } from './limit.ts';

/**
 * The chance that the true value lies in the range, given the estimate and its standard uncertainty u, for a normal
 * law of belief and no knowledge beforehand: Φ((y − T)/u) for a lower limit T, Φ((T − y)/u) for an upper one, and
 * for a range what both tails leave (JCGM 106:2012, clause 7, as recalled; see tests/reference).
 */
export function conformanceProbability(range: Acceptance, estimate: number, uncertainty: number): number {
  const { lower, upper } = range;
  const aboveLower = lower === null ? 1 : normal.sf((lower - estimate) / uncertainty);
  if (upper === null) return aboveLower;
  const aboveUpper = normal.sf((upper - estimate) / uncertainty);
  if (lower === null) return normal.cdf((upper - estimate) / uncertainty);
  return Math.max(0, aboveLower - aboveUpper);
}

/**
 * The width of a guard band that holds the risk of a false acceptance at a limit to 1 − confidence: z·u
 * (JCGM 106:2012, clause 8; 95 % gives z = 1.645).
 */
export function guardWidth(confidence: number, uncertainty: number): number {
  return normal.quantile(confidence) * uncertainty;
}
