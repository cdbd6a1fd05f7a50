import { echo, quote } from '../../problem/echo.ts';
import type { ProblemList } from '../../problem/problem.ts';
import { convert, dimensionOf, sameDimension } from '../../quantity/units.ts';
import { type Column, type ColumnKind, columnTitle, unknownColumnMessage } from '../columns.ts';
import type { Finding } from '../finding.ts';
import type { Row } from '../row.ts';
import { headerFingerprint, normalName } from './fingerprint.ts';
import { headerCell, mendedUnit, namesColumn } from './header.ts';
import type { ColumnRule, ExportProfile } from './profile.ts';

/** A column of an export with what the profile says of it. */
export interface ExportColumn extends Column {
  readonly rule: ColumnRule | null;
}

export interface FoundColumns<Key extends string> {
  readonly known: Map<Key, ExportColumn>;
  readonly unknown: readonly Column[];
  readonly findings: readonly Finding[];
}

const ABSOLUTE = /\babs|absol|\b(?:bar|kpa|psi) ?\(?a\)?$/i;

/**
 * Finds the columns of a table in an export's header, by the names that the profile gives them.
 *
 * @param units what a row of units below the header holds, by column
 */
export function findExportColumns<Key extends string>(
  header: Row,
  units: readonly string[] | null,
  profile: ExportProfile,
  kinds: readonly ColumnKind<Key>[],
  file: string,
  problems: ProblemList,
): FoundColumns<Key> {
  const known = new Map<Key, ExportColumn>();
  const findings: Finding[] = [];
  const problem = (index: number, code: string, message: string) =>
    problems.add({ file, ...header.place(index), code, message });
  refuseStranger(header, profile, file, problems);
  const taken = new Set<number>();
  // What the profile names goes first: a column that it gives to one quantity is no other's by its plain name.
  const isNamed = ({ name }: ColumnKind<Key>) => profile.columns.has(name);
  for (const kind of [...kinds.filter(isNamed), ...kinds.filter((it) => !isNamed(it))]) {
    const rule = profile.columns.get(kind.name);
    const indices = [...header.cells.keys()].filter(
      (i) => (rule || !taken.has(i)) && namesColumn(header.cells[i]!, kind, rule),
    );
    const [index, twin] = indices;
    if (index === undefined) {
      if (rule && !kind.isNeeded) findings.push(notThere(header, kind, rule));
      continue;
    }
    if (twin !== undefined) {
      const message = `found ${quote(header.cells[twin]!)} again (it stands at column ${header.place(index).column} too), expected one column for ${kind.name}; name it with its unit (export.columns.${kind.name})`;
      problem(twin, 'duplicate-column', message);
    }
    for (const i of indices) taken.add(i);
    known.set(kind.key, column(header, index, kind, rule, units, problem));
  }
  for (const kind of kinds) {
    const rule = profile.columns.get(kind.name);
    const index = rule && known.has(kind.key) ? secondReading(header, kind, taken, profile) : -1;
    if (index < 0) continue;
    const message = `found ${quote(header.cells[index]!)} beside ${quote(rule!.name)}, which the profile takes for ${kind.name}; name the one that is not read (export.ignore)`;
    problem(index, 'two-columns', message);
  }
  const missing = kinds.filter(({ key, isNeeded }) => isNeeded && !known.has(key));
  if (missing.length > 0) {
    problems.add({
      file,
      line: header.line,
      column: null,
      code: 'missing-column',
      message: missingMessage(header, missing, profile),
    });
  }
  const ignored = new Set(profile.ignore.map(normalName));
  const unknown = header.cells.flatMap((cell, index): Column[] => {
    const { title, name, unit } = headerCell(cell);
    if (taken.has(index) || ignored.has(title) || ignored.has(name)) return [];
    return [{ index, title, name: name.toLowerCase(), unit }];
  });
  for (const { index, ...rest } of unknown) {
    const message = unknownColumnMessage({ index, ...rest }, kinds);
    findings.push({ code: 'unknown-column', message, ...header.place(index) });
  }
  return { known, unknown, findings };
}

