import { unzipSync } from 'fflate';
import { walkXml } from './xml.ts';

/** A workbook of a log is small: beyond this, unpacked, it is none, or made to exhaust the memory. */
const LARGEST = 200 * 1024 * 1024;

/** The parts of a workbook that say what its cells hold. */
export interface WorkbookParts {
  /** By their names, in the order of the tabs. */
  readonly sheets: ReadonlyMap<string, Uint8Array>;
  readonly strings: readonly string[];
  /** Whether a style shows a date, by its index. */
  readonly dateStyles: readonly boolean[];
  /** Days are counted from 1904 instead of from the end of 1899. */
  readonly is1904: boolean;
}

/**
 * Unpacks a workbook (ECMA-376, part 1, SpreadsheetML).
 *
 * @throws Error for an archive that is broken, too large or no workbook
 */
export function openWorkbook(bytes: Uint8Array): WorkbookParts {
  let size = 0;
  const files = unzipSync(bytes, {
    filter: ({ name, originalSize }) => {
      if (!/^xl\/.*\.(?:xml|rels)$/.test(name)) return false;
      size += originalSize;
      if (size > LARGEST) throw new Error(`more than ${LARGEST / 1024 / 1024} MiB unpacked`);
      return true;
    },
  });
  const book = files['xl/workbook.xml'];
  if (!book) throw new Error('no workbook in it');
  const targets = relationships(files['xl/_rels/workbook.xml.rels']);
  const sheets = new Map<string, Uint8Array>();
  let is1904 = false;
  walkXml(book, ({ name, attributes }) => {
    if (name === 'workbookPr') is1904 = attributes.date1904 === '1' || attributes.date1904 === 'true';
    if (name !== 'sheet') return;
    const part = files[targets.get(attributes['r:id'] ?? '') ?? ''];
    if (part && attributes.name !== undefined) sheets.set(attributes.name, part);
  });
  return {
    sheets,
    strings: sharedStrings(files['xl/sharedStrings.xml']),
    dateStyles: dateStyles(files['xl/styles.xml']),
    is1904,
  };
}

function relationships(part: Uint8Array | undefined): Map<string, string> {
  const targets = new Map<string, string>();
  if (!part) return targets;
  walkXml(part, ({ name, attributes }) => {
    const { Id, Target } = attributes;
    if (name !== 'Relationship' || Id === undefined || Target === undefined) return;
    targets.set(Id, Target.startsWith('/') ? Target.slice(1) : `xl/${Target}`);
  });
  return targets;
}

function sharedStrings(part: Uint8Array | undefined): string[] {
  const strings: string[] = [];
  if (!part) return strings;
  let text = '';
  let isPhonetic = false;
  walkXml(
    part,
    (element) => {
      if (element.name === 't' && !isPhonetic) text += element.text;
      if (element.name === 'rPh') isPhonetic = false;
      if (element.name === 'si') strings.push(text);
    },
    (name) => {
      if (name === 'si') text = '';
      if (name === 'rPh') isPhonetic = true;
    },
  );
  return strings;
}

/** Built-in number formats that show dates or times (ECMA-376, part 1, 18.8.30, and its language variants). */
function isBuiltInDate(id: number): boolean {
  return (id >= 14 && id <= 22) || (id >= 27 && id <= 36) || (id >= 45 && id <= 47) || (id >= 50 && id <= 58);
}

function dateStyles(part: Uint8Array | undefined): boolean[] {
  const custom = new Map<number, boolean>();
  const styles: boolean[] = [];
  if (!part) return styles;
  let isInCells = false;
  walkXml(
    part,
    ({ name }) => {
      if (name === 'cellXfs') isInCells = false;
    },
    (name, attributes) => {
      if (name === 'numFmt') custom.set(Number(attributes.numFmtId), showsDate(attributes.formatCode ?? ''));
      if (name === 'cellXfs') isInCells = true;
      if (name !== 'xf' || !isInCells) return;
      const id = Number(attributes.numFmtId ?? 0);
      styles.push(custom.get(id) ?? isBuiltInDate(id));
    },
  );
  return styles;
}

/** Whether a format has a day, month, year, hour or second outside quotes, escapes and colours. */
function showsDate(code: string): boolean {
  const plain = code.replaceAll(/"[^"]*"|\\.|_.|\*.|\[(?!h+\]|m+\]|s+\])[^\]]*\]/gi, '');
  return /[dmyhs]/i.test(plain.replaceAll(/general/gi, ''));
}
