import { type Look, lookAt, type SampleColumn } from '../logs/draft/look.ts';
import { type NumberMarks, numberMarks } from '../logs/draft/number-marks.ts';
import { readSample } from '../logs/draft/sample.ts';
import { timeFormats } from '../logs/draft/time-guess.ts';
import { DROP_COLUMNS, OUTCOMES, VALID } from '../logs/drop-columns.ts';
import { echo } from '../problem/echo.ts';
import { InputError } from '../problem/problem.ts';

/** Something that the sample leaves open, and only a person who knows the rig can say. */
export interface Question {
  /** Key of the profile that settles it, such as `decimal` or `outcomes.failed`. */
  readonly key: string;
  /** What was seen, and what is to be said. */
  readonly ask: string;
  /** Possible answers; empty where any text may be one. */
  readonly choices: readonly string[];
  /** For the meaning of a word: the word. */
  readonly word?: string;
}

/** A profile drafted from a sample: what it shows, and the questions that it leaves. */
export interface Draft {
  readonly look: Look;
  readonly marks: NumberMarks;
  readonly formats: readonly string[];
  readonly questions: readonly Question[];
}

const NEEDED = ['specimen', 'height', 'outcome'];

/**
 * Looks at an export of a drop rig and drafts its profile. What a word means is never guessed.
 *
 * @param widths of the columns, where the export has no separator
 * @throws InputError where the file cannot be read or holds no table
 */
export async function draftProfile(path: string, widths: readonly number[] | null = null): Promise<Draft> {
  const look = lookAt(await readSample(path, widths));
  if (!look) {
    const message =
      'found no table, expected rows of two columns or more below a row of names; columns of fixed width are read with their widths (--widths 6,20,8)';
    throw new InputError([{ file: path, line: null, column: null, code: 'no-table', message }]);
  }
  const quantities = DROP_COLUMNS.filter(({ unit }) => unit !== null).flatMap(
    ({ name }) => chosen(look, name)?.cells ?? [],
  );
  const marks = isWorkbook(look) ? NO_DOUBT : numberMarks(quantities);
  const formats = timeFormats(timesOf(look));
  return { look, marks, formats, questions: [...questionsOf(look, marks, formats)] };
}

function isWorkbook({ sample }: Look): boolean {
  return sample.sheets.length > 0;
}

/** Numbers of a workbook are numbers. */
const NO_DOUBT: NumberMarks = { decimal: '.', thousands: null, doubtful: null };

/** The one column that can be the quantity; undefined where there is none, or more than one. */
export function chosen(look: Look, quantity: string): SampleColumn | undefined {
  const found = look.candidates.get(quantity) ?? [];
  const free = found.filter((column) => !isSurerFor(look, column, quantity));
  return free.length === 1 ? free[0] : undefined;
}

/** `t` may be a time or a temperature: the unit, or its lack, tells. */
function isSurerFor(look: Look, column: SampleColumn, quantity: string): boolean {
  return [...look.candidates].some(
    ([other, columns]) =>
      other !== quantity &&
      columns.length === 1 &&
      columns[0] === column &&
      isBetter(other, quantity, column),
  );
}

function isBetter(other: string, quantity: string, column: SampleColumn): boolean {
  const hasUnit = (name: string) => (DROP_COLUMNS.find((kind) => kind.name === name)?.unit ?? null) !== null;
  if (column.unit === null) return false;
  return hasUnit(other) && !hasUnit(quantity);
}

/** Distinct texts with how often they stand there, the most frequent first. */
export function wordsOf(column: SampleColumn | undefined): [word: string, count: number][] {
  const counts = new Map<string, number>();
  for (const cell of column?.cells ?? []) counts.set(cell, (counts.get(cell) ?? 0) + 1);
  return [...counts].toSorted((a, b) => b[1] - a[1]);
}

function timesOf(look: Look): readonly string[] {
  const times = chosen(look, 'time')?.cells ?? [];
  const dates = chosen(look, 'date')?.cells;
  return dates ? times.map((time, i) => `${dates[i] ?? ''} ${time}`) : times;
}

function* questionsOf(look: Look, marks: NumberMarks, formats: readonly string[]): Generator<Question> {
  const { encodings, separator, sheets } = look.sample;
  const titles = look.columns.map(({ title }) => title).filter((title) => title !== '');
  if (encodings.length > 1) {
    const names = echo(titles.join(', '), 60);
    yield {
      key: 'encoding',
      ask: `the bytes are no UTF-8; as ${encodings[0]} the columns read ${names}`,
      choices: encodings,
    };
  }
  if (sheets.length > 1) {
    yield { key: 'sheet', ask: 'the sheet that has the log', choices: sheets };
  }
  if (marks.doubtful !== null && separator !== ',') {
    yield {
      key: 'decimal',
      ask: `"${echo(marks.doubtful)}" can be read two ways; the decimal mark`,
      choices: ['.', ','],
    };
  }
  for (const quantity of NEEDED) {
    if (chosen(look, quantity)) continue;
    yield { key: `columns.${quantity}`, ask: `the column that holds the ${quantity}`, choices: titles };
  }
  for (const { name, unit } of DROP_COLUMNS) {
    const column = chosen(look, name);
    if (unit === null || !column || column.unit !== null) continue;
    yield {
      key: `columns.${name}.unit`,
      ask: `the unit of "${echo(column.title)}", which states none`,
      choices: [],
    };
  }
  yield* wordQuestions(look, 'outcome', 'outcomes', OUTCOMES, ['failed', 'survived', 'not-evaluable']);
  yield* wordQuestions(look, 'valid', 'valid', VALID, ['yes', 'no']);
  yield* timeQuestions(look, formats);
}

function* wordQuestions(
  look: Look,
  quantity: string,
  key: string,
  known: ReadonlyMap<string, unknown>,
  choices: readonly string[],
): Generator<Question> {
  const column = chosen(look, quantity);
  for (const [word, count] of wordsOf(column).slice(0, 30)) {
    if (known.has(word)) continue;
    yield {
      key,
      word,
      ask: `what "${echo(word)}" (${count} times) means under "${echo(column!.title)}"`,
      choices,
    };
  }
}

function* timeQuestions(look: Look, formats: readonly string[]): Generator<Question> {
  const times = timesOf(look);
  if (times.length === 0 || formats[0] === 'iso') return;
  const seen = `times are written "${echo(times[0]!)}"`;
  const hasDateCells = isWorkbook(look) && formats[0]?.startsWith('YYYY-MM-DD hh:mm:ss');
  if (formats.length !== 1 && !hasDateCells)
    yield { key: 'time.format', ask: `${seen}; their format`, choices: formats };
  if (formats[0] === 'seconds')
    yield { key: 'time.start', ask: 'the instant that the seconds count from', choices: [] };
  else
    yield {
      key: 'time.zone',
      ask: `${seen}; the zone of the clock, such as Europe/Berlin or +01:00`,
      choices: [],
    };
}
