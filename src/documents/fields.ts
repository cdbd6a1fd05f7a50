import * as z from 'zod/mini';
import { instantOf } from '../logs/instant.ts';
import { echo, quote } from '../problem/echo.ts';
import { didYouMean } from '../problem/suggest.ts';
import { type Quantity, type Reading, readNumber, readQuantity } from '../quantity/quantity.ts';
import { dimensionOf } from '../quantity/units.ts';
import { describe, type Json } from './hover.ts';
import { eitherPattern, quantityPattern } from './pattern.ts';

/** A field arrives as the text that stands in the file and leaves as a value, or as the reason why it is none. */
export type Field<T> = z.ZodMiniType<T, string>;

interface FieldRule<T> {
  readonly description: string;
  /** What a person should have written: the end of the messages. */
  readonly expected: string;
  readonly code: string;
  /** What an editor, which does give scalars a type, may accept: keywords of JSON Schema. */
  readonly json: () => Json;
  readonly read: (text: string) => Reading<T>;
}

/** Bounds of a number in the unit of its field. */
export interface Bounds {
  readonly above?: number;
  readonly atLeast?: number;
  readonly below?: number;
  readonly atMost?: number;
}

function field<T>({ description, expected, code, json, read }: FieldRule<T>): Field<T> {
  const value = z.transform((text: string, context): T => {
    const reading = text === '' ? wrong(`found nothing, expected ${expected}`) : read(text);
    if (reading.ok) return reading.value;
    context.issues.push({ code: 'custom', input: text, message: reading.why, params: { code } });
    return z.NEVER;
  });
  return describe(z.pipe(z.string({ error: () => expected }), value), description, json);
}

/** A quantity with its unit and, behind it, a tolerance if it has one. */
export function quantity(unit: string, description: string, bounds: Bounds = {}): Field<Quantity> {
  return field({
    description,
    expected: `a ${dimensionOf(unit)} with its unit, in ${unit} or another`,
    code: 'bad-quantity',
    json: () => ({ pattern: quantityPattern(unit, 'optional') }),
    read: (text) => withinBounds(readQuantity(text, unit), (it) => it.value, bounds, unit),
  });
}

/** A quantity that takes no tolerance, as a number in the given unit. */
export function measure(unit: string, description: string, bounds: Bounds = {}): Field<number> {
  return field({
    description,
    expected: `a ${dimensionOf(unit)} with its unit, in ${unit} or another`,
    code: 'bad-quantity',
    json: () => ({ pattern: quantityPattern(unit, 'none') }),
    read: (text) => withinBounds(plain(readQuantity(text, unit)), (it) => it, bounds, unit),
  });
}

/** A level of what a protocol varies: a height in mm or a falling mass in kg. An editor may not know yet which. */
export function level(unit: 'mm' | 'kg', description: string, bounds: Bounds = {}): Field<number> {
  return field({
    description,
    expected: `a ${dimensionOf(unit)} with its unit, in ${unit} or another`,
    code: 'bad-quantity',
    json: () => ({ pattern: eitherPattern(quantityPattern('mm', 'none'), quantityPattern('kg', 'none')) }),
    read: (text) => withinBounds(plain(readQuantity(text, unit)), (it) => it, bounds, unit),
  });
}

/** A share, such as `95 %`, as a fraction strictly between two others. */
export function share(description: string, above = 0, below = 1): Field<number> {
  return field({
    description,
    expected: `a share in per cent, more than ${above * 100} % and less than ${below * 100} %`,
    code: 'bad-quantity',
    json: () => ({ pattern: quantityPattern('1', 'none') }),
    read: (text) => withinBounds(plain(readQuantity(text, '1')), (it) => it, { above, below }, '%'),
  });
}

/** A whole number. */
export function count(description: string, least = 1, most: number | null = null): Field<number> {
  const expected =
    most === null ? `a whole number, ${least} or more` : `a whole number from ${least} to ${most}`;
  return field({
    description,
    expected,
    code: 'bad-count',
    json: () => ({
      type: ['integer', 'string'],
      minimum: least,
      ...(most === null ? {} : { maximum: most }),
      pattern: '^\\s*\\d{1,9}\\s*$',
    }),
    read: (text) => {
      const value = /^\d{1,9}$/.test(text.trim()) ? Number(text) : Number.NaN;
      if (value >= least && value <= (most ?? Infinity)) return { ok: true, value };
      return wrong(`found ${quote(text)}, expected ${expected}`);
    },
  });
}

/** A pure number, without unit. */
export function number(description: string, bounds: Bounds = {}): Field<number> {
  const expected = 'a number with a decimal point, such as 1.64';
  return field({
    description,
    expected,
    code: 'bad-number',
    json: () => ({ type: ['number', 'string'] }),
    read: (text) => {
      const value = readNumber(text);
      if (value === null) return wrong(`found ${quote(text)}, expected ${expected}`);
      return withinBounds({ ok: true, value }, (it) => it, bounds, '');
    },
  });
}

