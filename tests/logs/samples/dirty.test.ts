import { existsSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { drumDeviations } from '../../../src/endurance/deviations.ts';
import { passDrumLogs } from '../../../src/endurance/drum-pass.ts';
import { summarise } from '../../../src/endurance/summary.ts';
import { readOutcomes } from '../../../src/logs/outcomes.ts';
import { sampleDialect } from '../../../src/logs/samples/dialect.ts';
import { openSampleLog } from '../../../src/logs/samples/head.ts';
import { PartScanner, partsOf } from '../../../src/logs/samples/part.ts';
import { keepAsFile } from '../../../src/logs/samples/spool.ts';
import { InputError } from '../../../src/problem/problem.ts';
import { block } from '../../endurance/drum-log.ts';
import { profileOfFile } from '../export/profile-of.ts';

// What an engineer reads off the files of the folder; conversions by hand from the exact pound and inch and standard
// gravity (NIST SP 811, appendix B), offsets of zones from memory (CET +01:00, CEST +02:00 from 30 March to 26 October
// 2025 and from 29 March 2026; JST and China +09:00 and +08:00).
const FOLDER = 'fixtures/hostile/drum';
const SCHEDULE = [block('main', { distance: 100, speed: '36 km/h ± 2 %', load: '650 N ± 2 %' })];

function fileOf(name: string) {
  const rig = `${FOLDER}/${name}.rig.yaml`;
  const text = `${FOLDER}/${name}.csv`;
  const profile = existsSync(rig) ? profileOfFile(rig) : null;
  return keepAsFile(existsSync(text) ? text : `${FOLDER}/${name}.xlsx`, profile);
}

/** Rows in the units of the results, by the names of the columns. */
async function rowsOf(name: string) {
  const { path, profile, remove } = await fileOf(name);
  try {
    const { layout, size } = openSampleLog(path, sampleDialect(profile), profile);
    const rows: Record<string, unknown>[] = [];
    for (const part of partsOf(path, layout.bodyOffset, size, 40)) {
      new PartScanner(layout).scan(part, (batch) => {
        for (let i = 0; i < batch.rows; i++) {
          const values = layout.columns.map(({ name, decimals }, k) => [
            name,
            Number.isNaN(batch.values[k]![i]!) ? null : batch.values[k]![i]! / 10 ** decimals,
          ]);
          const time = new Date(batch.time[i]!).toISOString();
          rows.push({ time, state: batch.states[batch.state[i]!], ...Object.fromEntries(values) });
        }
      });
    }
    return rows;
  } finally {
    remove();
  }
}

async function passed(...names: string[]) {
  const files = await Promise.all(names.map(fileOf));
  try {
    const pass = await passDrumLogs(files, { schedule: SCHEDULE, sampling: null, partBytes: 100 });
    const summary = summarise(pass);
    const told = drumDeviations(pass, summary);
    return {
      pass,
      distance: summary.distance,
      summary,
      tallies: pass.logs.flatMap(({ tallies }) => tallies.map((t) => `${t.code} ${t.count} ${t.firstLine}`)),
      findings: pass.logs.flatMap(({ findings }) =>
        findings.map(({ code, line }) => `${line ?? '-'} ${code}`),
      ),
      codes: told.map(({ code, severity, line }) => `${code} ${severity} ${line}`),
    };
  } finally {
    for (const { remove } of files) remove();
  }
}

async function refusal(name: string): Promise<readonly { place: string; message: string }[]> {
  try {
    await passed(name);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return error.problems.map(({ line, column, code, message }) => ({
      place: `${line ?? '-'}:${column ?? '-'} ${code}`,
      message,
    }));
  }
  return [];
}

const time = (clock: string, day = '2026-03-02') => `${day}T${clock.padEnd(8 + 4, '.000')}Z`;

/** Some rows of each, by their place. */
const READ: Readonly<Record<string, Readonly<Record<number, object>>>> = {
  german: {
    0: { time: time('05:00:00'), speed: 36, load: 650.5, pressure: 2.5, distance: 0, state: 'läuft' },
    1: { time: '2026-03-02T05:00:00.500Z', load: null, distance: 0.005 },
    2: { load: 649.5, pressure: null },
    3: { load: 650, state: 'stand; Pause' },
  },
  // 66 kgf is 647.2389 N; absolute 350 kPa less 1 bar is for the fold, the column stays as it is.
  logger: {
    0: { time: time('06:00:00'), speed: 10, load: 66, pressure: 350 },
    1: { time: time('06:00:01'), pressure: 351, distance: 0.01 },
  },
  mojibake: { 1: { 'tyre temperature': 41.6 } },
  kana: { 0: { time: time('06:00:00'), state: '運転' }, 1: { load: 651, state: '停止' } },
  hanzi: { 1: { time: time('06:00:01'), load: 651, state: '运行' } },
  thousands: { 0: { load: 1250.5, distance: 1234.56 }, 1: { load: 950.5, distance: 1234.57 } },
  'byte-order-mark': { 2: { time: time('06:00:02'), distance: 0.02, state: 'run' } },
  'lone-cr': { 2: { time: time('06:00:02'), distance: 0.02, state: 'run' } },
  'unit-by-profile': { 0: { pressure: 36.259 } },
  months: {
    0: { time: time('06:00:00') },
    1: { time: time('11:00:01', '2026-08-02') },
    2: { time: time('23:00:02', '2026-12-01') },
  },
  serial: { 0: { time: time('06:00:00') }, 1: { time: time('06:00:01') } },
  seconds: { 0: { time: time('06:00:00') }, 1: { time: '2026-03-02T06:00:00.500Z', load: 650 } },
  spring: { 1: { time: time('00:59:59', '2026-03-29') }, 2: { time: time('01:00:00', '2026-03-29') } },
  sentinels: {
    0: { load: null, pressure: 2.5 },
    1: { load: null, pressure: null },
    2: { load: null },
    3: { load: null, pressure: 7.998 },
  },
  quoted: { 1: { state: 'run, "slow"' } },
  workbook: { 0: { time: time('06:00:00'), load: 650.5 }, 1: { time: time('06:00:01'), load: 651 } },
};

/** What a pass over the log counts and says beside its rows. */
const COUNTED: Readonly<
  Record<
    string,
    { tallies?: string[]; findings?: string[]; codes?: string[]; logged?: number; hours?: number }
  >
> = {
  german: {
    tallies: ['summary-row 2 10'],
    findings: ['1 separator-hint', '2 metadata', '3 metadata'],
    codes: ['DRUM-11 minor 7'],
    logged: 0.015,
  },
  logger: { findings: ['1 metadata', '2 converted', '2 converted', '2 converted'], logged: 0.01 },
  restart: {
    tallies: ['repeated-header 1 10', 'repeated-preamble 2 8'],
    findings: ['1 metadata', '2 metadata'],
    logged: 0.07,
  },
  duplicates: { logged: 0.05 },
  // Rows 120 to 299 stand twice: 2 whole minutes the same; the third minute only in part.
  'overlap-same': {
    tallies: ['repeated-header 1 302'],
    codes: ['DRUM-45 note 303'],
    logged: 3.59,
    hours: 359,
  },
  'overlap-differs': {
    tallies: ['repeated-header 1 302'],
    codes: ['DRUM-45 note 303', 'DRUM-45 invalidating 303'],
    logged: 3.59,
  },
  truncated: { tallies: ['truncated-line 1 4'], logged: 0.01 },
  'nul-padding': { tallies: ['nul-padding 1 5'], logged: 0.02 },
  'clock-jump': { codes: ['DRUM-21 note 152'], logged: 2.99 },
  // 129 minutes of 600 m, one of them the step back; a row a minute is its own interval.
  autumn: { codes: [], logged: 77.4, hours: 129 * 60 },
  'autumn-open': { findings: ['2 time-uncertain'], logged: 0.02 },
  spring: { codes: [], logged: 0.03, hours: 3 },
};

/** Places and codes, and the keys of the profile (or what else settles it) that the messages name. */
const REFUSED: Readonly<Record<string, readonly (readonly [place: string, key: string])[]>> = {
  'code-page': [['3:29 wrong-encoding', 'export.encoding']],
  'thousands-unsaid': [
    ['2:27 not-a-number', 'export.thousands'],
    ['2:35 not-a-number', 'export.thousands'],
  ],
  'decimal-unsaid': [
    ['2:31 not-a-number', 'export.decimal, export.thousands'],
    ['3:22 not-a-number', 'export.decimal'],
  ],
  'unit-missing': [['1:6 missing-unit', 'speed [km/h]']],
  'unit-changes': [
    ['6:29 out-of-range', 'export.columns.pressure'],
    ['7:29 out-of-range', 'another unit'],
    ['8:29 out-of-range', ''],
    ['9:29 out-of-range', ''],
  ],
  'unit-changes-with-header': [
    ['4:1 changed-header', 'a log of its own'],
    ['5:29 out-of-range', ''],
    ['6:29 out-of-range', ''],
  ],
  'load-in-kgf': [['302:- mixed-units', 'export.columns.load.unit']],
  'gauge-or-absolute': [['1:28 absolute-or-gauge', 'export.columns.pressure.ambient']],
  'date-order': [['2:1 not-a-time', 'export.time.format']],
  'no-offset': [['2:1 missing-offset', 'export.time']],
  'spring-left-out': [['3:1 no-such-time', 'export.time.zone']],
  'seconds-again': [['5:1 another-start', 'a log of its own']],
  'columns-change': [
    ['4:1 changed-header', 'a log of its own'],
    ['5:42 ragged-row', ''],
  ],
  'columns-unnamed': [
    ['4:42 ragged-row', 'header'],
    ['5:42 ragged-row', ''],
  ],
  'nul-inside': [['6:19 nul-bytes', 'two logs']],
  'sentinels-unsaid': [
    ['5:25 not-a-number', 'export.sentinels'],
    ['3:25 out-of-range', 'export.sentinels'],
    ['4:29 out-of-range', 'export.sentinels'],
  ],
  spreadsheet: [
    ['2:25 damaged-cell', '"02. Okt"'],
    ['3:25 damaged-cell', '"#DIV/0!"'],
  ],
  'quote-over-lines': [['2:38 unclosed-quote', 'close the quote']],
  'other-rig': [
    ['1:- other-export', 'export.fingerprint'],
    ['1:- missing-column', 'export.columns.speed'],
  ],
};

describe('dirty drum logs', () => {
  it.each(Object.entries(READ))('%s is read rightly', async (name, expected) => {
    const rows = await rowsOf(name);
    for (const [place, row] of Object.entries(expected)) expect(rows[Number(place)]).toMatchObject(row);
  });

  it.each(Object.entries(COUNTED))('%s: nothing is dropped without being counted', async (name, expected) => {
    const found = await passed(name);
    if (expected.tallies) expect(found.tallies).toEqual(expected.tallies);
    if (expected.findings) expect(found.findings).toEqual(expected.findings);
    if (expected.codes) expect(found.codes).toEqual(expected.codes);
    if (expected.logged !== undefined) expect(found.distance.logged).toBeCloseTo(expected.logged, 9);
    if (expected.hours !== undefined) expect(found.summary.schedule[0]!.loggedTime).toBe(expected.hours);
  });

  it.each(Object.entries(REFUSED))('%s is refused, with what settles it', async (name, expected) => {
    const problems = await refusal(name);
    expect(problems.map(({ place }) => place)).toEqual(expected.map(([place]) => place));
    for (const [i, [, key]] of expected.entries()) expect(problems[i]!.message).toContain(key);
  });

  it('logger: units of its row, and the air pressure taken off', async () => {
    const { summary } = await passed('logger');
    const means = Object.fromEntries(
      summary.schedule[0]!.channels.map(({ channel, mean }) => [channel, mean]),
    );
    expect(means.speed).toBeCloseTo(36, 9);
    expect(means.load).toBeCloseTo(647.2389, 9);
    expect(means.pressure).toBeCloseTo(2.505, 9);
  });

  it('duplicates: two repeats of one row, counted', async () => {
    const { pass } = await passed('duplicates');
    expect(pass.ledger.events.byKind.get('duplicate')).toMatchObject({ count: 2 });
  });

  it('copy (2): the same file twice is one log', async () => {
    const { findings, distance } = await passed('copy', 'copy (2)');
    expect(findings).toEqual(['- copy']);
    expect(distance.logged).toBeCloseTo(0.02, 9);
  });

  it('outcomes: by the same profile, and wrong ones at their cells', async () => {
    const profile = profileOfFile(`${FOLDER}/outcomes.rig.yaml`);
    const { records } = await readOutcomes(`${FOLDER}/outcomes.csv`, profile);
    expect(
      records.map(({ specimen, survived, failed, cause }) => [specimen, survived, failed, cause]),
    ).toEqual([
      ['T-1', 4200.5, 4310, 'Karkasse'],
      ['T-2', 5000, null, null],
    ]);
    const wrong = await readOutcomes(`${FOLDER}/outcomes-wrong.csv`).catch(
      (error: InputError) => error.problems,
    );
    expect(wrong).toMatchObject([
      { line: 2, column: 10, code: 'failed-before-survived' },
      { line: 4, column: 1, code: 'duplicate-specimen' },
      { line: 5, column: 5, code: 'no-distance' },
    ]);
  });

  it('has an expectation for every file of the folder', () => {
    const files = readdirSync(FOLDER).filter((name) => /\.(?:csv|xlsx)$/u.test(name));
    const known = new Set([...Object.keys(READ), ...Object.keys(COUNTED), ...Object.keys(REFUSED)]);
    for (const name of ['copy', 'copy (2)', 'outcomes', 'outcomes-wrong']) known.add(name);
    expect(
      files.map((name) => name.replace(/\.(?:csv|xlsx)$/u, '')).filter((name) => !known.has(name)),
    ).toEqual([]);
  });
});
