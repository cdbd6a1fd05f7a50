import { fixed } from '../../quantity/amount.ts';
import { decimalsFor, significant } from '../../quantity/format.ts';
import type { Simulated } from '../../result/simulation.ts';

/** A share with its error, in per cent: `93.2 ± 0.3`. */
export function shareText({ value, error }: Simulated): string {
  const decimals = Math.min(2, Math.max(1, decimalsFor(100 * error) - 1));
  return `${fixed(100 * value, decimals)} ± ${fixed(100 * error, decimals)}`;
}

/** A number with its error, the error with one digit. */
export function withError(found: Simulated | null): string {
  if (found === null) return 'none';
  const decimals = Math.max(0, decimalsFor(found.error) - 1);
  return `${fixed(found.value, decimals)} ± ${fixed(found.error, decimals)}`;
}

export function percentText(share: number): string {
  return `${fixed(100 * share, share > 0 && share < 0.1 ? 2 : 1)} %`;
}

export function joule(value: number): string {
  return `${Number(significant(value, 4))} J`;
}
