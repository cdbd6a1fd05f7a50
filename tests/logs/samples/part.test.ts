import { describe, expect, it } from 'vitest';
import { PLAIN_SAMPLES, type SampleDialect } from '../../../src/logs/samples/dialect.ts';
import { openSampleLog } from '../../../src/logs/samples/head.ts';
import { type PartScan, PartScanner, partsOf } from '../../../src/logs/samples/part.ts';
import { InputError } from '../../../src/problem/problem.ts';
import { logFolder } from './log-files.ts';

const folder = logFolder();
const HEADER = 'time,speed [km/h],load [N],distance [km],state';

type Writable<T> = { -readonly [Key in keyof T]: T[Key] };

interface Scanned extends Writable<PartScan> {
  rows: { line: number; time: number; state: string; values: number[]; text: string }[];
}

function scan(
  content: string | Uint8Array,
  options: { dialect?: Partial<SampleDialect>; partBytes?: number; window?: number; capacity?: number } = {},
): Scanned {
  const path = folder.write('log.csv', content);
  const log = openSampleLog(path, { ...PLAIN_SAMPLES, ...options.dialect });
  const whole: Scanned = { rows: [], lines: 0, tallies: [], problems: [], problemsBeyond: [] };
  const bytes = Buffer.from(content);
  const { capacity, window } = options;
  const scanner = new PartScanner(log.layout, { capacity, window });
  for (const part of partsOf(path, log.layout.bodyOffset, log.size, options.partBytes ?? 1e9)) {
    const base = log.layout.headerLine + 1 + whole.lines;
    const found = scanner.scan(part, (batch) => {
      for (let row = 0; row < batch.rows; row++) {
        whole.rows.push({
          line: batch.line[row]! + base,
          time: batch.time[row]!,
          state: batch.states[batch.state[row]!]!,
          values: batch.values.map((column) => column[row]!),
          text: bytes.toString('utf8', batch.from[row]!, batch.to[row]!),
        });
      }
    });
    whole.lines += found.lines;
    whole.tallies = [
      ...whole.tallies,
      ...found.tallies.map((t) => ({ ...t, firstLine: t.firstLine + base, lastLine: t.lastLine + base })),
    ];
    whole.problems = [
      ...whole.problems,
      ...found.problems.map((p) => ({ ...p, line: (p.line ?? 0) + base })),
    ];
  }
  return whole;
}

const log = (...rows: string[]): string => [HEADER, ...rows, ''].join('\n');
const time = (text: string): number => Date.parse(text);
const ROW = '2026-03-02T06:00:00+01:00,30.02,651.3,12.345,run';

