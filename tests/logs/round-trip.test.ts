import { Readable } from 'node:stream';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { Utf8Decoder } from '../../src/logs/decode.ts';
import type { Drop } from '../../src/logs/drop.ts';
import { readDropLog } from '../../src/logs/drops.ts';
import { Row } from '../../src/logs/row.ts';
import { RowScanner } from '../../src/logs/scan.ts';

/** Any text but NUL, which is no text in a log; lone surrogates cannot be written in UTF-8. */
const anyText = fc.string({ unit: 'binary', maxLength: 12 }).map((text) => text.replaceAll('\0', ''));
const spiky = fc.oneof(anyText, fc.stringMatching(/^["',;\r\n a-c]{0,8}$/));
const name = spiky.map((text) => text.trim()).filter((text) => text !== '');
const optional = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null });
/** A whole number of tenths, written with a decimal point by its digits. */
const tenths = (least: number, most: number) => fc.integer({ min: least, max: most });
const written = (value: number, digits: number) => {
  const text = String(value).padStart(digits + 1, '0');
  return `${text.slice(0, -digits)}.${text.slice(-digits)}`;
};

const drop = fc.record({
  number: optional(fc.nat()),
  specimen: name,
  height: tenths(1, 50_000),
  pressure: optional(tenths(0, 99)),
  outcome: optional(fc.constantFrom<NonNullable<Drop['outcome']>>('failed', 'survived', 'not-evaluable')),
  valid: fc.boolean(),
  operator: optional(name),
  remark: optional(spiky.filter((text) => text.trim() !== '')),
});
type Wanted = typeof drop extends fc.Arbitrary<infer T> ? T : never;

const CELLS: Readonly<Record<keyof Wanted, (wanted: Wanted) => string>> = {
  number: ({ number }) => (number === null ? '' : String(number)),
  specimen: ({ specimen }) => specimen,
  height: ({ height }) => written(height, 4),
  pressure: ({ pressure }) => (pressure === null ? '' : written(pressure, 1)),
  outcome: ({ outcome }) => outcome ?? '',
  valid: ({ valid }) => (valid ? 'yes' : 'no'),
  operator: ({ operator }) => operator ?? '',
  remark: ({ remark }) => remark ?? '',
};
// Heights are written in metres, so that a unit is converted on the way.
const TITLES: Readonly<Record<keyof Wanted, string>> = {
  number: 'drop',
  specimen: 'Specimen',
  height: ' height [m]',
  pressure: 'pressure [bar]',
  outcome: 'outcome',
  valid: 'valid',
  operator: 'operator',
  remark: 'REMARK',
};

const log = fc.record({
  drops: fc.array(drop, { minLength: 1, maxLength: 8 }),
  order: fc.shuffledSubarray(Object.keys(TITLES) as (keyof Wanted)[], { minLength: 8 }),
  lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
  hasMark: fc.boolean(),
  isEnded: fc.boolean(),
  isAllQuoted: fc.boolean(),
});

function write({
  drops,
  order,
  lineEnd,
  hasMark,
  isEnded,
  isAllQuoted,
}: typeof log extends fc.Arbitrary<infer T> ? T : never): Buffer {
  const cell = (text: string) =>
    isAllQuoted || /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  const rows = [
    order.map((key) => TITLES[key]),
    ...drops.map((wanted) => order.map((key) => CELLS[key](wanted))),
  ];
  const text = rows.map((row) => row.map(cell).join(',')).join(lineEnd);
  // A last line that ends behind the comma of an empty outcome is one cut short: such a log is written to its end.
  const end = isEnded || order.at(-1) === 'outcome' ? lineEnd : '';
  return Buffer.from(`${hasMark ? '\ufeff' : ''}${text}${end}`);
}

it('reads back the drops that were written, however the bytes are cut', async () => {
  await fc.assert(
    fc.asyncProperty(log, fc.integer({ min: 1, max: 7 }), async (made, size) => {
      const bytes = write(made);
      const pieces = Array.from({ length: Math.ceil(bytes.length / size) }, (_, i) =>
        bytes.subarray(i * size, (i + 1) * size),
      );
      const { drops, findings } = await readDropLog(Readable.from(pieces));
      expect(findings).toEqual([]);
      expect(drops).toMatchObject(
        made.drops.map((wanted) => ({
          ...wanted,
          height: wanted.height / 10,
          pressure: wanted.pressure === null ? null : wanted.pressure / 10,
        })),
      );
    }),
    { seed: 20260301, numRuns: 300 },
  );
});

it('has the same rows at the same lines for a cut at every byte', () => {
  const rowsOf = (pieces: readonly Uint8Array[]) => {
    const decoder = new Utf8Decoder();
    const scanner = new RowScanner(',');
    const rows = pieces.flatMap((piece) => [...scanner.push(decoder.push(piece).text)]);
    return [...rows, ...scanner.end()].map((row) => {
      expect(row).toBeInstanceOf(Row);
      const { line, cells } = row as Row;
      return { line, cells, places: cells.map((_, i) => (row as Row).place(i)) };
    });
  };
  fc.assert(
    fc.property(log, (made) => {
      const bytes = write(made);
      const whole = rowsOf([bytes]);
      expect(whole).toHaveLength(made.drops.length + 1);
      for (let cut = 1; cut < bytes.length; cut++) {
        expect(rowsOf([bytes.subarray(0, cut), bytes.subarray(cut)])).toEqual(whole);
      }
      expect(rowsOf([...bytes].map((byte) => Uint8Array.of(byte)))).toEqual(whole);
    }),
    { seed: 20260302, numRuns: 15 },
  );
});
