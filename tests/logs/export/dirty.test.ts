import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Drop } from '../../../src/logs/drop.ts';
import { readDropLog } from '../../../src/logs/drops.ts';
import { InputError } from '../../../src/problem/problem.ts';
import { profileOfFile } from './profile-of.ts';

// What an engineer reads off the files of the folder; conversions by hand from the exact inch, pound and psi (NIST
// SP 811, appendix B), offsets of zones from memory (CET +01:00, CEST +02:00 from 30 March to 26 October 2025).
const FOLDER = 'fixtures/hostile/exports';
const read = (name: string) =>
  readDropLog(join(FOLDER, `${name}.csv`), profileOfFile(join(FOLDER, `${name}.rig.yaml`)));

const F = 'failed' as const;
const S = 'survived' as const;
type Row = [line: number, specimen: string, height: number, outcome: Drop['outcome'], more?: Partial<Drop>];

const READ: Readonly<
  Record<string, { rows: readonly Row[]; findings?: readonly string[]; report?: object }>
> = {
  absolute: { rows: [[2, 'T-1', 500, F, { pressure: 2 }]] },
  autumn: {
    rows: [
      [2, 'T-1', 500, F, { time: '2025-10-26T01:50:00+02:00' }],
      [3, 'T-2', 475, S, { time: '2025-10-26T02:10:00+02:00' }],
      [4, 'T-3', 500, S, { time: '2025-10-26T02:40:00+02:00' }],
      [5, 'T-4', 525, F, { time: '2025-10-26T02:20:00+01:00' }],
      [6, 'T-5', 500, F, { time: '2025-10-26T03:05:00+01:00' }],
    ],
  },
  // Counted on from the second row, the last time at which clock and counter agree; the sixth begins the count anew.
  'clock-jump': {
    rows: [
      [2, 'T-1', 500, F, { time: '2026-03-09T08:06:00+01:00' }],
      [3, 'T-2', 475, S, { time: '2026-03-09T08:12:01+01:00' }],
      [4, 'T-3', 500, S, { time: '2026-03-09T08:18:01.5+01:00' }],
      [5, 'T-4', 525, F, { time: '2026-03-09T08:24:01+01:00' }],
      [6, 'T-5', 500, F, { time: '2026-03-09T08:30:00+01:00' }],
      [7, 'T-6', 475, S, { time: '2026-03-09T09:00:00+01:00' }],
    ],
    findings: ['4:- time-rebuilt'],
  },
  'fixed-width': {
    rows: [
      [4, 'T "1"', 500, F, { number: 1, time: '2026-03-09T08:06:00+01:00' }],
      [5, 'T;2', 475.5, S, { number: 2, time: '2026-03-10T08:12:00+01:00' }],
      [6, 'T-3', 500, S, { number: 3, time: '2026-03-11T08:18:00+01:00' }],
    ],
    findings: ['8:- truncated-line'],
    report: {
      metadata: [
        { line: 1, key: 'Fallwerk', value: '2; Bediener "K4"' },
        { line: 7, key: 'Mittel', value: '491,8' },
      ],
    },
  },
  'own-words': {
    rows: [
      [
        2,
        'T-1',
        500,
        F,
        { damage: 'pinch-two-cuts', details: expect.objectContaining({ catcher: 'in-time' }) },
      ],
      [3, 'T-2', 475, F, { damage: 'pinch-two-cuts;casing-cut@sidewall' }],
      [4, 'T-3', 450, S, { damage: 'Kratzer', details: expect.objectContaining({ catcher: 'early' }) }],
      [5, 'T-4', 475, F, { damage: 'bead-burp', details: expect.objectContaining({ catcher: 'missed' }) }],
    ],
  },
  'columns-change': {
    rows: [
      [3, 'T-1', 500, F, { pressure: null }],
      [6, 'T-2', 475, S, { pressure: 2 }],
    ],
    findings: ['2:- column-not-there'],
    report: {
      segments: [
        { line: 2, rows: 1 },
        { line: 5, rows: 1 },
      ],
      conversions: [{ column: 'height [cm]', from: 'cm', to: 'mm', cells: 1 }],
      metadata: [
        { line: 1, key: 'Start', value: 'A' },
        { line: 4, key: 'Start', value: 'B' },
      ],
    },
  },
  german: {
    rows: [
      [6, 'T-1', 500, F, { number: 1, time: '2026-03-09T08:06:00+01:00', remark: 'Reifen gewechselt!!' }],
      [7, 'T-2', 475, S, { pressure: 2.01, temperature: null }],
      [8, 'T-3', 500, S, { pressure: 1.99, temperature: null, remark: 'nochmal; war schief' }],
      [9, 'T-4', 525, F, { temperature: 23.1, valid: false }],
    ],
    findings: ['1:1 separator-hint'],
    report: {
      rows: { read: 4, kept: 4, collapsed: 0 },
      emptied: { 'Temp. [°C]': 2 },
      metadata: [
        { line: 2, key: 'Prüfstand', value: 'Fallwerk 2' },
        { line: 3, key: 'Bediener', value: 'K4' },
        { line: 10, key: 'Mittelwert', value: '500,0 2,00 22,8' },
        { line: 11, key: 'Max', value: '525,0 2,01 23,1' },
      ],
    },
  },
  hanzi: {
    rows: [
      [2, 'T-1', 500, F, { operator: '甲' }],
      [3, 'T-2', 475, S, { operator: '乙' }],
      [4, 'T-3', 500, F, { operator: '甲' }],
    ],
  },
  imperial: {
    rows: [
      [3, 'T-1', 508, F, { time: '2026-03-09T08:06:00-04:00', mass: expect.closeTo(7.983225712, 9) }],
      [4, 'T-2', 482.6, S, { time: '2026-03-09T12:12:30-04:00', pressure: null }],
      [5, 'T-3', 520.7, S, { time: '2026-03-09T00:05:00-04:00', pressure: expect.closeTo(2.00637, 4) }],
    ],
    findings: ['1:1 separator-hint', '5:3 clock-back'],
    report: { emptied: { 'Pressure (psi)': 1 } },
  },
  kana: {
    rows: [
      [2, 'T-1', 500, F, { time: '2026-03-09T08:06:00+09:00' }],
      [3, 'T-2', 475, S, { time: '2026-03-09T13:12:00+09:00' }],
      [4, 'T-3', 500, 'not-evaluable'],
      [5, 'T-4', 500, F],
    ],
  },
  months: {
    rows: [
      [2, 'T-1', 1250.5, F, { time: '2025-08-09T08:06:00+02:00' }],
      [3, 'T-2', 1200, S, { time: '2026-03-09T08:12:00+01:00' }],
      [4, 'T-3', 900, S, { time: '2026-12-09T08:18:00+01:00' }],
    ],
  },
  restart: {
    rows: [
      [2, 'T-1', 500, F],
      [3, 'T-2', 475, S],
      [6, 'T-3', 500, S],
      [8, 'T-6', 525, F],
    ],
    report: { rows: { read: 6, kept: 4, collapsed: 2 }, gaps: [{ line: 8, missing: 2 }] },
  },
  seconds: {
    rows: [
      [3, 'T-1', 500, F, { time: '2026-03-09T07:06:00.5+00:00' }],
      [4, 'T-2', 475, S, { time: '2026-03-09T07:12:00+00:00' }],
    ],
  },
  serial: {
    rows: [
      [2, 'T-1', 500, F, { time: '2026-03-09T08:06:00+01:00' }],
      [3, 'T-2', 475, S, { time: '2026-03-09T08:12:00+01:00' }],
    ],
    findings: ['4:- truncated-line', '4:16 nul-padding'],
  },
  thousands: {
    rows: [
      [2, 'T-1', 1250.5, F, { mass: 8 }],
      [3, 'T-2', 500, S, { mass: 8 }],
    ],
  },
  'units-row': {
    rows: [
      [5, 'T-1', 12505, F, { pressure: 2, temperature: 22 }],
      [6, 'T-2', 12000, S, { pressure: 2.01, temperature: 22.1 }],
    ],
    report: { metadata: [{ line: 1, key: 'LOG4', value: 'file 17' }] },
  },
};

