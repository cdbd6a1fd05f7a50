import type { Verdict } from '../../result/criterion.ts';
import type { Photo } from '../../result/report.ts';
import type { Figure } from '../charts/figure.ts';
import type { Language } from '../words/language.ts';
import type { Line } from '../words/line.ts';

/** A cell of a table; numbers stand at the right of theirs. */
export interface Cell {
  readonly text: string;
  readonly verdict?: Verdict | undefined;
  /** In the words of the record, which are English. */
  readonly isRecord?: boolean | undefined;
  /** A hash: small, in a fixed width. */
  readonly isHash?: boolean | undefined;
  /** A code or a word of our own, which is not broken. */
  readonly isWhole?: boolean | undefined;
  /** Says that something is missing. */
  readonly isMissing?: boolean | undefined;
}

export interface Column {
  readonly head: string;
  readonly align?: 'right' | undefined;
}

/** A piece of a report, before it is set as HTML or as Markdown. All text is plain: escaping is for whoever sets it. */
export type Block =
  | { readonly kind: 'heading'; readonly level: 2 | 3; readonly text: string }
  | {
      readonly kind: 'paragraph';
      readonly text: string;
      readonly tone?: 'lead' | 'small' | undefined;
      readonly isRecord?: boolean | undefined;
    }
  | { readonly kind: 'verdict'; readonly verdict: Verdict; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly Line[] }
  | {
      readonly kind: 'table';
      /** Says what the table is of, to whoever cannot see it. */
      readonly caption: string;
      readonly columns: readonly Column[];
      readonly rows: readonly (readonly Cell[])[];
      /** What stands below it, such as how many rows are not shown. */
      readonly below?: string | undefined;
    }
  | { readonly kind: 'terms'; readonly rows: readonly Term[] }
  | { readonly kind: 'figure'; readonly figure: Figure }
  | { readonly kind: 'photos'; readonly photos: readonly Photo[] }
  | {
      readonly kind: 'columns';
      readonly columns: readonly (readonly Block[])[];
      /** Whether the first takes two thirds of the width. */
      readonly isFirstWide?: boolean | undefined;
    };

/** An item with its content; null is missing, and said to be. */
export interface Term {
  readonly term: string;
  readonly text: string | null;
}

/** A report, ready to be set. */
export interface ReportDocument {
  readonly language: Language;
  readonly kind: 'page' | 'full';
  readonly title: string;
  /** What tells this report from any other; stands on every page. */
  readonly name: string;
  readonly subtitle: string;
  readonly blocks: readonly Block[];
  /** The end mark. */
  readonly end: string;
}

export const heading = (text: string, level: 2 | 3 = 2): Block => ({ kind: 'heading', level, text });
export const paragraph = (text: string, tone?: 'lead' | 'small'): Block => ({
  kind: 'paragraph',
  text,
  tone,
});
/** A figure, where there is one to be drawn. */
export const figure = (drawn: Figure | null): Block[] =>
  drawn === null ? [] : [{ kind: 'figure', figure: drawn }];
/** A list, where it has items. */
export const list = (items: readonly string[]): Block[] =>
  items.length === 0 ? [] : [{ kind: 'list', items: items.map((text) => ({ text })) }];
/** Sentences of a result, which are English, in the words of the language as far as it has them. */
export const records = (sentences: readonly string[], { record }: Language): Block[] =>
  sentences.length === 0 ? [] : [{ kind: 'list', items: sentences.map(record) }];
