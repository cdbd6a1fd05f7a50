import { quote } from '../problem/echo.ts';
import { didYouMean } from '../problem/suggest.ts';
import { convert, dimensionOf, unitNames } from './units.ts';

/** How far a value may lie from the one stated, in the quantity's own unit or as a share of it. */
export type Tolerance =
  | { readonly kind: 'absolute'; readonly value: number }
  | { readonly kind: 'relative'; readonly fraction: number };

/** A quantity as a document states it: value and tolerance in the unit asked for, and the text as written. */
export interface Quantity {
  readonly value: number;
  readonly unit: string;
  readonly tolerance: Tolerance | null;
  readonly text: string;
}

/** Either what was read, or one sentence that says what was found, what was expected and what settles it. */
export type Reading<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly why: string };

const NUMBER = String.raw`[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?`;
const QUANTITY = new RegExp(`^(${NUMBER})\\s*(\\S.*?)?$`, 'u');

/**
 * Reads `350 mm`, `29 psi`, `2.0 bar ± 0.05 bar`, `25 km/h ± 2 %` (`+-` and `+/-` for `±`) into the given unit.
 * A temperature takes its tolerance in kelvin (`23 °C ± 2 K`); a tolerance in `%` is a share of the value, unless
 * the quantity itself is a ratio.
 *
 * @param unit the unit of the result, such as `mm`; the text may use any unit of its dimension.
 */
export function readQuantity(text: string, unit: string): Reading<Quantity> {
  const [valueText, toleranceText, ...rest] = text.split(/\s*(?:±|\+\/-|\+-)\s*/u);
  if (rest.length > 0) return wrong(`${quote(text)} has more than one tolerance`);
  const main = readValue(valueText!, unit, text);
  if (!main.ok) return main;
  if (toleranceText === undefined) {
    return { ok: true, value: { value: main.value, unit, tolerance: null, text } };
  }
  const tolerance = readTolerance(toleranceText, unit, text);
  if (!tolerance.ok) return tolerance;
  return { ok: true, value: { value: main.value, unit, tolerance: tolerance.value, text } };
}

/** The widest and narrowest value that a tolerance allows; null where none is stated. */
export function band(quantity: Quantity): { readonly lower: number; readonly upper: number } | null {
  const { tolerance, value } = quantity;
  if (tolerance === null) return null;
  const half = tolerance.kind === 'absolute' ? tolerance.value : Math.abs(value) * tolerance.fraction;
  return { lower: value - half, upper: value + half };
}

/** A plain decimal number, or null: no thousands mark, no decimal comma, nothing behind it. */
export function readNumber(text: string): number | null {
  const trimmed = text.trim();
  return PLAIN_NUMBER.test(trimmed) ? Number(trimmed) : null;
}

const PLAIN_NUMBER = new RegExp(`^${NUMBER}$`, 'u');

function readValue(part: string, unit: string, whole: string): Reading<number> {
  const match = QUANTITY.exec(part.trim());
  const example = `such as ${quote(exampleOf(unit))}`;
  if (/^[+-]?\d+,\d/u.test(part.trim())) {
    return wrong(`found ${quote(whole)}, expected a quantity with a decimal point, ${example}; use a point`);
  }
  if (!match) return wrong(`found ${quote(whole)}, expected a number with its unit, ${example}`);
  const value = Number(match[1]);
  if (!Number.isFinite(value)) return wrong(`found ${quote(whole)}, which is too large to be a quantity`);
  const given = match[2];
  if (given === undefined) return wrong(`found ${quote(whole)} without a unit, expected one, ${example}`);
  const dimension = dimensionOf(given);
  const wanted = dimensionOf(unit)!;
  if (dimension === null) {
    const near = didYouMean(given, unitNames(wanted));
    return wrong(`found the unknown unit ${quote(given)}, expected a ${wanted}, ${example}${near}`);
  }
  if (dimension !== wanted) {
    return wrong(`found ${quote(whole)}, which is a ${dimension}; expected a ${wanted}, ${example}`);
  }
  return { ok: true, value: convert(value, given, unit) };
}

function readTolerance(part: string, unit: string, whole: string): Reading<Tolerance> {
  const dimension = dimensionOf(unit);
  const isShare = part.endsWith('%') && dimension !== 'ratio';
  const own = dimension === 'temperature' ? 'K' : unit;
  const reading = readValue(part, isShare ? '1' : own, whole);
  if (!reading.ok) return reading;
  if (reading.value < 0) return wrong(`found ${quote(whole)}, whose tolerance is below nought`);
  if (isShare) return { ok: true, value: { kind: 'relative', fraction: reading.value } };
  return { ok: true, value: { kind: 'absolute', value: reading.value } };
}

const EXAMPLES: Readonly<Record<string, string>> = {
  mm: '350 mm',
  km: '5000 km',
  kg: '8.000 kg',
  g: '905 g',
  bar: '2.0 bar',
  '°C': '23 °C',
  J: '45 J',
  'km/h': '25 km/h',
  'm/s2': '9.81 m/s2',
  N: '600 N',
  deg: '45 deg',
  Hz: '1 Hz',
  'mm/1000km': '0.2 mm/1000km',
  '1': '95 %',
};

function exampleOf(unit: string): string {
  return EXAMPLES[unit] ?? `1 ${unit}`;
}

function wrong(why: string): { readonly ok: false; readonly why: string } {
  return { ok: false, why };
}