/** Places and codes, and the keys of the profile that the messages name. */
const REFUSED: Readonly<Record<string, readonly (readonly [place: string, key: string])[]>> = {
  'catcher-unsaid': [
    ['2:16 unknown-word', '"ok" (2 times, here first)'],
    ['4:18 unknown-word', 'export.catcher.early'],
  ],
  // Nothing that a profile leaves unsaid makes a time of a day that is none.
  'clock-jump-unsaid': [['3:1 not-a-time', 'export.time.format']],
  'fixed-width-cut': [['3:34 ragged-row', 'export.restarts']],
  'weekday-wrong': [['3:1 not-a-time', 'export.time.format']],
  'code-page': [['2:22 wrong-encoding', 'export.encoding']],
  'columns-unnamed': [['3:20 ragged-row', 'export.restarts']],
  'date-order': [['2:1 ambiguous-date', 'export.time.format']],
  'decimal-open': [
    ['2:5 not-a-number', 'export.decimal, export.thousands'],
    ['3:5 not-a-number', 'export.decimal'],
  ],
  'gauge-or-absolute': [['1:30 absolute-or-gauge', 'export.columns.pressure.ambient']],
  'id-pattern': [['3:1 strange-id', 'export.columns']],
  letters: [
    ['2:9 unknown-outcome', '"P" (2 times, here first)'],
    ['3:9 unknown-outcome', 'export.outcomes.failed'],
    ['4:9 unknown-outcome', 'export.outcomes.survived'],
  ],
  'mixed-units': [
    ['3:- mixed-units', 'export.columns.pressure.unit'],
    ['5:16 not-a-number', 'export.columns'],
  ],
  'other-columns': [['1:1 no-header', 'export.columns']],
  'other-rig': [
    ['1:- other-export', 'export.fingerprint'],
    ['1:- missing-column', 'export.columns.height'],
  ],
  'overlap-differs': [['5:1 overlapping-rows', 'export.counter']],
  'restart-unsaid': [['3:1 repeated-header', 'export.restarts']],
  'sentinel-unsaid': [
    ['2:16 out-of-range', 'export.sentinels'],
    ['3:18 not-a-number', 'export.sentinels'],
  ],
  'separator-hint': [['1:1 separator-conflict', 'export.separator']],
  spreadsheet: [
    ['2:5 damaged-cell', '"02. Okt"'],
    ['2:20 damaged-cell', '"#DIV/0!"'],
    ['3:1 damaged-cell', '"1,2E+05"'],
    ['4:1 damaged-cell', 'export.columns.specimen.pattern'],
  ],
  spring: [['2:1 no-such-time', 'export.time.zone']],
  'thousands-open': [
    ['2:5 not-a-number', 'export.thousands'],
    ['3:5 not-a-number', 'export.decimal'],
  ],
  'two-columns': [['1:21 two-columns', 'export.ignore']],
  'unit-conflict': [['1:10 unit-conflict', 'export.columns.height.unit']],
  'unit-missing': [
    ['1:10 missing-unit', 'export.columns.height.unit'],
    ['1:20 missing-unit', 'export.columns.pressure.unit'],
  ],
  'utf8-marked': [['-:- wrong-encoding', 'export.encoding']],
  'utf8-unmarked': [['1:1 no-header', 'export.encoding']],
  'zero-one': [
    ['2:9 unknown-outcome', 'export.outcomes.failed'],
    ['2:11 unknown-word', 'export.valid.yes'],
    ['3:9 unknown-outcome', '"1"'],
    ['3:11 unknown-word', 'export.valid.no'],
    ['5:9 unknown-outcome', '"O"'],
  ],
};

