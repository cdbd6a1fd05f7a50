import type { Encoding } from './dialect.ts';
import type { Place } from './finding.ts';
import type { QuotedRow } from './quoted.ts';
import { placeIn } from './row.ts';

/** Characters of one row, line breaks inside quotes included: beyond it, memory is not spent but an error said. */
export const LONGEST_ROW = 1_000_000;

/** What keeps a stretch of text from being rows. */
export interface Fault extends Place {
  readonly code: string;
  readonly message: string;
  /** Whether the rows after it cannot be told any more. */
  readonly isFatal: boolean;
}

/**
 * What is wrong with the form of one row, or null.
 *
 * A quote that never closes, or closes at the opening one of another cell lines below, makes rows that are none:
 * fatal, at the place where it opened. Text behind a closing quote on the same line spoils that row alone. A quote
 * that is open where the last line of the file breaks off is a line cut short, and no fault.
 *
 * @param text the row as written
 * @param quoted the row's cells where some are quoted
 * @param line the line on which the row begins
 */
export function rowFault(text: string, quoted: QuotedRow | null, line: number): Fault | null {
  const isTooLong = text.length > LONGEST_ROW;
  if (quoted && quoted.open !== null) {
    const spansLines = /[\r\n]/.test(text.slice(quoted.open, quoted.stray ?? text.length));
    if (spansLines || (isTooLong && quoted.stray === null)) {
      const message =
        'a quoted cell opens here and does not close; close it, and write a quote inside a quoted cell twice';
      return { ...placeIn(text, quoted.open, line), code: 'unclosed-quote', message, isFatal: true };
    }
  }
  if (isTooLong) {
    const message = `found a row of more than ${LONGEST_ROW} characters, expected a log with one drop a line`;
    return { line, column: LONGEST_ROW + 1, code: 'row-too-long', message, isFatal: true };
  }
  if (quoted && quoted.stray !== null) {
    const message =
      'found text behind a closing quote, expected the next cell or the end of the line; write a quote inside a ' +
      'quoted cell twice';
    return { ...placeIn(text, quoted.stray, line), code: 'text-after-quote', message, isFatal: false };
  }
  return null;
}

/** @param isInHeader whether no row was read before it */
export function nulFault(place: Place, isInHeader: boolean): Fault {
  const message = isInHeader
    ? 'found a NUL byte before the end of the header, expected text in UTF-8: this is another code page, or no log'
    : 'found NUL bytes with text behind them, expected them at the end of a file only, where a crash leaves them; ' +
      'give the parts before and after the crash as two logs';
  return { ...place, code: 'nul-bytes', message, isFatal: true };
}

export function encodingFault(place: Place, badByte: number | 'unknown', encoding: Encoding): Fault {
  const what =
    badByte === 'unknown'
      ? `bytes that are no ${encoding}`
      : `byte 0x${badByte.toString(16).toUpperCase().padStart(2, '0')}`;
  const message =
    encoding === 'utf-8'
      ? `found ${what}, expected UTF-8; save the log as UTF-8, or if the rig writes another code page, its ` +
        'profile names it (export.encoding)'
      : `found ${what}, expected ${encoding} as the profile says; name the rig's code page (export.encoding)`;
  return { ...place, code: 'wrong-encoding', message, isFatal: true };
}
