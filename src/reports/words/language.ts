import { CATALOGUE } from '../../conformance/catalogue/catalogue.ts';
import { english, type Words } from './english.ts';
import { german } from './german.ts';
import { germanDeviation, germanRecord } from './german-record.ts';
import { GERMAN_TITLES } from './german-titles.ts';
import type { Line } from './line.ts';

/** The languages of a report. Data files never change with it. */
export type LanguageCode = 'en' | 'de';

/** The words of a language, and how it writes numbers. */
export interface Language {
  readonly code: LanguageCode;
  readonly words: Words;
  /** Numbers within a text made of our own numbers, with the language's decimal mark. */
  number(text: string): string;
  /** A sentence of a result, which is English there; as it stands, and marked so, where the language has no words for it. */
  record(sentence: string): Line;
  /** What a deviation says: what was found, and what it does to the estimate. */
  deviation(of: { readonly code: string; readonly message: string }): Line;
  /** The title of a code of the catalogue. */
  titleOf(code: string): string | null;
}

export const languages: Readonly<Record<LanguageCode, Language>> = {
  en: {
    code: 'en',
    words: english,
    number: (text) => text,
    record: (text) => ({ text }),
    deviation: ({ message }) => ({ text: message }),
    titleOf: (code) => CATALOGUE.get(code)?.title ?? null,
  },
  de: {
    code: 'de',
    words: german,
    number: (text) => text.replace(/(?<=\d)\.(?=\d)/g, ','),
    record: germanRecord,
    deviation: germanDeviation,
    titleOf: (code) => GERMAN_TITLES.get(code) ?? CATALOGUE.get(code)?.title ?? null,
  },
};
