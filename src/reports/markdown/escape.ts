import { echo } from '../../problem/echo.ts';

/**
 * Text as it may stand in Markdown: whatever could begin a link, a picture, HTML, emphasis, code, a table cell, a
 * formula, a mention or an entity is taken literally; control characters are shown, length is bounded.
 */
export function inline(text: string, most: number): string {
  return echo(text, most)
    .replace(/[\\`*_[\]<>|~$@!#{}]/g, (sign) => `\\${sign}`)
    .replace(/&(?=#?\w)/g, '\\&')
    .replace(/:(?=\/\/)/g, '\\:')
    .replace(/\bwww\./gi, (found) => `${found.slice(0, 3)}\\.`);
}

/** The same at the begin of a line, where a number, a dash or a plus would begin a list, and signs a rule or heading. */
export function atLineStart(text: string, most: number): string {
  return inline(text.trimStart(), most)
    .replace(/^(\d{1,9})([.)])/u, '$1\\$2')
    .replace(/^[-+=:]/u, (sign) => `\\${sign}`);
}
