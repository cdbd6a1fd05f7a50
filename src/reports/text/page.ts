import { Chalk, type ChalkInstance } from 'chalk';
import { echo } from '../../problem/echo.ts';
import type { Verdict } from '../../result/criterion.ts';
import { wrap } from './wrap.ts';

/** How a text report is to be set; nothing of it is read from the environment. */
export interface TextOptions {
  /** Of tirelab itself: stands in the report. */
  readonly version: string;
  /** Columns that no line exceeds; below 40 is taken as 40. */
  readonly width: number;
  /** Colour level: 0 gives no escape character at all. */
  readonly colour: 0 | 1 | 2 | 3;
  /** Whether the reader's terminal shows more than ASCII. */
  readonly unicode: boolean;
}

/** The sheet that the sections of a report are set on. */
export interface Page {
  readonly width: number;
  readonly unicode: boolean;
  readonly ink: ChalkInstance;
  /** Filled is failed, hollow is survived, as the statistical literature draws them. */
  readonly marks: { readonly failed: string; readonly survived: string; readonly leftOut: string };
}

export function pageOf(options: TextOptions): Page {
  return {
    width: Math.max(40, Math.floor(options.width)),
    unicode: options.unicode,
    ink: new Chalk({ level: options.colour }),
    marks: options.unicode
      ? { failed: '●', survived: '○', leftOut: '×' }
      : { failed: '#', survived: 'o', leftOut: 'x' },
  };
}

/** Foreign or composed text as it may stand on the page: no control or direction characters, bounded, ASCII if asked. */
export function clean(page: Page, text: string, most = 60): string {
  const safe = echo(text, most);
  return page.unicode ? safe : safe.replace(OUR_SIGNS, (sign) => IN_ASCII[sign]!);
}

/** An id, a name or a path that a document or a log brought: long enough to be recognised, never longer. */
export function named(text: string): string {
  return text.trim() === '' ? '""' : echo(text, 48);
}

/** `id@version`, of whatever has a version, a revision or a configuration. */
export function versioned(id: string, version: string | null): string {
  return version === null ? named(id) : `${named(id)}@${named(version)}`;
}

/** A paragraph, wrapped to the page: `hanging` columns before each line after the first. */
export function paragraph(page: Page, text: string, indent = 2, hanging = indent): string[] {
  const most = 1500;
  const first = wrap(clean(page, text, most), page.width - indent, page.width - hanging);
  return first.map((line, i) => ' '.repeat(i === 0 ? indent : hanging) + line);
}

/** A section: its heading, its lines, nothing where there are none. */
export function section(page: Page, heading: string, lines: readonly string[]): string[] {
  if (lines.length === 0) return [];
  return ['', ...paragraph(page, heading, 0).map((line) => page.ink.bold(line)), ...lines];
}

/** A first letter in upper case and a full stop: half sentences of the result become sentences. */
export function sentence(text: string): string {
  const trimmed = text.trim();
  const closed = /[.!?]$/u.test(trimmed) ? trimmed : `${trimmed}.`;
  return closed.replace(/^\p{Ll}(?=[\p{L} ])/u, (letter) => letter.toUpperCase());
}

/** A verdict in its colour; the word says everything that the colour says. */
export function inVerdictColour(page: Page, verdict: Verdict, text: string): string {
  if (verdict === 'pass') return page.ink.green(text);
  return verdict === 'fail' ? page.ink.red(text) : page.ink.yellow(text);
}

const IN_ASCII: Readonly<Record<string, string>> = {
  '—': '-',
  '–': '-',
  '…': '...',
  '·': '*',
  '×': 'x',
  '²': '2',
  '±': '+-',
  '°': 'deg ',
  '√': 'sqrt ',
  '≤': '<=',
  '≥': '>=',
  '−': '-',
  '→': '->',
};
const OUR_SIGNS = new RegExp(`[${Object.keys(IN_ASCII).join('')}]`, 'gu');
