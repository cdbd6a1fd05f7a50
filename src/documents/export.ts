import type { ColumnKind } from '../logs/columns.ts';
import { PLAIN } from '../logs/dialect.ts';
import { EVENT_COLUMNS } from '../logs/events.ts';
import { EXPORT_COLUMNS } from '../logs/export/export-sink.ts';
import { normalName } from '../logs/export/fingerprint.ts';
import { type ColumnRule, type ExportProfile, PLAIN_PROFILE } from '../logs/export/profile.ts';
import { INSPECTION_COLUMNS } from '../logs/inspections.ts';
import { OUTCOME_COLUMNS } from '../logs/outcomes.ts';
import { SAMPLE_COLUMNS } from '../logs/samples/layout.ts';
import { positionedName } from '../logs/samples/positions.ts';
import { quote } from '../problem/echo.ts';
import { didYouMean } from '../problem/suggest.ts';
import { dimensionOf, sameDimension } from '../quantity/units.ts';
import type { exportShape } from './export-shape.ts';
import { exportTime } from './export-time.ts';
import {
  CATCHER_VALUES,
  checkSentinels,
  damageWords,
  listOf,
  OUTCOME_VALUES,
  type Report,
  VALID_VALUES,
  type Words,
  wordMap,
} from './export-words.ts';
import type { Findings } from './findings.ts';
import type { Fields } from './read-fields.ts';
import type { Path, Yaml } from './yaml-value.ts';

export type ExportFields = Fields<ReturnType<typeof exportShape>>;

/**
 * The profile that an `export` block means. What would let a file be read two ways is found here, before any file
 * is: one mark for two things, one word for two outcomes, one column for two quantities.
 *
 * @param rig how messages name the rig
 */
export function exportProfile(fields: ExportFields, rig: string, findings: Findings): ExportProfile {
  const at = (path: Path, code: string, message: string) => findings.add(['export', ...path], code, message);
  const dialect = {
    encoding: fields.encoding ?? PLAIN.encoding,
    separator: fields.separator ?? PLAIN.separator,
    decimal: fields.decimal ?? PLAIN.decimal,
    thousands: fields.thousands === undefined || fields.thousands === 'none' ? null : fields.thousands,
    sentinels: listOf(fields.sentinels),
    ...(fields.widths === undefined ? {} : { widths: fields.widths }),
  };
  checkMarks(fields, dialect, at);
  const outcomes = wordMap(fields.outcomes, OUTCOME_VALUES, 'outcomes', at);
  const valid = wordMap(fields.valid, VALID_VALUES, 'valid', at);
  const catcher = wordMap(fields.catcher, CATCHER_VALUES, 'catcher', at);
  const damages = damageWords(fields.damages, at);
  checkSentinels(dialect.sentinels, { outcomes, valid, catcher }, at);
  const columns = columnRules(fields.columns, at);
  checkIgnored(listOf(fields.ignore), columns, at);
  const time = exportTime(fields.time, columns, at);
  if (fields.header && fields.header.filter((row) => row === 'names').length !== 1) {
    at(['header'], 'header-rows', 'expected the row of names once, such as [names, units]; correct it');
  }
  return {
    ...PLAIN_PROFILE,
    rig,
    dialect,
    // The plain form has a decimal point; what has another separator may have another mark too.
    isDecimalStated:
      fields.decimal !== undefined || (fields.widths === undefined && dialect.separator === PLAIN.separator),
    preamble: fields.preamble ?? 0,
    header: fields.header ?? ['names'],
    footer: listOf(fields.footer),
    columns,
    ignore: listOf(fields.ignore),
    outcomes,
    valid,
    catcher,
    damages,
    time,
    isRebuilt: fields.time?.rebuild !== undefined,
    restarts: fields.restarts ?? false,
    counter: fields.counter ?? 'continues',
    fingerprints: listOf(fields.fingerprint),
    sheet: fields.sheet ?? null,
  };
}

/**
 * Keys of a drafted profile that nobody has filled in yet: each is named at its place, and nothing else is said.
 *
 * @returns whether there are any
 */
export function findOpenKeys(findings: Findings): boolean {
  let isOpen = false;
  const walk = (value: Yaml, path: Path): void => {
    if (value === '') {
      isOpen = true;
      const key = path.map(String).join('.');
      findings.add(path, 'to-settle', `${key} is still to settle: fill it in, or remove the line`, 'key');
    } else if (typeof value === 'object') {
      for (const [key, inner] of Object.entries(value))
        walk(inner, [...path, Array.isArray(value) ? Number(key) : key]);
    }
  };
  const block = findings.valueAt(['export']);
  if (block !== undefined) walk(block, ['export']);
  return isOpen;
}

