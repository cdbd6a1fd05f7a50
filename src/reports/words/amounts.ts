import { amount, fixed, percent, plain } from '../../quantity/amount.ts';
import { decimalsFor, significant } from '../../quantity/format.ts';
import type { Estimate, Interval } from '../../result/estimate.ts';
import type { Language } from './language.ts';

/** A stated value as it was written, `45 J`, in the language's decimals. */
export function stated(language: Language, value: number, unit: string): string {
  const number = isHandy(value) ? plain(value) : compact(value);
  return language.number(unit === '1' || unit === '' ? number : `${number} ${unit}`);
}

/** Whether a number can be written out without a row of noughts. */
export function isHandy(value: number): boolean {
  const size = Math.abs(value);
  return size === 0 || (size >= 1e-4 && size < 1e7);
}

/** Three digits and an exponent: `4.5e10`. */
export function compact(value: number): string {
  return Number.isFinite(value) ? shortExponent(value.toExponential(2)) : '—';
}

/** `4.50e+10` without what says nothing: `4.5e10`. */
export function shortExponent(text: string): string {
  return text
    .replace(/(\.\d*?)0+(?=e)/, '$1')
    .replace(/\.(?=e)/, '')
    .replace('e+', 'e');
}

export function share(language: Language, fraction: number): string {
  return language.number(percent(fraction));
}

/** How finely a person should be told a value: to the first digit of what it is uncertain by, or to two. */
export function decimalsOf(
  interval: Interval | null,
  standardError: number | null,
  digits: 1 | 2,
): number | null {
  const width =
    interval !== null && interval.lower !== null && interval.upper !== null
      ? (interval.upper - interval.lower) / 2
      : standardError;
  if (width === null || !Number.isFinite(width) || width <= 0) return null;
  return Math.max(0, decimalsFor(width) - (digits === 1 ? 1 : 0));
}

/** The value of an estimate no finer than it is known; null where there is none. */
export function valueText(language: Language, estimate: Estimate, digits: 1 | 2): string | null {
  const { value, unit, interval, standardError } = estimate;
  if (value === null || !Number.isFinite(value)) return null;
  const decimals = decimalsOf(interval, standardError, digits);
  if (decimals !== null) return language.number(amount(value, decimals, unit));
  const text = significant(value, digits + 1);
  return language.number(unit === '1' ? text : `${text} ${unit}`);
}

/** `49 to 53 J`, with open ends in words; null where there is no interval. */
export function rangeText(language: Language, estimate: Estimate, digits: 1 | 2): string | null {
  const { interval, unit, standardError } = estimate;
  if (interval === null) return null;
  const { lower, upper } = interval;
  const decimals = decimalsOf(interval, standardError, digits);
  const say = (value: number) =>
    language.number(decimals === null ? significant(value, 3) : fixed(value, decimals));
  const { words } = language;
  const withUnit = (text: string) => (unit === '1' ? text : `${text} ${unit}`);
  if (lower !== null && upper !== null) return withUnit(words.between(say(lower), say(upper)));
  if (lower !== null) return words.from(withUnit(say(lower)));
  return upper === null ? words.open : words.upTo(withUnit(say(upper)));
}
