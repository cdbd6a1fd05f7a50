import { fixed, plain } from '../../quantity/amount.ts';
import { decimalsFor } from '../../quantity/format.ts';
import { compact, isHandy } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';

/** A number as fine as a picture over such a span can show it: to a hundredth of the span, or about that. */
export function shown(language: Language, value: number, span: number): string {
  if (!isHandy(value)) return language.number(compact(value));
  const fine = span > 1e-4 && Number.isFinite(span);
  return language.number(fine ? fixed(value, decimalsFor(span)) : plain(Number(value.toPrecision(3))));
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
