import { CATALOGUE, codeIn } from '../conformance/catalogue/catalogue.ts';
import type { Amendment } from '../logs/amendments.ts';
import type { Drop } from '../logs/drop.ts';
import { DROP_COLUMNS, DROP_RANGES, type DropKey, OUTCOMES, VALID } from '../logs/drop-columns.ts';
import { readNumber } from '../logs/number.ts';
import { quote } from '../problem/echo.ts';
import { InputError, ProblemList } from '../problem/problem.ts';
import { didYouMean } from '../problem/suggest.ts';
import { readQuantity } from '../quantity/quantity.ts';

/** A log as it stands after its journal: the originals stay in the log. */
export interface Amended {
  readonly drops: readonly Drop[];
  /** What the operator saw and acted on, for drops whose outcome was amended later. */
  readonly acted: ReadonlyMap<Drop, Drop['outcome']>;
  readonly applied: readonly AppliedAmendment[];
}

export interface AppliedAmendment {
  readonly amendment: Amendment;
  readonly drop: Drop;
}

type Value = Drop[Column];
type Column = Exclude<DropKey, keyof NonNullable<Drop['details']>>;

/** Everything but the time, which orders the drops, and what few rigs write. */
const AMENDABLE: ReadonlySet<DropKey> = new Set<Column>([
  'number',
  'series',
  'specimen',
  'site',
  'plannedHeight',
  'height',
  'mass',
  'pressure',
  'temperature',
  'velocity',
  'outcome',
  'damage',
  'valid',
  'reason',
  'operator',
  'remark',
]);
const COLUMNS: ReadonlyMap<string, Column> = new Map(
  DROP_COLUMNS.filter(({ key }) => AMENDABLE.has(key)).map(({ key, name }) => [name, key as Column]),
);

/**
 * Takes a journal through a log, entry by entry: each must find the state that it says it changes, so that a chain of
 * amendments can be followed.
 *
 * @throws InputError with every entry that names no row, another state, no column, a word that is none, a reason that
 * is no code of the catalogue, or that would leave a drop out for its result.
 */
export function amend(drops: readonly Drop[], journal: readonly Amendment[]): Amended {
  const problems = new ProblemList();
  const state = [...drops];
  const find = finder(drops);
  const touched = new Map<number, Drop['outcome']>();
  const applied: AppliedAmendment[] = [];
  for (const amendment of journal) {
    const problem = (code: string, message: string) =>
      problems.add({ file: amendment.file, line: amendment.line, column: null, code, message });
    const index = find(amendment, problem);
    const column = columnOf(amendment, problem);
    if (index === null || column === null) continue;
    const before = state[index]!;
    const now = cellValue(column, amendment.old, problem);
    const next = cellValue(column, amendment.new, problem);
    if (now === undefined || next === undefined || !isReasonable(amendment, column, next, problem)) continue;
    if (before[column] !== now) {
      const present = before[column] === null ? 'an empty cell' : quote(said(before[column]));
      const message = `found ${quote(amendment.old)} as the old ${amendment.what} of line ${before.line}, expected what stands there now, ${present}; correct it, or put the entries in their order`;
      problem('amendment-of-another-state', message);
      continue;
    }
    if (column === 'outcome' && !touched.has(index)) touched.set(index, before.outcome);
    const reason = column === 'valid' && next === false ? { reason: amendment.reason } : {};
    state[index] = { ...before, [column]: next, ...reason };
    applied.push({ amendment, drop: before });
  }
  if (!problems.isEmpty) throw new InputError(problems.all());
  const acted = new Map([...touched].map(([index, outcome]) => [state[index]!, outcome]));
  return { drops: state, acted, applied };
}

type Report = (code: string, message: string) => void;

