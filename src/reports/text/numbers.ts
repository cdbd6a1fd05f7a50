import { amount, fixed } from '../../quantity/amount.ts';
import { decimalsFor, significant } from '../../quantity/format.ts';
import type { Estimate, Interval } from '../../result/estimate.ts';

/** A value no finer than its uncertainty: the standard error, or what the interval says of it, with two digits. */
export function estimateText(estimate: Estimate): string {
  const { value, unit } = estimate;
  if (value === null || !Number.isFinite(value)) return 'none';
  const decimals = decimalsOf(estimate);
  if (decimals !== null) return amount(value, decimals, unit);
  return unit === '1' ? significant(value, 3) : `${significant(value, 3)} ${unit}`;
}

export function standardErrorText(estimate: Estimate): string {
  const { standardError, unit } = estimate;
  if (standardError === null) return '—';
  return amount(standardError, decimalsOf(estimate) ?? 2, unit);
}

/** `38.9 to 44.0 J`; an end that the data leave open is said in words. */
export function intervalText(estimate: Estimate): string {
  const { interval, unit } = estimate;
  if (interval === null) return '—';
  const decimals = decimalsOf(estimate) ?? threeDigits(interval);
  const say = (value: number) => amount(value, decimals, unit);
  const { lower, upper } = interval;
  if (interval.sides === 1) {
    if (lower !== null) return `at least ${say(lower)}`;
    return upper === null ? 'no limit' : `at most ${say(upper)}`;
  }
  if (lower === null && upper === null) return 'no limit on either side';
  if (lower === null) return `no lower limit, to ${say(upper!)}`;
  if (upper === null) return `from ${say(lower)}, no upper limit`;
  return `${fixed(lower, decimals)} to ${say(upper)}`;
}

function decimalsOf({ standardError, interval }: Estimate): number | null {
  if (standardError !== null && standardError > 0) return decimalsFor(standardError);
  const width = widthOf(interval);
  return width === null ? null : decimalsFor(width / 4);
}

/** Decimals that leave three significant digits of whichever end there is. */
function threeDigits({ lower, upper }: Interval): number {
  const size = Math.abs(lower ?? upper ?? 0);
  return size === 0 ? 2 : Math.max(0, 2 - Math.floor(Math.log10(size)));
}

function widthOf(interval: Interval | null): number | null {
  if (interval === null || interval.lower === null || interval.upper === null) return null;
  const width = interval.upper - interval.lower;
  return Number.isFinite(width) && width > 0 ? width : null;
}