describe('PartScanner reads', () => {
  it('whole steps of each column, the instant, the state and the line', () => {
    const { rows, problems } = scan(log(ROW, '2026-03-02T06:00:00.5+01:00,-0.5,0,12.3451234,stop'));
    expect(problems).toEqual([]);
    expect(rows.map(({ line }) => line)).toEqual([2, 3]);
    expect(rows.map((row) => row.time)).toEqual([
      time('2026-03-02T05:00:00Z'),
      time('2026-03-02T05:00:00.500Z'),
    ]);
    expect(rows.map(({ state }) => state)).toEqual(['run', 'stop']);
    // Speed in 10⁻⁴ km/h, load in 10⁻³ N, distance in 10⁻⁶ km: the last is rounded.
    expect(rows.map(({ values }) => values)).toEqual([
      [300200, 651300, 12345000],
      [-5000, 0, 12345123],
    ]);
    expect(rows[0]!.text).toBe(`${ROW}\n`);
  });

  it('times over midnight, a leap day, a change of offset within a minute, and fractions of any length', () => {
    const times = [
      '2028-02-28T23:59:59.999+01:00',
      '2028-02-29T00:00:00.000+01:00',
      '2028-02-29T00:00:00.25+01:00',
      '2028-02-29T00:00:01.1234567+01:00',
      '2028-02-29T00:00:02Z',
      '2028-02-29T00:00:03.0001+02:00',
      '2028-02-29T00:00:04+0530',
      '2028-02-29 00:00:05Z',
    ];
    const { rows, problems } = scan(log(...times.map((text) => `${text},30,650,1,run`)));
    expect(problems).toEqual([]);
    expect(rows.map((row) => row.time)).toEqual([
      time('2028-02-28T22:59:59.999Z'),
      time('2028-02-28T23:00:00Z'),
      time('2028-02-28T23:00:00.250Z'),
      time('2028-02-28T23:00:01.123Z'),
      time('2028-02-29T00:00:02Z'),
      time('2028-02-28T22:00:03Z'),
      time('2028-02-28T18:30:04Z'),
      time('2028-02-29T00:00:05Z'),
    ]);
  });

  it('elapsed seconds, other units, extra columns and quotes', () => {
    const { rows, problems } = scan(
      'elapsed [s],note,speed [m/s],load [kN],pressure [kPa]\n0.1,"a, ""b""",8.25,0.65,250\n0.2,,8.25,0.65,250.5\n',
    );
    expect(problems).toEqual([]);
    expect(rows.map((row) => row.time)).toEqual([100, 200]);
    // m/s keeps 5 decimals, kN 6, kPa 2: never less than the 10⁻⁴ km/h, 10⁻³ N, 10⁻⁴ bar of the results.
    expect(rows[1]!.values.slice(0, 3)).toEqual([825000, 650000, 25050]);
  });

  it('semicolons with a decimal comma as it reads the plain form', () => {
    const plain = scan(log(ROW, ROW.replace('30.02', '-1.5')));
    const german = log(ROW, ROW.replace('30.02', '-1.5')).replaceAll(',', ';').replaceAll('.', ',');
    const { rows, problems } = scan(german, { dialect: { separator: ';', decimal: ',' } });
    expect(problems).toEqual([]);
    expect(rows.map(({ values }) => values)).toEqual(plain.rows.map(({ values }) => values));
  });

  it('CRLF and lone CR as LF, with the same line numbers', () => {
    const text = log(ROW, '', ROW.replace('00:00+', '00:01+'));
    const lf = scan(text);
    for (const end of ['\r\n', '\r']) {
      const other = scan(text.replaceAll('\n', end));
      expect(other.problems).toEqual([]);
      expect(other.rows.map(({ line, values }) => [line, values])).toEqual(
        lf.rows.map(({ line, values }) => [line, values]),
      );
    }
  });

  it('numbers in every form that is a number, and long ones', () => {
    const cells = [
      '+30',
      '30.',
      '.5',
      '3e1',
      ' 30 ',
      '007',
      '-0.0',
      '30.00005',
      '30.00004999',
      '-30.00005',
      '30.123456789012345678',
    ];
    const { rows, problems } = scan(log(...cells.map((cell) => `2026-03-02T06:00:00Z,${cell},650,1,run`)));
    expect(problems).toEqual([]);
    expect(rows.map(({ values }) => values[0])).toEqual([
      300000, 300000, 5000, 300000, 300000, 70000, 0, 300001, 300000, -300001, 301235,
    ]);
    const big = scan(log('2026-03-02T06:00:00Z,30,650,1234567890.123456,run'));
    expect(big.rows[0]!.values[2]).toBe(1234567890123456);
  });

  it('empty cells and sentinels as missing, never as a value', () => {
    const { rows, problems } = scan(
      log(
        '2026-03-02T06:00:00Z,-9999,,1,run',
        '2026-03-02T06:00:01Z,NaN,-9999.0,1,run',
        '2026-03-02T06:00:02Z,OVERRANGE,9999,9999.0,run',
        '2026-03-02T06:00:03Z,9998,-9998,,run',
      ),
      { dialect: { sentinels: ['NaN', 'OVERRANGE', '-9999', '9999'] } },
    );
    expect(problems).toEqual([]);
    const { NaN: no } = Number;
    expect(rows.map(({ values }) => values)).toEqual([
      [no, no, 1e6],
      [no, no, 1e6],
      [no, no, no],
      [99980000, -9998000, no],
    ]);
  });
});

