import type { SampleBatch } from './batch.ts';
import type { ClockMinute } from './clock.ts';
import type { SampleLayout } from './layout.ts';
import type { CellShape, RowShape } from './row-shape.ts';
import type { ColumnSentinels } from './sentinels.ts';

/**
 * Reads rows from byte `at` on for as long as they keep the shape, the minute and the state, and puts them into the
 * batch from place `row` on.
 *
 * @returns how many rows were read; 0 where the first is another
 */
export type ShapeReader = (
  bytes: Uint8Array,
  view: DataView,
  at: number,
  stop: number,
  row: number,
  line: number,
  base: number,
) => number;

export interface ShapeContext {
  readonly layout: SampleLayout;
  readonly batch: SampleBatch;
  readonly clock: ClockMinute;
  readonly sentinels: readonly ColumnSentinels[];
}

/**
 * Writes the reader of one shape as a program of its own. A general loop asks at every byte what it may be; here
 * every place is known, so all bytes of a row are read unconditionally, what must not differ is gathered in `diff`,
 * what must be a digit in `bad` (negative where one is not), and one question at the end says whether the row held
 * to its shape. Measured 2 to 3 times as fast as the general loop (bench/RESULTS-drum.md).
 *
 * The program is put together from numbers only: lengths, byte values and powers of ten; no text of a log is in it.
 */
export function shapeReader(shape: RowShape, context: ShapeContext): ShapeReader {
  const { layout, batch, clock, sentinels } = context;
  const lines: string[] = [];
  const stores: string[] = [];
  let at = 0;
  const last = shape.cells.length - 1;
  for (const [index, cell] of shape.cells.entries()) {
    const column = layout.columns.findIndex((candidate) => candidate.index === index);
    if (cell.kind === 'number') {
      at = numberProgram(cell, at, layout, column, sentinels[column]!, lines, stores);
    } else if (cell.kind === 'time') {
      at = timeProgram(cell, at, lines);
    } else if (cell.kind === 'state') {
      for (const byte of Buffer.from(cell.word)) lines.push(`diff |= bytes[at + ${at++}] ^ ${byte};`);
      stores.push(`state[row] = ${batch.stateId(cell.word.trim())};`);
    } else {
      for (let i = 0; i < cell.length; i++) lines.push(plainByte(at++, layout));
    }
    if (index < last) lines.push(`diff |= bytes[at + ${at++}] ^ ${layout.dialect.separator.charCodeAt(0)};`);
  }
  if (shape.endLength === 2) lines.push(`diff |= bytes[at + ${at++}] ^ 13;`);
  const source = `return (bytes, view, at, stop, row, line, base) => {
    const { words, start } = clock;
    const w0 = words[0], w1 = words[1], w2 = words[2], w3 = words[3];
    const first = row;
    for (; row < ${batch.capacity} && at + ${shape.length} <= stop; row++) {
      if (bytes[at + ${at}] !== ${layout.lineEnd}) break;
      let diff = 0, bad = 0;
      ${lines.join('\n      ')}
      if (diff !== 0 || bad < 0) break;
      ${stores.join('\n      ')}
      lineOf[row] = line++;
      from[row] = base + at;
      at += ${shape.length};
      to[row] = base + at;
    }
    return row - first;
  };`;
  const { time, line: lineOf, from, to, state } = batch;
  const make = new Function(
    'clock',
    'time',
    'lineOf',
    'from',
    'to',
    'state',
    ...batch.values.map((_, k) => `c${k}`),
    source,
  );
  return make(clock, time, lineOf, from, to, state, ...batch.values) as ShapeReader;
}

type NumberCell = CellShape & { readonly kind: 'number' };

