import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readDropLog } from '../../src/logs/drops.ts';
import { readSpecimens } from '../../src/logs/specimens.ts';
import { InputError } from '../../src/problem/problem.ts';

const FOLDER = 'fixtures/hostile/logs';

/** What must come of each file: `line:column code`, `-` where the whole line or file is meant. */
const REFUSED: Readonly<Record<string, readonly string[]>> = {
  'all-nul.csv': ['1:1 nul-bytes'],
  'bad-numbers.csv': [
    '2:9 out-of-range',
    '3:9 out-of-range',
    '4:9 not-a-number',
    '5:9 not-a-number',
    '6:9 not-a-number',
    '7:9 out-of-range',
    '8:9 not-a-number',
    '9:9 not-a-number',
    '10:13 out-of-range',
    '10:15 out-of-range',
    '11:1 not-a-drop-number',
    '11:10 out-of-range',
    '11:16 empty-cell',
    '11:19 not-a-number',
    '12:1 not-a-drop-number',
    '12:4 empty-cell',
    '12:7 not-a-number',
  ],
  'bad-words.csv': [
    '2:9 unknown-outcome',
    '3:9 unknown-outcome',
    '4:9 unknown-outcome',
    '4:11 unknown-word',
    '6:18 unknown-word',
  ],
  'blank-lines.csv': ['-:- no-header'],
  'control-characters.csv': ['2:19 unknown-outcome'],
  'drum-outcomes.csv': ['1:- not-a-drop-log'],
  'drum-samples.csv': ['1:- not-a-drop-log'],
  'duplicate-column.csv': ['1:30 duplicate-column'],
  'empty.csv': ['-:- empty-file'],
  'header-only.csv': ['1:- no-rows'],
  'latin1-late.csv': ['4:26 wrong-encoding'],
  'latin1.csv': ['1:40 wrong-encoding'],
  'missing-columns.csv': ['1:- missing-column'],
  'nul-inside.csv': ['3:7 nul-bytes'],
  'only-row-cut-short.csv': ['1:- no-rows'],
  'preamble.csv': ['1:- missing-column'],
  'quote-closed-by-another.csv': ['2:25 unclosed-quote'],
  'ragged.csv': ['3:23 ragged-row', '4:- ragged-row'],
  'repeated-header.csv': ['3:1 repeated-header'],
  'semicolons.csv': ['1:- missing-column'],
  'sep-hint.csv': ['1:- missing-column'],
  'specimens-as-log.csv': ['1:- not-a-drop-log'],
  'specimens-bad-mass.csv': ['2:11 out-of-range', '3:11 not-a-number', '3:17 not-a-number', '4:1 empty-cell'],
  'specimens-listed-twice.csv': ['4:1 duplicate-specimen', '5:1 specimen-under-two-constructions'],
  'text-after-quote.csv': ['2:8 text-after-quote', '4:7 out-of-range'],
  'unclosed-quote.csv': ['3:23 unclosed-quote'],
  'utf16-without-mark.csv': ['-:- wrong-encoding'],
  'utf16.csv': ['-:- wrong-encoding'],
  'workbook.csv': ['-:- not-text'],
  'wrong-units.csv': [
    '1:10 wrong-unit',
    '1:23 missing-unit',
    '1:32 wrong-unit',
    '1:43 wrong-unit',
    '1:59 unit-out-of-place',
  ],
};

