import { fixed } from '../../quantity/amount.ts';
import { decimalsFor, significant } from '../../quantity/format.ts';
import type { Language } from '../words/language.ts';

/** A number as fine as a picture over such a span can show it. */
export function shown(language: Language, value: number, span: number): string {
  const decimals = span > 0 && Number.isFinite(span) ? Math.max(0, decimalsFor(span) - 1) : null;
  return language.number(decimals === null ? significant(value, 3) : fixed(value, Math.min(decimals + 1, 9)));
}

/** Least and greatest of many numbers, without spreading them over a stack. */
export function ends(values: Iterable<number>): { readonly least: number; readonly most: number } {
  let [least, most] = [Infinity, -Infinity];
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return { least, most };
}