function refuseStranger(header: Row, profile: ExportProfile, file: string, problems: ProblemList): void {
  const found = headerFingerprint(header.cells);
  if (profile.fingerprints.length === 0 || profile.fingerprints.includes(found)) return;
  const names = [...profile.columns.values()].map(({ name }) => name).join(', ');
  const message =
    `found an export with the columns ${echo(header.cells.map((cell) => cell.trim()).join(', '), 120)} ` +
    `(fingerprint ${found}), expected the one of rig ${echo(profile.rig)} (${profile.fingerprints.join(' or ')}` +
    `${names === '' ? '' : `, with ${echo(names, 120)}`}); give the profile of the rig that wrote it, or add the ` +
    'fingerprint where this rig writes it now (export.fingerprint)';
  problems.add({ file, line: header.line, column: null, code: 'other-export', message });
}

function column(
  header: Row,
  index: number,
  kind: ColumnKind<string>,
  rule: ColumnRule | undefined,
  units: readonly string[] | null,
  problem: (index: number, code: string, message: string) => void,
): ExportColumn {
  const { title, name, unit } = headerCell(header.cells[index]!);
  const read = { index, title, name: rule ? title : name.toLowerCase(), rule: rule ?? null };
  if (kind.unit === null) return { ...read, unit: null };
  const below = mendedUnit(units?.[index] ?? '').replace(/^[[(](.*)[\])]$/u, '$1');
  const stated = [unit ?? '', /^[-–—]*$/u.test(below) ? '' : below, rule?.unit ?? ''].filter(
    (it) => it !== '',
  );
  const key = `export.columns.${kind.name}`;
  const wrong = stated.find((it) => !sameDimension(it, kind.unit!));
  if (stated.length === 0) {
    problem(
      index,
      'missing-unit',
      `found ${quote(title)} without a unit, expected one of ${dimensionOf(kind.unit)}; the profile gives it (${key}.unit)`,
    );
  } else if (wrong !== undefined) {
    const dimension = dimensionOf(wrong);
    const what = dimension === null ? 'the unknown unit' : `a unit of ${dimension},`;
    problem(
      index,
      'wrong-unit',
      `found ${what} ${quote(wrong)} at ${quote(title)}, expected one of ${dimensionOf(kind.unit)}, such as "${columnTitle(kind)}"; correct ${key}`,
    );
  } else if (stated.some((it) => convert(1, it, kind.unit!) !== convert(1, stated[0]!, kind.unit!))) {
    problem(
      index,
      'unit-conflict',
      `found the units ${stated.map((it) => quote(it)).join(' and ')} at ${quote(title)}, expected one; correct the header or ${key}.unit`,
    );
  }
  if (kind.name === 'pressure' && ABSOLUTE.test(name) && (rule?.ambient ?? null) === null) {
    problem(
      index,
      'absolute-or-gauge',
      `found ${quote(title)}, which reads as an absolute pressure, expected gauge; the profile gives the air pressure to take off, or 0 bar where it is gauge (${key}.ambient)`,
    );
  }
  return { ...read, unit: stated[0] ?? null };
}

/** Another column that by its plain name would be the same quantity. */
function secondReading(
  header: Row,
  kind: ColumnKind<string>,
  taken: ReadonlySet<number>,
  profile: ExportProfile,
): number {
  const ignored = new Set(profile.ignore.map(normalName));
  return header.cells.findIndex((cell, i) => {
    const { title, name } = headerCell(cell);
    if (taken.has(i) || ignored.has(title) || ignored.has(name)) return false;
    return namesColumn(cell, kind, undefined);
  });
}

function notThere(header: Row, kind: ColumnKind<string>, rule: ColumnRule): Finding {
  const message = `no column ${quote(rule.name)}, where the profile has the ${kind.name}: not read`;
  return { code: 'column-not-there', message, line: header.line, column: null };
}

function missingMessage(header: Row, missing: readonly ColumnKind<string>[], profile: ExportProfile): string {
  const names = missing.map(({ name }) => `${quote(profile.columns.get(name)?.name ?? name)} for ${name}`);
  const keys = missing.map(({ name }) => `export.columns.${name}`).join(', ');
  const found = echo(header.cells.map((cell) => cell.trim()).join(', '), 120);
  const only = header.cells.length === 1 ? ' (one column: is export.separator right?)' : '';
  const mistaken = /[ÂÃ][\u0080-\u00bf]/u.test(header.text)
    ? ' (UTF-8 read as another code page: export.encoding)'
    : '';
  return `found the columns ${found}${only}${mistaken}, expected ${names.join(', ')}; give the profile of the rig that wrote it, or correct ${keys}`;
}
