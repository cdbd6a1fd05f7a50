import { quote } from '../../problem/echo.ts';
import { readNumber } from '../number.ts';

/** How an export writes numbers. */
export interface NumberForm {
  /** Null where nothing says which mark is the decimal one. */
  readonly decimal: '.' | ',' | null;
  /** Null where nothing says that there is one. */
  readonly thousands: string | null;
}

const EITHER_WAY = /^[+-]?\d{1,3}(?:[.,]\d{3})+$/;
const SPACES = '[ \\u00a0\\u2009\\u202f]';
const QUOTES = "['’]";
const MARKED = /^[+-]?\d{1,3}(?:[.,' \u00a0\u2009\u202f’]\d{3})+(?:[.,]\d+)?$/;
const WITH_UNIT = /^[+-]?\d+(?:[.,]\d+)?\s*[A-Za-z°"µ/²%]+$/;

/**
 * The number that a cell of an export holds, or what is wrong with it and which key of the profile settles it.
 * `1.250` is 1.25 or 1250: it is read only where the profile says which.
 *
 * @param text without white space around it
 */
export function readFormed(text: string, { decimal, thousands }: NumberForm): number | { wrong: string } {
  if (decimal === null && (EITHER_WAY.test(text) || text.includes(','))) {
    const ways = EITHER_WAY.test(text) ? ', whose mark may be a decimal or a thousands one' : '';
    return {
      wrong: `found ${quote(text)}${ways}, expected the profile to say (export.decimal, export.thousands)`,
    };
  }
  const bare = thousands === null ? text : ungrouped(text, decimal ?? '.', thousands);
  const read = readNumber(bare, decimal ?? '.');
  if (typeof read === 'number') return read;
  const found = `found ${quote(text)}, expected a number`;
  if (WITH_UNIT.test(text)) {
    return { wrong: `${found} without its unit, which stands in the header (export.columns)` };
  }
  if (thousands === null && MARKED.test(text)) {
    return { wrong: `${found} without thousands marks, or the profile names them (export.thousands)` };
  }
  const other = decimal === ',' ? '.' : ',';
  if (text.includes(other)) {
    const mark = decimal === ',' ? 'comma' : 'point';
    return { wrong: `${found} with a decimal ${mark}, as the profile says (export.decimal)` };
  }
  return { wrong: found };
}

/** Without the marks, where they stand between groups of three digits; else as it is. */
export function ungrouped(text: string, decimal: '.' | ',', thousands: string): string {
  const key = `${decimal}${thousands}`;
  let grouping = GROUPINGS.get(key);
  if (!grouping) {
    const mark = thousands === ' ' ? SPACES : thousands === "'" ? QUOTES : `\\${thousands}`;
    const grouped = new RegExp(`^[+-]?\\d{1,3}(?:${mark}\\d{3})+(?:\\${decimal}\\d+)?$`);
    grouping = { grouped, mark: new RegExp(mark, 'g') };
    GROUPINGS.set(key, grouping);
  }
  return grouping.grouped.test(text) ? text.replaceAll(grouping.mark, '') : text;
}

/** Patterns by decimal and thousands mark: there are few, and making one costs more than using it. */
const GROUPINGS = new Map<string, { readonly grouped: RegExp; readonly mark: RegExp }>();