describe('PartScanner tells', () => {
  const places = (content: string, dialect: Partial<SampleDialect> = {}) =>
    scan(content, { dialect }).problems.map(({ code, line, column }) => [code, line, column]);

  it('a wrong cell by line and column, and goes on', () => {
    const bad = log(
      ROW,
      ROW.replace('651.3', '65x.3'),
      ROW.replace('12.345', '--'),
      `"${ROW.slice(0, 25)}",1,oops,1,run`,
    );
    expect(places(bad)).toEqual([
      ['not-a-number', 3, 33],
      ['not-a-number', 4, 39],
      ['not-a-number', 5, 31],
    ]);
    expect(scan(bad).problems[0]!.message).toContain('"65x.3"');
  });

  it.each([
    ['a decimal comma in the plain form', ROW.replace('30.02', '30,02'), [['ragged-row', 3, 46]]],
    ['too few cells', ROW.slice(0, -4), [['ragged-row', 3, null]]],
    ['a time without an offset', ROW.replace('+01:00', ''), [['missing-offset', 3, 1]]],
    ['a day that is none', ROW.replace('03-02', '02-30'), [['not-a-time', 3, 1]]],
    ['a second that is none', ROW.replace('06:00:00', '06:00:60'), [['not-a-time', 3, 1]]],
    ['a number beyond all measure', ROW.replace('651.3', '1E+300'), [['out-of-range', 3, 33]]],
    ['hexadecimal', ROW.replace('651.3', '0x28b'), [['not-a-number', 3, 33]]],
    ['thousands marks', ROW.replace('651.3', "1'651.3"), [['not-a-number', 3, 33]]],
    ['a quote that does not close', ROW.replace('run', '"run'), [['unclosed-quote', 3, 46]]],
    ['text behind a quote', ROW.replace('run', '"run" x'), [['text-after-quote', 3, 51]]],
    ['NUL bytes before text', ROW.replace('run', '\0\0run'), [['nul-bytes', 3, 46]]],
    ['a column that changes its unit half-way', HEADER.replace('[N]', '[kgf]'), [['changed-header', 3, 1]]],
  ])('%s', (_, row, expected) => {
    const text = log(ROW, row, ROW);
    expect(places(text)).toEqual(expected);
    expect(scan(text).rows.map(({ line }) => line)).toEqual([2, 4]);
  });

  it('what is no row and no problem: blank lines, the header again, a cut last line, NUL padding', () => {
    const text = `${log(ROW, '', HEADER, ROW, ',,,,')}2026-03-02T06:00:`;
    const { tallies, rows, problems } = scan(text);
    expect(problems).toEqual([]);
    expect(rows.map(({ line }) => line)).toEqual([2, 5]);
    expect(tallies.map(({ code, count, firstLine }) => [code, count, firstLine])).toEqual([
      ['blank-line', 1, 3],
      ['empty-row', 1, 6],
      ['repeated-header', 1, 4],
      ['truncated-line', 1, 7],
    ]);
    const padded = scan(`${log(ROW)}${'\0'.repeat(300_000)}`);
    expect(padded.problems).toEqual([]);
    expect(padded.tallies.map(({ code, firstLine }) => [code, firstLine])).toEqual([['nul-padding', 3]]);
    const crashed = scan(`${log(ROW)}2026-03-02T06:00:01Z,30.0\0\0\0\0`);
    expect(crashed.tallies.map(({ code, firstLine }) => [code, firstLine])).toEqual([['truncated-line', 3]]);
  });

  it('a last line without a line end as a row where it is whole', () => {
    expect(scan(log(ROW, ROW).slice(0, -1)).rows.map(({ line }) => line)).toEqual([2, 3]);
  });

  it('a line of 2 MB in bounded memory, with the lines after it in their place', () => {
    const { problems, rows, lines } = scan(log(ROW, 'x'.repeat(2_000_000), ROW), { window: 4096 });
    expect(problems.map(({ code, line }) => [code, line])).toEqual([['row-too-long', 3]]);
    expect(rows.map(({ line }) => line)).toEqual([2, 4]);
    expect(lines).toBe(3);
  });
});

describe('PartScanner does not depend on', () => {
  const rows = Array.from({ length: 200 }, (_, i) => {
    const cells = [
      new Date(Date.UTC(2026, 2, 2, 22, 59, 0) + i * 700).toISOString(),
      (i / 7).toFixed(i % 6),
      650 + i,
      i / 1000,
    ];
    return i % 61 === 60
      ? HEADER
      : i % 37 === 36
        ? ''
        : `${cells.join(',')},${i % 5 ? 'run' : '"stop, why"'}`;
  });
  const text = log(...rows);
  const whole = scan(text);

  it('where parts are cut, also within a row, a quote or a line end', () => {
    expect(whole.rows.length).toBeGreaterThan(150);
    for (const end of ['\n', '\r\n']) {
      const file = text.replaceAll('\n', end);
      const expected = scan(file).rows;
      for (let partBytes = 17; partBytes < 3000; partBytes = Math.ceil(partBytes * 1.7) + 1) {
        expect(scan(file, { partBytes, capacity: 7 }).rows).toEqual(expected);
      }
    }
  });

  it('how much is read at once', () => {
    for (const window of [80, 97, 128, 255, 1000, 4096]) {
      const other = scan(text, { window, partBytes: 3001, capacity: 3 });
      expect(other.rows).toEqual(whole.rows);
      expect(other.lines).toBe(whole.lines);
    }
  });
});

describe('openSampleLog refuses', () => {
  const refuse = (content: string | Uint8Array): string[] => {
    try {
      openSampleLog(folder.write('bad.csv', content), PLAIN_SAMPLES);
    } catch (error) {
      if (error instanceof InputError) return error.problems.map(({ code }) => code);
      throw error;
    }
    return [];
  };

  it.each([
    ['an empty file', '', ['empty-file']],
    ['blank lines', '\n\n', ['no-header']],
    ['UTF-16', Buffer.from('\uFEFFtime,speed', 'utf16le'), ['wrong-encoding']],
    [
      'a header in another code page',
      Buffer.from('time,speed [km/h],load [N],t\xfcre\n', 'latin1'),
      ['wrong-encoding'],
    ],
    ['a header without load', 'time,speed [km/h]\n', ['missing-column']],
    ['a header without a time', 'speed [km/h],load [N]\n', ['missing-column']],
    ['a speed without a unit', 'time,speed,load [N]\n', ['missing-unit']],
    ['a load in bar', 'time,speed [km/h],load [bar]\n', ['wrong-unit']],
  ])('%s', (_, content, codes) => {
    expect(refuse(content)).toEqual(codes);
  });

  it('a file that is not there', () => {
    expect(() => openSampleLog('no/such/file.csv', PLAIN_SAMPLES)).toThrow('there is no such file');
  });
});
