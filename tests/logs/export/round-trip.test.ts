import { Readable } from 'node:stream';
import fc from 'fast-check';
import { expect, it } from 'vitest';
// The scripts that make fixtures write the code pages that Node only reads.
import { encode } from '../../../fixtures/encode.mjs';
import { readDropLog } from '../../../src/logs/drops.ts';
import { profileOf } from './profile-of.ts';

/** Text that all code pages of the test can write; no separators of the test, which are quoted where they occur. */
const word = fc.stringMatching(/^[A-Za-z][A-Za-z0-9 ,;.|_-]{0,8}[A-Za-z0-9]$/);
/** What a rig may call a column or an outcome in the code page. */
const local = {
  'utf-8': ['Höhe', 'état', '結果', 'ścisły'],
  'utf-16le': ['Höhe', 'état', '結果', '×'],
  'utf-16be': ['Höhe', 'état', '結果', '○'],
  'windows-1252': ['Höhe', 'état', 'µ-Wert', '€'],
  shift_jis: ['高さ', '試験体', '判定', '表示'],
  gbk: ['高度', '样品', '结果', '穿孔'],
} as const;

const dialect = fc
  .record({
    encoding: fc.constantFrom(...(Object.keys(local) as (keyof typeof local)[])),
    separator: fc.constantFrom(';', '\t', '|', ','),
    decimal: fc.constantFrom('.', ','),
    thousands: fc.constantFrom('none', '.', ',', ' ', "'"),
    mark: fc.boolean(),
    hint: fc.boolean(),
    isFixed: fc.boolean(),
    preamble: fc.array(fc.tuple(word, word), { maxLength: 3 }),
    isCounted: fc.boolean(),
    hasUnitsRow: fc.boolean(),
    hasProcessing: fc.boolean(),
    hasFooter: fc.boolean(),
    lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
    heightUnit: fc.constantFrom('mm', 'cm', 'm'),
    names: fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4 }),
    order: fc.shuffledSubarray(['specimen', 'height', 'pressure', 'outcome', 'time', 'remark'] as const, {
      minLength: 6,
    }),
    time: fc.constantFrom(
      'DD.MM.YYYY hh:mm:ss',
      'M/D/YY h:mm:ss AP',
      'YYYY-MM-DDThh:mm:ss',
      'D MMM YYYY hh:mm:ss',
      'ddd DD/MM/YYYY hh:mm:ss',
      'serial-1904',
    ),
    offset: fc.constantFrom('+00:00', '+01:00', '-05:30', '+09:00'),
    sentinel: fc.constantFrom('-999', '---', 'NAN'),
  })
  .filter(({ separator, decimal, thousands }) => {
    return separator !== decimal && thousands !== decimal && thousands !== separator;
  });
type Made = typeof dialect extends fc.Arbitrary<infer T> ? T : never;

/** Drops in whole tenths of a millimetre, hundredths of a bar and seconds since 2026: exact in every unit. */
const drop = fc.record({
  specimen: word,
  height: fc.integer({ min: 1, max: 500_000 }),
  pressure: fc.option(fc.integer({ min: 190, max: 210 }), { nil: null }),
  outcome: fc.constantFrom('failed', 'survived', 'not-evaluable', null),
  second: fc.integer({ min: 0, max: 31_000_000 }),
  remark: fc.option(word, { nil: null }),
});

const two = (value: number) => String(value).padStart(2, '0');
/** Of several languages, without a mark that a code page lacks. */
const DAYS = ['dim.', 'Mo', 'martes', 'Wednesday', 'Do', 'ven', 'Sa'];
const MONTHS = ['Jan', 'févr.', 'Mär', 'apr', 'Mai', 'June', 'juil.', 'AUG', 'Sept.', 'okt', 'Nov', 'déc.'];

function digits(value: number, behind: number, { decimal, thousands }: Made): string {
  const text = String(value).padStart(behind + 1, '0');
  const mark = thousands === 'none' ? '' : thousands;
  const whole = text.slice(0, text.length - behind).replace(/\B(?=(\d{3})+$)/g, mark);
  return behind === 0 ? whole : `${whole}${decimal}${text.slice(-behind)}`;
}

function timeText(second: number, made: Made): string {
  const date = new Date(Date.UTC(2026, 0, 1) + second * 1000);
  const [y, mo, d] = [date.getUTCFullYear(), date.getUTCMonth(), date.getUTCDate()];
  const [h, mi, s] = [date.getUTCHours(), date.getUTCMinutes(), date.getUTCSeconds()];
  switch (made.time) {
    case 'DD.MM.YYYY hh:mm:ss':
      return `${two(d)}.${two(mo + 1)}.${y} ${two(h)}:${two(mi)}:${two(s)}`;
    case 'M/D/YY h:mm:ss AP':
      return `${mo + 1}/${d}/${y % 100} ${h % 12 || 12}:${two(mi)}:${two(s)} ${h < 12 ? 'am' : 'p.m.'}`;
    case 'YYYY-MM-DDThh:mm:ss':
      return date.toISOString().slice(0, 19);
    case 'D MMM YYYY hh:mm:ss':
      return `${d} ${['windows-1252', 'utf-8', 'utf-16le', 'utf-16be'].includes(made.encoding) ? MONTHS[mo] : MONTHS[mo]!.normalize('NFD').replace(/\p{M}/gu, '')} ${y} ${two(h)}:${two(mi)}:${two(s)}`;
    case 'ddd DD/MM/YYYY hh:mm:ss':
      return `${DAYS[date.getUTCDay()]} ${two(d)}/${two(mo + 1)}/${y} ${two(h)}:${two(mi)}:${two(s)}`;
    default:
      // Nine digits of a day are a tenth of a millisecond.
      return ((date.getTime() - Date.UTC(1904, 0, 1)) / 86_400_000).toFixed(9).replace('.', made.decimal);
  }
}

