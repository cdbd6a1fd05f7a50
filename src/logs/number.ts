import { quote } from '../problem/echo.ts';
import type { Dialect } from './dialect.ts';

const DECIMAL: Readonly<Record<Dialect['decimal'], RegExp>> = {
  '.': /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/,
  ',': /^[+-]?(?:\d+,?\d*|,\d+)(?:[eE][+-]?\d+)?$/,
};
const DECIMAL_COMMA = /^[+-]?\d+,\d+$/;
const THOUSANDS = /^[+-]?\d{1,3}(?:[ \u00a0\u202f'’]\d{3})+(?:[.,]\d+)?$/;

/**
 * The number that a cell holds, or what is wrong with it: NaN, infinity, hexadecimal, a number too large to be
 * held, thousands marks and the other decimal mark are none.
 *
 * @param text without white space around it
 */
export function readNumber(text: string, decimal: Dialect['decimal']): number | { wrong: string } {
  if (DECIMAL[decimal].test(text)) {
    const value = Number(decimal === ',' ? text.replace(',', '.') : text);
    if (Number.isFinite(value)) return value;
  }
  return { wrong: `found ${quote(text)}, expected a number${hint(text, decimal)}` };
}

function hint(text: string, decimal: Dialect['decimal']): string {
  if (decimal === '.' && DECIMAL_COMMA.test(text)) {
    return ' with a decimal point; where the rig writes a decimal comma, its profile names it (export.decimal)';
  }
  if (THOUSANDS.test(text)) return ' without thousands marks';
  return '';
}
