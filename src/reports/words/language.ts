import { english, type Words } from './english.ts';
import { german } from './german.ts';

/** The languages of a report. Data files never change with it. */
export type LanguageCode = 'en' | 'de';

/** The words of a language, and how it writes numbers. */
export interface Language {
  readonly code: LanguageCode;
  readonly words: Words;
  /** Numbers within a text made of our own numbers, with the language's decimal mark. */
  number(text: string): string;
}

export const languages: Readonly<Record<LanguageCode, Language>> = {
  en: { code: 'en', words: english, number: (text) => text },
  de: { code: 'de', words: german, number: (text) => text.replace(/(?<=\d)\.(?=\d)/g, ',') },
};