/** Lines of the drops that are read, and what was found beside them. */
const READ: Readonly<Record<string, { lines: readonly number[]; findings: readonly string[] }>> = {
  'byte-order-mark-crlf.csv': { lines: [2, 3], findings: [] },
  'empty-rows.csv': { lines: [2, 4], findings: ['3:1 empty-rows'] },
  'lone-cr.csv': { lines: [2, 3], findings: [] },
  'no-final-newline.csv': { lines: [2, 3], findings: [] },
  'nul-padding-in-row.csv': { lines: [2], findings: ['3:- truncated-line', '3:25 nul-padding'] },
  'nul-padding.csv': { lines: [2, 3], findings: ['4:1 nul-padding'] },
  'quoted.csv': { lines: [2, 4, 5], findings: [] },
  'truncated-in-character.csv': { lines: [2], findings: ['3:- truncated-line'] },
  'truncated-in-outcome.csv': { lines: [2], findings: ['3:- truncated-line'] },
  'truncated-in-quote.csv': { lines: [2], findings: ['3:- truncated-line'] },
  'truncated.csv': { lines: [2, 3], findings: ['4:- truncated-line'] },
  'unknown-columns.csv': {
    lines: [2],
    findings: ['1:30 unknown-column', '1:44 unknown-column', '1:52 unknown-column'],
  },
};

const placed = (item: { line: number | null; column: number | null; code: string }) =>
  `${item.line ?? '-'}:${item.column ?? '-'} ${item.code}`;

const SPECIMENS = new Set(['specimens-bad-mass.csv', 'specimens-listed-twice.csv']);

const failure = async (file: string): Promise<InputError> => {
  const read: Promise<unknown> = SPECIMENS.has(file)
    ? readSpecimens(join(FOLDER, file))
    : readDropLog(join(FOLDER, file));
  const error = await read.then(
    () => null,
    (thrown: unknown) => thrown,
  );
  expect(error).toBeInstanceOf(InputError);
  return error as InputError;
};

describe('hostile logs', () => {
  it.each(Object.entries(REFUSED))('%s is refused', async (file, expected) => {
    const { problems } = await failure(file);
    expect(problems.map(placed)).toEqual(expected);
    expect(new Set(problems.map((problem) => problem.file))).toEqual(new Set([join(FOLDER, file)]));
  });

  it.each(Object.entries(READ))('%s is read', async (file, expected) => {
    const log = await readDropLog(join(FOLDER, file));
    expect(log.drops.map((drop) => drop.line)).toEqual(expected.lines);
    expect(log.findings.map(placed)).toEqual(expected.findings);
  });

  it('covers every file of the folder, and each has its line in the README', () => {
    const files = readdirSync(FOLDER).filter((name) => name.endsWith('.csv'));
    expect([...Object.keys(REFUSED), ...Object.keys(READ)].toSorted()).toEqual(files.toSorted());
    const readme = readFileSync('fixtures/hostile/README.md', 'utf8');
    expect(files.filter((name) => !readme.includes(`\`${name}\``))).toEqual([]);
  });

  it('never lets a control character of a log into a message', async () => {
    for (const file of Object.keys(REFUSED)) {
      expect((await failure(file)).message).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
    }
  });
});

describe('what settles it', () => {
  it.each([
    ['bad-numbers.csv', 6, /decimal point.*export.decimal/],
    ['bad-numbers.csv', 7, /without thousands marks/],
    ['bad-words.csv', 0, /"ok", expected "failed", "survived", "not-evaluable".*export\.outcomes/],
    ['latin1.csv', 0, /byte 0xB0, expected UTF-8.*another code page, its profile names it/],
    ['missing-columns.csv', 0, /"height \[mm\]", "outcome".*"Height \(mm\)" for "height \[mm\]"/],
    ['semicolons.csv', 0, /export\.separator/],
    ['specimens-listed-twice.csv', 0, /"T-1" again \(line 2 /],
    ['specimens-listed-twice.csv', 1, /"C-110", and on line 3 under "C-114"/],
    ['wrong-units.csv', 2, /did you mean "kg"/],
  ])('%s, problem %i', async (file, index, message) => {
    expect((await failure(file)).problems[index]!.message).toMatch(message);
  });

  it('suggests the column that was meant', async () => {
    const { findings } = await readDropLog(join(FOLDER, 'unknown-columns.csv'));
    expect(findings[0]!.message).toContain('did you mean "pressure"');
  });
});
