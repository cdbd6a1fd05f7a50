import { read, type WorkBook } from '@e965/xlsx';
import { unzipSync } from 'fflate';

/** A workbook of a log is small: beyond this, unpacked, it is none, or made to exhaust the memory. */
const LARGEST = 200 * 1024 * 1024;

/**
 * Opens a workbook (ECMA-376, part 1, SpreadsheetML).
 *
 * @throws Error for an archive that is broken, too large or no workbook
 */
export function openWorkbook(bytes: Uint8Array): WorkBook {
  refuseLarge(bytes);
  const book = read(bytes, {
    type: 'buffer',
    dense: true,
    cellNF: true,
    cellFormula: false,
    cellHTML: false,
  });
  if (book.bookType !== 'xlsx' && book.bookType !== 'xlsm') throw new Error('no workbook in it');
  return book;
}

/** The archive's list of what is in it is looked at before any of it is unpacked. */
function refuseLarge(bytes: Uint8Array): void {
  let size = 0;
  unzipSync(bytes, {
    filter: ({ originalSize }) => {
      size += originalSize;
      return false;
    },
  });
  if (size > LARGEST) throw new Error(`more than ${LARGEST / 1024 / 1024} MiB unpacked`);
}