const BEHIND = { mm: 1, cm: 2, m: 4 } as const;

function write(
  made: Made,
  drops: readonly (typeof drop extends fc.Arbitrary<infer T> ? T : never)[],
): { bytes: Buffer; widths: readonly number[] } {
  const { separator, lineEnd } = made;
  const cell = (text: string) => (text.includes(separator) ? `"${text}"` : text);
  const [specimen, height, outcome, failed] = made.names.map((i) => local[made.encoding][i]!);
  const unit = (name: string) => (made.hasUnitsRow ? '' : name);
  const titles = {
    specimen: specimen!,
    height: `${height}${unit(` [${made.heightUnit}]`)}`,
    pressure: `p${unit(' (kPa)')}`,
    outcome: outcome!,
    time: 'Zeit',
    remark: 'remark',
  };
  const units = {
    specimen: '',
    height: made.heightUnit,
    pressure: '[kPa]',
    outcome: '-',
    time: '',
    remark: '',
  };
  const words = { failed: failed!, survived: 'o', 'not-evaluable': '?' };
  const cells = (it: (typeof drops)[number]) => ({
    specimen: it.specimen,
    height: digits(it.height, BEHIND[made.heightUnit], made),
    pressure: it.pressure === null ? made.sentinel : digits(it.pressure, 0, made),
    outcome: it.outcome === null ? '' : words[it.outcome as keyof typeof words],
    time: timeText(it.second, made),
    remark: it.remark ?? '',
  });
  type Cells = Readonly<Record<(typeof made.order)[number], string>>;
  const tables: readonly Cells[] = [titles, units, ...drops.map(cells)];
  const widths = made.order.map((key) => Math.max(4, ...tables.map((of) => Array.from(of[key]).length)) + 1);
  const row = (of: Cells) =>
    made.isFixed
      ? made.order.map((key, i) => of[key] + ' '.repeat(widths[i]! - Array.from(of[key]).length)).join('')
      : made.order.map((key) => cell(of[key])).join(separator);
  const processing = { specimen: '', height: 'Smp', pressure: 'Avg', outcome: '', time: '', remark: '' };
  const lines = [
    ...(made.hint && !made.isFixed ? [`sep=${separator}`] : []),
    ...made.preamble.map(([key, value]) => (made.isFixed ? `${key}: ${value}` : cell(`${key}: ${value}`))),
    row(titles),
    ...(made.hasUnitsRow ? [row(units)] : []),
    ...(made.hasProcessing ? [row(processing)] : []),
    ...drops.map((it) => row(cells(it))),
    ...(made.hasFooter ? [`Summe${made.isFixed ? '   ' : separator}${drops.length}`] : []),
  ];
  const bytes = encode((made.mark ? bom(made.encoding) : '') + lines.join(lineEnd) + lineEnd, made.encoding);
  return { bytes, widths };
}

function bom(encoding: string): string {
  return encoding.startsWith('utf') ? '\ufeff' : '';
}

function profileFor(made: Made, widths: readonly number[]): string {
  const [specimen, height, outcome, failed] = made.names.map((i) => JSON.stringify(local[made.encoding][i]!));
  const header = ['names', made.hasUnitsRow ? 'units' : null, made.hasProcessing ? 'processing' : null];
  const zone = JSON.stringify(made.offset);
  return `{
    ${made.isFixed ? `widths: [${widths.join(', ')}]` : `separator: ${JSON.stringify(made.separator)}`}, decimal: "${made.decimal}", thousands: "${made.thousands}",
    encoding: ${made.encoding}, preamble: ${made.isCounted ? made.preamble.length : 'until-header'},
    header: [${header.filter((it) => it !== null).join(', ')}], footer: Summe, sentinels: "${made.sentinel}",
    columns: { specimen: ${specimen}, height: ${height}, outcome: ${outcome}, pressure: p, time: Zeit },
    outcomes: { failed: ${failed}, survived: o, not-evaluable: "?" },
    time: { format: "${made.time}", zone: ${zone} } }`;
}

it('reads back the drops that were written, in whatever dialect a profile describes', async () => {
  await fc.assert(
    fc.asyncProperty(
      dialect,
      fc.array(drop, { minLength: 1, maxLength: 6 }),
      fc.integer({ min: 1, max: 9 }),
      async (made, drops, size) => {
        const { bytes, widths } = write(made, drops);
        const pieces = Array.from({ length: Math.ceil(bytes.length / size) }, (_, i) =>
          bytes.subarray(i * size, (i + 1) * size),
        );
        const log = await readDropLog(Readable.from(pieces), profileOf(profileFor(made, widths)));
        expect(log.drops).toMatchObject(
          drops.map(({ specimen, height, pressure, outcome, second, remark }) => ({
            specimen,
            height: height / 10,
            pressure: pressure === null ? null : pressure / 100,
            outcome,
            time: new Date(Date.UTC(2026, 0, 1) + second * 1000).toISOString().slice(0, 19) + made.offset,
            remark,
          })),
        );
        expect(log.import.rows).toEqual({ read: drops.length, kept: drops.length, collapsed: 0 });
        expect(log.import.emptied.p ?? log.import.emptied['p (kPa)'] ?? 0).toBe(
          drops.filter(({ pressure }) => pressure === null).length,
        );
      },
    ),
    { seed: 20260309, numRuns: 300 },
  );
});
