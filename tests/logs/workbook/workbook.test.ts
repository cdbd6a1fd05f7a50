import { Readable } from 'node:stream';
import { utils, write } from '@e965/xlsx';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { workbook } from '../../../fixtures/workbook.mjs';
import { zip } from '../../../fixtures/zip.mjs';
import { readDropLog } from '../../../src/logs/drops.ts';
import { InputError } from '../../../src/problem/problem.ts';
import { profileOf } from '../export/profile-of.ts';

// What a cell holds is ECMA-376, part 1, 18.3.1.4 and 18.18.11; serial days from memory: 46090 is 9 March 2026.
const HEADER = ['specimen', 'height [mm]', 'outcome', 'time'];
const read = (bytes: Buffer, block = '{ encoding: utf-8 }') =>
  readDropLog(Readable.from([bytes]), profileOf(block));
const problemsOf = async (bytes: Buffer, block?: string) => {
  const error = await read(bytes, block).then(
    () => null,
    (thrown: unknown) => thrown,
  );
  expect(error).toBeInstanceOf(InputError);
  return (error as InputError).problems;
};

describe('a workbook', () => {
  it.each([false, true])('gives numbers, formulas, dates and texts (days from 1904: %s)', async (is1904) => {
    const rows = [
      HEADER,
      ['T-1', 500.5, 'failed', new Date('2026-03-09T08:06:00Z')],
      ['T-2', { formula: '19*25', value: 475 }, 'survived', new Date('2026-03-09T08:12:30Z')],
    ];
    const log = await read(
      workbook({ A: rows }, { is1904 }),
      '{ decimal: ",", separator: ";", time: { format: date-cells, zone: "+01:00" } }',
    );
    expect(log.drops).toMatchObject([
      { line: 2, specimen: 'T-1', height: 500.5, outcome: 'failed', time: '2026-03-09T08:06:00+01:00' },
      { line: 3, specimen: 'T-2', height: 475, outcome: 'survived', time: '2026-03-09T08:12:30+01:00' },
    ]);
    expect(log.import.sheet).toBe('A');
  });

  it('names the cell of a problem', async () => {
    const rows = [
      [],
      HEADER,
      ['T-1', { error: '#DIV/0!' }, 'failed'],
      [new Date('2026-10-02'), 475, 'P'],
      ['T-3', 'high', 'ok'],
    ];
    const found = await problemsOf(workbook({ Data: rows }), '{ preamble: until-header }');
    expect(
      found.map(({ line, column, code, message }) => `${line}:${column} ${code} ${message.slice(0, 8)}`),
    ).toEqual([
      '3:2 damaged-cell Data!B3:',
      '4:1 damaged-cell Data!A4:',
      '4:3 unknown-outcome Data!C4:',
      '5:2 not-a-number Data!B5:',
      '5:3 unknown-outcome Data!C5:',
    ]);
  });

  it('must say which of its sheets is meant', async () => {
    const bytes = workbook({ A: [HEADER, ['T-1', 500, 'failed']], B: [HEADER, ['T-2', 475, 'survived']] });
    expect(await problemsOf(bytes)).toMatchObject([
      { code: 'which-sheet', message: expect.stringMatching(/"A", "B".*export\.sheet/) },
    ]);
    expect(await problemsOf(bytes, '{ sheet: C }')).toMatchObject([{ code: 'no-such-sheet' }]);
    expect((await read(bytes, '{ sheet: B }')).drops).toMatchObject([{ specimen: 'T-2' }]);
  });

  it('is refused where the archive is none, holds something else, or is cut', async () => {
    const whole = workbook({ A: [HEADER, ['T-1', 500, 'failed']] });
    for (const bytes of [
      zip({ 'a.txt': 'x' }),
      whole.subarray(0, whole.length - 40),
      Buffer.from('PK\u0003\u0004nothing'),
    ]) {
      expect(await problemsOf(bytes)).toMatchObject([{ line: null, code: 'not-a-workbook' }]);
    }
  });

  it('is refused where its list says that it unpacks to more than a log can be', async () => {
    const bytes = Buffer.from(workbook({ A: [HEADER, ['T-1', 500, 'failed']] }));
    // APPNOTE.TXT of the zip format, 4.3.12: the uncompressed size stands 24 bytes into an entry of the list.
    bytes.writeUInt32LE(300 * 1024 * 1024, bytes.indexOf('PK\u0001\u0002') + 24);
    expect(await problemsOf(bytes)).toMatchObject([
      { code: 'not-a-workbook', message: expect.stringContaining('more than 200 MiB') },
    ]);
  });

  it('of another writer, with texts in place, percentages and an empty row, is read too', async () => {
    const sheet = utils.aoa_to_sheet([
      HEADER,
      ['T-1', 500.25, 'failed'],
      [],
      [7, { t: 'n', v: 475, z: '0.0%' }, 'survived'],
    ]);
    const book = utils.book_new();
    utils.book_append_sheet(book, sheet, 'Log');
    const bytes = write(book, { type: 'buffer', bookType: 'xlsx', bookSST: false }) as Buffer;
    expect((await read(bytes)).drops).toMatchObject([
      { line: 2, specimen: 'T-1', height: 500.25, outcome: 'failed' },
      { line: 4, specimen: '7', height: 475, outcome: 'survived' },
    ]);
  });

  it('gives the text of a cell in several fonts, without its reading aid', async () => {
    const parts = unzipSync(workbook({ A: [HEADER, ['東京', 500, 'failed']] }));
    const strings = strFromU8(parts['xl/sharedStrings.xml']!);
    const rich =
      '<si><r><t>東</t></r><r><rPr><b/></rPr><t>京</t></r><rPh sb="0" eb="2"><t>トウキョウ</t></rPh></si>';
    parts['xl/sharedStrings.xml'] = strToU8(strings.replace(/<si><t[^>]*>東京<\/t><\/si>/u, rich));
    expect((await read(Buffer.from(zipSync(parts)))).drops).toMatchObject([{ specimen: '東京' }]);
  });

  it('is no plain log', async () => {
    await expect(readDropLog(Readable.from([workbook({ A: [HEADER] })]))).rejects.toThrow(/workbook/);
  });
});
