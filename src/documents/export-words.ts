import { DAMAGES, damagesIn, ZONES } from '../conformance/damage.ts';
import { quote } from '../problem/echo.ts';
import { didYouMean } from '../problem/suggest.ts';
import type { Path } from './yaml-value.ts';

/** One word of a rig or several, as a profile gives them. */
export type Words = string | readonly string[] | undefined;
export type Report = (path: Path, code: string, message: string) => void;

export const OUTCOME_VALUES = {
  failed: 'failed',
  survived: 'survived',
  'not-evaluable': 'not-evaluable',
} as const;
export const VALID_VALUES = { yes: true, no: false } as const;
export const CATCHER_VALUES = { 'in-time': 'in-time', early: 'early', missed: 'missed' } as const;

export function listOf(value: Words): readonly string[] {
  if (value === undefined) return [];
  return typeof value === 'string' ? [value] : value;
}

/** Words by what they mean; a word that means two things is found. */
export function wordMap<Key extends string, Value>(
  block: Partial<Record<Key, Words>> | undefined,
  values: Readonly<Record<Key, Value>>,
  name: string,
  at: Report,
): Map<string, Value> | null {
  if (block === undefined) return null;
  const map = new Map<string, Value>();
  for (const key of Object.keys(values) as Key[]) {
    for (const written of listOf(block[key])) {
      const word = written.trim().normalize('NFC');
      if (map.has(word) && map.get(word) !== values[key]) {
        at([name, key], 'two-ways', `found ${quote(word)} under two meanings, expected it once; remove one`);
      }
      map.set(word, values[key]);
    }
  }
  // The words of the plain form mean what they say, unless the rig means something else by them.
  for (const key of Object.keys(values) as Key[]) if (!map.has(key)) map.set(key, values[key]);
  return map;
}

/** Finds a word that means something, and no value too. */
export function checkSentinels(
  sentinels: readonly string[],
  words: Readonly<Record<string, ReadonlyMap<string, unknown> | null>>,
  at: Report,
): void {
  for (const [key, meanings] of Object.entries(words)) {
    const both = sentinels.find((word) => meanings?.has(word.trim()));
    if (both === undefined) continue;
    const message = `found ${quote(both)} as no value and as a word of export.${key}, expected it once; give the sentinel to its column (export.columns)`;
    at(['sentinels'], 'two-ways', message);
  }
}

/** The codes of damages by the lab's words. */
export function damageWords(
  block: Readonly<Record<string, Words>> | undefined,
  at: Report,
): ReadonlyMap<string, string> | null {
  if (block === undefined) return null;
  const codes = new Map<string, string>();
  for (const [key, written] of Object.entries(block)) {
    const [found] = damagesIn(key);
    const isCode = found !== undefined && damagesIn(key).length === 1 && DAMAGES.has(found.code);
    if (!isCode || (found.zone !== null && !(ZONES as readonly string[]).includes(found.zone))) {
      const near = didYouMean(found?.code ?? key, [...DAMAGES.keys()]);
      const expected = `expected a code such as pinch-two-cuts, with its zone if it has one (${ZONES.join(', ')})`;
      at(['damages', key], 'unknown-damage', `found ${quote(key)}, ${expected}${near}`);
      continue;
    }
    for (const word of listOf(written).map((text) => text.trim().normalize('NFC'))) {
      if (codes.has(word) && codes.get(word) !== key) {
        at(
          ['damages', key],
          'two-ways',
          `found ${quote(word)} under two meanings, expected it once; remove one`,
        );
      }
      codes.set(word, key);
    }
  }
  return codes;
}
