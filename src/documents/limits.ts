import { quote } from '../problem/echo.ts';
import { band, type Quantity, type Reading, readNumber, readQuantity } from '../quantity/quantity.ts';
import { wrong } from './fields.ts';
import type { Findings } from './findings.ts';
import type { Criterion, DecisionRule } from './kinds.ts';
import type { JudgedQuantity } from './quantities.ts';
import type { Path } from './yaml-value.ts';

interface LimitTexts {
  readonly atLeast?: string | undefined;
  readonly atMost?: string | undefined;
  readonly within?: string | undefined;
  readonly external?: string | undefined;
}

const KINDS = ['atLeast', 'atMost', 'within'] as const;

/** The limit of a criterion in the unit of its quantity; what is wrong with it goes to `findings`. */
export function limitOf(
  texts: LimitTexts,
  known: JudgedQuantity | null,
  path: Path,
  findings: Findings,
): Criterion['limit'] {
  const given = KINDS.filter((key) => findings.valueAt([...path, key]) !== undefined);
  const none = { unit: known?.units[0] ?? '1' };
  if (given.length === 0 && texts.external !== undefined) return none;
  if (given.length !== 1) {
    const found = given.length === 0 ? 'no limit' : given.map((key) => `"${key}"`).join(' and ');
    const message = `found ${found} in the criterion, expected one of atLeast, atMost, within; give exactly one`;
    findings.add(given[1] ? [...path, given[1]] : path, 'one-of', message, given[1] ? 'key' : 'value');
    return none;
  }
  const key = given[0]!;
  const text = texts[key];
  if (text === undefined || !known) return none;
  const reading = readInAny(text, known);
  if (!reading.ok) {
    findings.add([...path, key], 'bad-quantity', reading.why);
    return none;
  }
  const { unit, value, tolerance } = reading.value;
  if (known.units[0] === '1' && !known.isPure && !(value > 0 && value < 1)) {
    const message = `found ${quote(text)}, expected a share of more than 0 % and less than 100 %`;
    findings.add([...path, key], 'bad-quantity', message);
  }
  if (key === 'within') {
    const range = band(reading.value);
    if (range) return { within: range, unit };
    findings.add(
      [...path, key],
      'bad-quantity',
      `found ${quote(text)}, expected a tolerance behind it, such as "± 5 %"`,
    );
  } else if (tolerance) {
    const message = `found ${quote(text)}, expected a value without a tolerance; use "within" for a range`;
    findings.add([...path, key], 'bad-quantity', message);
  }
  return key === 'atLeast' ? { atLeast: value, unit } : { atMost: value, unit };
}

interface GuardContext {
  readonly rule: DecisionRule;
  /** What the specification says for all its criteria. */
  readonly standard: string | undefined;
  readonly unit: string;
  readonly known: JudgedQuantity | null;
}

/** The width of the guard band in the unit of the limit, or null where z times the uncertainty is meant. */
export function guardOf(
  { guard }: { readonly guard?: string | undefined },
  { rule, standard, unit, known }: GuardContext,
  path: Path,
  findings: Findings,
): number | null {
  if (guard !== undefined && rule !== 'guard-band') {
    const message = `found "guard" with rule ${rule}, expected it with guard-band only; remove it or change the rule`;
    findings.add([...path, 'guard'], 'key-not-of-rule', message, 'key');
    return null;
  }
  const text = guard ?? standard;
  const place = guard === undefined ? ['decision', 'guard'] : [...path, 'guard'];
  if (rule !== 'guard-band' || !known) return null;
  if (text === undefined) {
    if (known.from === 'measured') {
      const message =
        'the key "guard" is missing: a measured value states no uncertainty; add the width of the band';
      findings.add(path, 'missing-key', message);
    }
    return null;
  }
  const reading = readInAny(text, { ...known, units: [unit] });
  const why =
    reading.ok && (reading.value.tolerance || reading.value.value < 0) ? 'a width above nought' : null;
  if (reading.ok && why === null) return reading.value.value;
  const message = reading.ok ? `found ${quote(text)}, expected ${why}` : reading.why;
  findings.add(place, 'bad-quantity', message);
  return null;
}

/** Reads a quantity in the first of the units that fits; a pure number needs no unit. */
function readInAny(
  text: string,
  { units, isPure }: Pick<JudgedQuantity, 'units' | 'isPure'>,
): Reading<Quantity> {
  const isBare = isPure === true && readNumber(text) !== null;
  if (isBare && units.includes('1')) return readQuantity(`${text.trim()} 1`, '1');
  const readings = units.map((unit) => readQuantity(text, unit));
  return readings.find((reading) => reading.ok) ?? readings[0] ?? wrong(`found ${quote(text)}`);
}
