import { closeSync, openSync, readSync } from 'node:fs';
import { textOf } from '../code-page.ts';
import { scanQuoted } from '../quoted.ts';
import { Row } from '../row.ts';
import type { SampleLog } from './head.ts';

/**
 * The column (one-based, in characters) at which a cell of a row begins, for messages.
 *
 * @param from byte at which the row begins; `to` is behind its line end
 */
export function placeOfCell(
  { path, layout }: Pick<SampleLog, 'path' | 'layout'>,
  from: number,
  to: number,
  index: number,
): number | null {
  const bytes = Buffer.alloc(to - from);
  const handle = openSync(path, 'r');
  try {
    readSync(handle, bytes, 0, bytes.length, from);
  } finally {
    closeSync(handle);
  }
  const { encoding, separator } = layout.dialect;
  const text = textOf(bytes, encoding).replace(/[\r\n]+$/u, '');
  const { cells, starts } = scanQuoted(text, 0, separator);
  return new Row({ line: 1, text, cells, starts, isEnded: true, isCut: false }).place(index).column;
}