/** Every column that a profile can name: of drops, of samples of a drum, and of the tables of a drum test. */
const COLUMNS: readonly ColumnKind<string>[] = [
  ...EXPORT_COLUMNS,
  ...SAMPLE_COLUMNS,
  ...OUTCOME_COLUMNS,
  ...INSPECTION_COLUMNS,
  ...EVENT_COLUMNS,
].filter(({ name }, i, all) => all.findIndex((other) => other.name === name) === i);

function checkMarks(fields: ExportFields, dialect: ExportProfile['dialect'], at: Report): void {
  const { separator, decimal } = dialect;
  if (fields.widths !== undefined) {
    if (fields.separator !== undefined) {
      const message =
        'found a separator and the widths of the columns, expected one of them to tell the columns apart; remove one';
      at(['widths'], 'two-ways', message);
    }
    checkThousands(dialect, at);
    return;
  }
  if (/^[\p{L}\p{N}"+\-.]$/u.test(separator)) {
    const found = `found ${quote(separator)} as separator, expected a character that no number, word or quote has`;
    at(['separator'], 'two-ways', `${found}; a comma, semicolon, tab or bar`);
  }
  if (separator === decimal) {
    const key = fields.decimal === undefined ? 'separator' : 'decimal';
    at(
      [key],
      'two-ways',
      `found ${quote(decimal)} as separator and as decimal mark, expected two characters; correct one of them`,
    );
  }
  checkThousands(dialect, at);
}

function checkThousands(
  { thousands, decimal, separator, widths }: ExportProfile['dialect'],
  at: Report,
): void {
  if (thousands === null || (thousands !== decimal && (thousands !== separator || widths))) return;
  const other = thousands === decimal ? 'decimal mark' : 'separator';
  at(
    ['thousands'],
    'two-ways',
    `found ${quote(thousands)} as thousands mark and as ${other}, expected two characters; correct one of them`,
  );
}

function columnRules(columns: ExportFields['columns'], at: Report): Map<string, ColumnRule> {
  const names = COLUMNS.map(({ name }) => name);
  const rules = new Map<string, ColumnRule>();
  const taken = new Map<string, string>();
  for (const [key, written] of Object.entries(columns ?? {})) {
    const positioned = positionedName(key);
    const kind = COLUMNS.find(({ name }) => name === (positioned?.quantity ?? key));
    if (!kind) {
      const near = didYouMean(key, names) || `; expected one of ${names.join(', ')}`;
      at(['columns', key], 'unknown-quantity', `found the unknown quantity ${quote(key)}${near}`);
      continue;
    }
    const fields: ColumnFields = typeof written === 'string' ? { name: written } : written;
    const { name, unit = null, ambient = null, pattern = null, sentinels } = fields;
    const twin = taken.get(normalName(name));
    if (twin !== undefined) {
      at(
        ['columns', key],
        'two-ways',
        `found the column ${quote(name)} for ${key} and for ${twin}, expected one quantity for a column; correct one of them`,
      );
    }
    taken.set(normalName(name), key);
    checkUnit(key, kind.unit, unit, at);
    if (ambient !== null && kind.name !== 'pressure') {
      at(
        ['columns', key, 'ambient'],
        'out-of-place',
        'found the key at another quantity, expected it at pressure; remove it',
      );
    }
    // Positions are compared as headers are: without regard to case.
    rules.set(positioned ? key.toLowerCase() : key, {
      name,
      unit,
      ambient,
      pattern,
      sentinels: listOf(sentinels),
    });
  }
  return rules;
}

function checkIgnored(
  ignored: readonly string[],
  columns: ReadonlyMap<string, ColumnRule>,
  at: Report,
): void {
  for (const [key, { name }] of columns) {
    if (!ignored.map(normalName).includes(normalName(name))) continue;
    const message = `found ${quote(name)} as a column that is not read, and as that of ${key}, expected one of them; remove it here or there`;
    at(['ignore'], 'two-ways', message);
  }
}

interface ColumnFields {
  readonly name: string;
  readonly unit?: string | undefined;
  readonly ambient?: number | undefined;
  readonly pattern?: string | undefined;
  readonly sentinels?: Words;
}

function checkUnit(key: string, expected: string | null, unit: string | null, at: Report): void {
  if (unit === null) return;
  if (expected === null) {
    at(['columns', key, 'unit'], 'out-of-place', `found a unit at ${key}, which is no quantity; remove it`);
  } else if (!sameDimension(unit, expected)) {
    const wanted = `expected one of ${dimensionOf(expected)}, such as ${expected}`;
    at(['columns', key, 'unit'], 'wrong-unit', `found the unit ${quote(unit)}, ${wanted}; correct it`);
  }
}