/** Finds the row that an entry names; several logs have lines of one number, and a rig may use a number twice. */
function finder(drops: readonly Drop[]) {
  const byLine = new Map<string, number[]>();
  const byNumber = new Map<string, number[]>();
  const add = (map: Map<string, number[]>, key: string, index: number) => {
    const same = map.get(key);
    if (same === undefined) map.set(key, [index]);
    else same.push(index);
  };
  for (const [index, { line, number, file }] of drops.entries()) {
    for (const prefix of ['', `${file}\n`]) {
      add(byLine, `${prefix}${line}`, index);
      if (number !== null) add(byNumber, `${prefix}${number}`, index);
    }
  }
  return ({ logLine, drop, log }: Amendment, problem: Report): number | null => {
    const file =
      log === null ? null : (drops.find((it) => it.file === log || it.file.endsWith(`/${log}`))?.file ?? log);
    const prefix = file === null ? '' : `${file}\n`;
    const found =
      (logLine === null ? byNumber.get(`${prefix}${drop}`) : byLine.get(`${prefix}${logLine}`)) ?? [];
    const named = logLine === null ? `drop ${drop}` : `line ${logLine}`;
    if (found.length === 1) return found[0]!;
    const message =
      found.length === 0
        ? `found ${named}${log === null ? '' : ` of ${quote(log)}`}, expected a row of a log: there is no drop on it; correct it`
        : `found ${named}, which ${found.length} drops have; say which log is meant (column "log"), or name the line`;
    problem(found.length === 0 ? 'no-such-drop' : 'which-drop', message);
    return null;
  };
}

function columnOf({ what }: Amendment, problem: Report): Column | null {
  const column = COLUMNS.get(what);
  if (column !== undefined) return column;
  const names = [...COLUMNS.keys()];
  const help = didYouMean(what, names) || `; expected one of ${names.join(', ')}`;
  problem('unknown-column', `found the column ${quote(what)}, which cannot be amended${help}`);
  return null;
}

/** The value of a text in a column; undefined where it is none, which was reported then. */
function cellValue(column: Column, text: string, problem: Report): Value | undefined {
  const bad = (expected: string) => {
    problem('bad-value', `found ${quote(text)} for the ${column}, expected ${expected}; correct it`);
    return undefined;
  };
  if (column === 'valid') return text === '' ? true : (VALID.get(text) ?? bad('yes or no'));
  if (text === '') return column === 'height' || column === 'specimen' ? bad('a value') : null;
  if (column === 'outcome') return OUTCOMES.get(text) ?? bad([...OUTCOMES.keys()].join(', '));
  if (column === 'number') return /^\d{1,15}$/.test(text) ? Number(text) : bad('a whole number');
  const range =
    column === 'plannedHeight' ? DROP_RANGES.height : DROP_RANGES[column as keyof typeof DROP_RANGES];
  if (range === undefined) return text;
  const plain = readNumber(text, '.');
  const value = typeof plain === 'number' ? plain : quantityIn(text, range.unit);
  if (value === null || value < range.least || value > range.most) return bad(`a value in ${range.unit}`);
  return value;
}

function quantityIn(text: string, unit: string): number | null {
  const read = readQuantity(text, unit);
  return read.ok ? read.value.value : null;
}

/** Whether the reason is a code, and one that may do what the entry does: no drop leaves a test for its result. */
function isReasonable(amendment: Amendment, column: Column, next: Value, problem: Report): boolean {
  const entry = CATALOGUE.get(codeIn(amendment.reason) ?? '');
  if (entry === undefined) {
    problem(
      'no-reason',
      `found the reason ${quote(amendment.reason)}, expected a code of the catalogue, such as DROP-43; "tirelab explain" lists them`,
    );
    return false;
  }
  const leavesOut =
    (column === 'valid' && next === false) ||
    (column === 'outcome' && (next === null || next === 'not-evaluable'));
  if (!leavesOut || entry.excuses) return true;
  problem(
    'exclusion-by-result',
    `found a drop left out for ${entry.code} (${entry.title}), expected a reason that does not depend on its result, such as DROP-16; a drop may not leave a test for what it showed`,
  );
  return false;
}

function said(value: Value): string {
  if (value === true) return 'yes';
  return value === false ? 'no' : String(value);
}