/** An id, a version, a path, a word of the lab: any printable text on one line, kept as written. */
export function name(description: string): Field<string> {
  return field({
    description,
    expected: 'text',
    code: 'bad-text',
    json: () => ({ type: ['string', 'number', 'boolean'], minLength: 1 }),
    read: (text) =>
      isPrintable(text) && text.trim() !== ''
        ? { ok: true, value: text }
        : wrong(`found ${quote(text)}, expected printable text on one line`),
  });
}

/** A calendar day, kept as written: `2026-03-09`. */
export function day(description: string): Field<string> {
  const expected = 'a day such as 2026-03-09';
  const pattern = '^\\d{4}-\\d\\d-\\d\\d$';
  return reading(
    description,
    expected,
    () => ({ pattern }),
    (text) =>
      new RegExp(pattern).test(text) && instantOf(`${text}T00:00Z`) !== null
        ? { ok: true, value: text }
        : wrong(`found ${quote(text)}, expected ${expected}`),
  );
}

/** One character, which may be a tab. */
export function character(description: string): Field<string> {
  const expected = 'one character, such as ";" (a tab is "\\t")';
  return reading(
    description,
    expected,
    () => ({ type: 'string', minLength: 1, maxLength: 2 }),
    (text) =>
      Array.from(text).length === 1 && (text === '\t' || isPrintable(text))
        ? { ok: true, value: text }
        : wrong(`found ${quote(text)}, expected ${expected}`),
  );
}

/** A sentence or more for people; line breaks become spaces. */
export function prose(description: string): Field<string> {
  return field({
    description,
    expected: 'text',
    code: 'bad-text',
    json: () => ({ type: ['string', 'number', 'boolean'], minLength: 1 }),
    read: (text) => {
      const value = text.replace(/\s+/gu, ' ').trim();
      if (isPrintable(value)) return { ok: true, value };
      return wrong(`found ${quote(text)}, expected printable text`);
    },
  });
}

/** One word of a list. */
export function word<const W extends string>(words: readonly W[], description: string): Field<W> {
  const expected = `one of ${words.join(', ')}`;
  return field({
    description,
    expected,
    code: 'unknown-word',
    json: () => ({ enum: [...words] }),
    read: (text) => {
      const known = words.find((candidate) => candidate === text);
      if (known !== undefined) return { ok: true, value: known };
      return wrong(`found ${quote(text)}, expected ${expected}${didYouMean(text, words)}`);
    },
  });
}

/** `true` or `false`. */
export function flag(description: string): Field<boolean> {
  const expected = 'true or false';
  return field({
    description,
    expected,
    code: 'bad-flag',
    json: () => ({ type: ['boolean', 'string'], enum: [true, false, 'true', 'false'] }),
    read: (text) =>
      text === 'true' || text === 'false'
        ? { ok: true, value: text === 'true' }
        : wrong(`found ${quote(text)}, expected ${expected}`),
  });
}

/** Text that a function of the kind reads itself. */
export function reading<T>(
  description: string,
  expected: string,
  json: () => Json,
  read: (text: string) => Reading<T>,
): Field<T> {
  return field({ description, expected, code: 'bad-value', json, read });
}

/** What a pin such as `pinch-up-down@1.0.0` names; the version is null where none is given. */
export function pin(description: string): Field<{ id: string; version: string | null }> {
  const expected = 'an id with its version, such as "pinch-up-down@1.0.0"';
  const json = (): Json => ({ type: ['string', 'number'], minLength: 1 });
  return reading(description, expected, json, (text) => {
    const at = text.lastIndexOf('@');
    const id = at < 0 ? text : text.slice(0, at);
    const version = at < 0 ? null : text.slice(at + 1);
    if (id === '' || version === '' || !isPrintable(text)) {
      return wrong(`found ${quote(text)}, expected ${expected}`);
    }
    return { ok: true, value: { id, version } };
  });
}

/** The failed half of a reading. */
export function wrong(why: string): { readonly ok: false; readonly why: string } {
  return { ok: false, why };
}

function plain(quantity: Reading<Quantity>): Reading<number> {
  if (!quantity.ok) return quantity;
  if (quantity.value.tolerance === null) return { ok: true, value: quantity.value.value };
  return wrong(`found ${quote(quantity.value.text)}, expected a value without a tolerance; remove it`);
}

function withinBounds<T>(
  reading: Reading<T>,
  numberOf: (value: T) => number,
  bounds: Bounds,
  unit: string,
): Reading<T> {
  if (!reading.ok) return reading;
  const value = numberOf(reading.value);
  const scale = unit === '%' ? 100 : 1;
  const say = (words: string, bound: number): Reading<T> => {
    const found = Number((value * scale).toPrecision(12));
    return wrong(
      `found ${`${found} ${unit}`.trim()}, expected ${words} ${`${bound * scale} ${unit}`.trim()}`,
    );
  };
  if (bounds.above !== undefined && !(value > bounds.above)) return say('more than', bounds.above);
  if (bounds.atLeast !== undefined && !(value >= bounds.atLeast)) return say('at least', bounds.atLeast);
  if (bounds.below !== undefined && !(value < bounds.below)) return say('less than', bounds.below);
  if (bounds.atMost !== undefined && !(value <= bounds.atMost)) return say('at most', bounds.atMost);
  return reading;
}

function isPrintable(text: string): boolean {
  return echo(text, text.length + 1) === text;
}