function numberProgram(
  { isNegative, digits, fraction }: NumberCell,
  begin: number,
  layout: SampleLayout,
  column: number,
  sentinels: ColumnSentinels,
  lines: string[],
  stores: string[],
): number {
  let at = begin;
  if (isNegative) lines.push(`diff |= bytes[at + ${at++}] ^ 45;`);
  const places: number[] = [];
  for (let i = 0; i < digits; i++) places.push(at++);
  if (fraction !== null) lines.push(`diff |= bytes[at + ${at++}] ^ ${layout.dialect.decimal.charCodeAt(0)};`);
  for (let i = 0; i < (fraction ?? 0); i++) places.push(at++);
  if (places.length === 0) {
    stores.push(`c${column}[row] = NaN;`);
    return at;
  }
  const scale = 10 ** (layout.columns[column]!.decimals - (fraction ?? 0));
  // The first nine digits and the rest: each fits 32 bits, whatever the digits are.
  const parts = [places.slice(0, 9), places.slice(9)].filter((part) => part.length > 0);
  const names = parts.map((part, i) => {
    const name = `n${column}_${i}`;
    lines.push(`let ${name} = 0;`);
    digitsProgram(part, name, lines);
    return name;
  });
  const whole = names.length === 1 ? names[0]! : `(${names[0]} * ${10 ** parts[1]!.length} + ${names[1]})`;
  const value = `v${column}`;
  lines.push(`const ${value} = ${isNegative ? '0 - ' : ''}${whole}${scale === 1 ? '' : ` * ${scale}`};`);
  if (sentinels.low > Number.NEGATIVE_INFINITY) lines.push(`if (${value} <= ${sentinels.low}) bad = -1;`);
  if (sentinels.high < Number.POSITIVE_INFINITY) lines.push(`if (${value} >= ${sentinels.high}) bad = -1;`);
  stores.push(`c${column}[row] = ${value};`);
  return at;
}

function digitsProgram(places: readonly number[], name: string, lines: string[]): void {
  const digit = `${name}d`;
  for (const [i, place] of places.entries()) {
    lines.push(`const ${digit}${i} = bytes[at + ${place}] - 48;`);
    lines.push(`bad |= ${digit}${i} | (9 - ${digit}${i});`);
  }
  const terms = places.map((_, i) =>
    i === places.length - 1 ? `${digit}${i}` : `Math.imul(${digit}${i}, ${10 ** (places.length - 1 - i)})`,
  );
  lines.push(`${name} = (${terms.join(' + ')}) | 0;`);
}

function timeProgram(
  { fraction, suffix }: CellShape & { kind: 'time' },
  begin: number,
  lines: string[],
): number {
  for (let i = 0; i < 4; i++) lines.push(`diff |= view.getInt32(at + ${begin + 4 * i}, true) ^ w${i};`);
  let at = begin + 16;
  lines.push(`diff |= bytes[at + ${at++}] ^ 58;`);
  const places = [at++, at++];
  const weights = [10_000, 1000];
  if (fraction !== null) lines.push(`diff |= bytes[at + ${at++}] ^ 46;`);
  for (let i = 0; i < (fraction ?? 0); i++) {
    places.push(at++);
    weights.push([100, 10, 1][i]!);
  }
  for (const [i, place] of places.entries()) {
    lines.push(`const t${i} = bytes[at + ${place}] - 48;`);
    lines.push(`bad |= t${i} | (${i === 0 ? 5 : 9} - t${i});`);
  }
  for (const byte of Buffer.from(suffix)) lines.push(`diff |= bytes[at + ${at++}] ^ ${byte};`);
  const milliseconds = weights.map((weight, i) => `t${i} * ${weight}`).join(' + ');
  lines.push(`time[row] = start + (${milliseconds});`);
  return at;
}

/** A byte of a cell that is not read: anything printable that does not end or quote it. */
function plainByte(at: number, layout: SampleLayout): string {
  const separator = layout.dialect.separator.charCodeAt(0);
  return `{ const b = bytes[at + ${at}]; if (b < 32 || b > 126 || b === 34 || b === ${separator}) bad = -1; }`;
}