const placed = ({ line, column, code }: { line: number | null; column: number | null; code: string }) =>
  `${line ?? '-'}:${column ?? '-'} ${code}`;

describe('dirty exports', () => {
  it.each(Object.entries(READ))('%s is read', async (name, { rows, findings = [], report = {} }) => {
    const log = await read(name);
    expect(log.drops).toMatchObject(
      rows.map(([line, specimen, height, outcome, more]) => ({ line, specimen, height, outcome, ...more })),
    );
    expect(log.findings.map(placed)).toEqual(findings);
    expect(log.import).toMatchObject({ rig: name, rows: { kept: rows.length }, ...report });
  });

  it.each(Object.entries(REFUSED))(
    '%s is refused, and the key that settles it named',
    async (name, expected) => {
      const error = await read(name).then(
        () => null,
        (thrown: unknown) => thrown,
      );
      expect(error).toBeInstanceOf(InputError);
      const { problems } = error as InputError;
      expect(problems.map(placed)).toEqual(expected.map(([place]) => place));
      for (const [i, [, key]] of expected.entries()) expect(problems[i]!.message).toContain(key);
    },
  );

  it('covers every file of the folder, and each has its line in the README', () => {
    const names = readdirSync(FOLDER).flatMap((file) => (file.endsWith('.csv') ? [file.slice(0, -4)] : []));
    expect([...Object.keys(READ), ...Object.keys(REFUSED)].toSorted()).toEqual(names.toSorted());
    const readme = readFileSync('fixtures/hostile/README.md', 'utf8');
    expect(names.filter((name) => !readme.includes(`\`${name}\``))).toEqual([]);
  });
});
