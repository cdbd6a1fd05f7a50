import { constructionFacts } from '../comparison/facts.ts';
import { compareMeasured, type Measured, type MeasuredSettings } from '../comparison/measured.ts';
import { factorRefusals } from '../comparison/refusals.ts';
import { factorStates } from '../comparison/states.ts';
import { tyreFacts } from '../comparison/tyre-facts.ts';
import type { Construction } from '../documents/kinds.ts';
import { rememberingLibrary } from '../documents/library.ts';
import { constructionsByName } from '../impact/replay/tyres.ts';
import { type Register, registerCell, type Specimen } from '../logs/register.ts';
import { readSpecimens } from '../logs/specimens.ts';
import { quote } from '../problem/echo.ts';
import { InputError, type Problem } from '../problem/problem.ts';
import type { Input } from '../result/analysis.ts';
import type { MeasuredComparison } from '../result/measured-comparison.ts';
import { mean, variance } from '../statistics/summary/moments.ts';
import { documentsOf } from './documents-of.ts';

/** What is compared, and how its layout is read: columns of the tables of specimens. */
export interface MeasuredOptions {
  readonly quantity: string;
  readonly pairedBy: string | null;
  readonly blocks: readonly string[];
  readonly margin: number | null;
  readonly reference: string | null;
  readonly despite: ReadonlyMap<string, string>;
}

interface MeasuredSide {
  readonly construction: Construction;
  readonly run: string | null;
  readonly path: string;
  readonly rows: readonly Specimen[];
  readonly values: readonly Measured[];
}

/**
 * Constructions against each other by what was measured on their tyres: mass, width, tread loss, whatever column the
 * tables of specimens have. The factors are those of the constructions and of the tables; tyres that are no candidates
 * are left out.
 *
 * @throws InputError where a value is missing or is no number, where pairs are not told apart, or with fewer than two sides
 */
export async function compareMeasuredRuns(
  paths: readonly string[],
  options: MeasuredOptions,
): Promise<MeasuredComparison> {
  const library = rememberingLibrary();
  const sides: MeasuredSide[] = [];
  const inputs: Input[] = [];
  const unread: { path: string; problems: readonly Problem[] }[] = [];
  let confidence: number | null = null;
  for (const path of paths) {
    try {
      const documents = documentsOf({ kind: 'run', path }, NO_INPUT, library);
      const register = documents.specimens === null ? null : await readSpecimens(documents.specimens);
      sides.push(...sidesOf(documents.constructions, documents.run, path, register, options));
      inputs.push(...documents.inputs, ...(register === null ? [] : [tableOf(register)]));
      confidence ??= documents.protocol.confidence;
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      unread.push({ path, problems: error.problems });
    }
  }
  if (sides.length < 2) throw new InputError(tooFew(sides, unread, options.quantity));
  const ordered = referenceFirst(sides, options.reference);
  const factors = factorStates(
    ordered.map(({ construction, rows }) => [...constructionFacts(construction), ...registered(rows)]),
    ordered.map(({ construction }) => construction),
    options.despite,
  );
  const refused = factorRefusals(factors);
  const settings: MeasuredSettings = {
    confidence: confidence!,
    margin: options.margin,
    blocks: options.blocks,
  };
  const compared = compareMeasured(
    ordered.map(({ values }) => values),
    settings,
  );
  const { notes, ...found } = compared;
  return {
    quantity: options.quantity,
    unit: unitOf(ordered, options.quantity),
    confidence: settings.confidence,
    inputs,
    samples: ordered.map(sampleOf),
    factors,
    refused,
    notes: refused.length > 0 ? [] : notes,
    unread,
    ...(refused.length > 0 ? NOTHING : found),
  };
}

const NOTHING = { pairs: [], overall: [], blocked: [], ranking: [], groups: [] };

/** Tables are files; nothing is read from standard input. */
const NO_INPUT: AsyncIterable<Uint8Array> = { async *[Symbol.asyncIterator]() {} };

function tableOf({ path, sha256, bytes, specimens }: Register): Input {
  return { role: 'specimens', path, sha256, bytes, rows: specimens.length };
}

function sidesOf(
  constructions: readonly Construction[],
  run: string | null,
  path: string,
  register: Register | null,
  options: MeasuredOptions,
): MeasuredSide[] {
  if (register === null) {
    const message = `found no table of specimens, expected one with ${quote(options.quantity)}; name it: "specimens: specimens.csv"`;
    throw new InputError([{ file: path, line: null, column: null, code: 'no-specimens', message }]);
  }
  const named = constructionsByName(constructions);
  const only = constructions.length === 1 ? constructions[0]! : null;
  const groups = new Map<Construction, Specimen[]>();
  for (const row of register.specimens) {
    if (row.role !== null && row.role !== 'candidate') continue;
    const construction = (row.construction === null ? undefined : named.get(row.construction)) ?? only;
    if (construction === null) continue;
    const rows = groups.get(construction);
    if (rows === undefined) groups.set(construction, [row]);
    else rows.push(row);
  }
  const problems: Problem[] = [];
  const sides = [...groups].map(([construction, rows]): MeasuredSide => {
    const values = rows.flatMap((row) => measuredOf(row, options, problems));
    if (options.pairedBy !== null) problems.push(...twice(rows, values));
    return { construction, run, path, rows, values };
  });
  if (problems.length > 0) throw new InputError(problems);
  return sides;
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;

function measuredOf(
  row: Specimen,
  { quantity, pairedBy, blocks }: MeasuredOptions,
  problems: Problem[],
): Measured[] {
  const at = { file: row.file, line: row.line, column: null };
  const cell = registerCell(row, quantity.toLowerCase());
  const value = row.measured[quantity.toLowerCase()] ?? (quantity.toLowerCase() === 'mass' ? row.mass : null);
  const number = value ?? (cell !== null && NUMBER.test(cell) ? Number(cell) : null);
  if (number === null) {
    const found = cell === null ? 'no such column' : cell === '' ? 'an empty cell' : quote(cell);
    const message = `${quantity}: found ${found}, expected a number for each candidate`;
    problems.push({ ...at, code: 'not-measured', message });
    return [];
  }
  const level = (column: string): string => {
    const text = registerCell(row, column.toLowerCase());
    if (text !== null && text !== '') return text;
    problems.push({
      ...at,
      code: 'no-block',
      message: `${column}: found nothing, expected the tyre's ${column}`,
    });
    return '';
  };
  return [{ value: number, pair: pairedBy === null ? null : level(pairedBy), blocks: blocks.map(level) }];
}

function twice(rows: readonly Specimen[], values: readonly Measured[]): Problem[] {
  const seen = new Set<string | null>();
  return values.flatMap(({ pair }, i) => {
    if (!seen.has(pair)) {
      seen.add(pair);
      return [];
    }
    const message = `found ${quote(pair ?? '')} twice among the tyres of one construction, expected one tyre of each in a pair`;
    return [{ file: rows[i]!.file, line: rows[i]!.line, column: null, code: 'pair-twice', message }];
  });
}

/** Columns that may go together with the construction; what only drops tell is not asked for. */
function registered(rows: readonly Specimen[]) {
  const facts = tyreFacts({ specimens: rows, mountings: [], drops: [], pressure: null, temperature: null });
  return facts.filter(({ group }) => group === 'construction');
}

function referenceFirst(sides: readonly MeasuredSide[], reference: string | null): readonly MeasuredSide[] {
  if (reference === null) return sides;
  const isOf = ({ construction: { id, revision } }: MeasuredSide) =>
    reference === id || reference === `${id}@${revision}`;
  const own = sides.filter(isOf);
  if (own.length > 0) return [...own, ...sides.filter((side) => !isOf(side))];
  const message = `found --reference ${quote(reference)}, expected one of the constructions compared: ${sides.map(({ construction }) => construction.id).join(', ')}`;
  throw new InputError([{ file: '--reference', line: null, column: null, code: 'no-reference', message }]);
}

function sampleOf({ construction: { id, revision }, run, path, values }: MeasuredSide) {
  const own = values.map(({ value }) => value);
  return {
    label: `${id}@${revision}`,
    run,
    path,
    construction: { id, revision },
    n: own.length,
    mean: mean(own),
    standardDeviation: own.length < 2 ? null : Math.sqrt(variance(own)),
  };
}

/** As the first table has it in brackets. */
function unitOf(sides: readonly MeasuredSide[], quantity: string): string | null {
  const name = quantity.toLowerCase();
  if (name === 'mass') return 'g';
  for (const { rows } of sides) {
    for (const title of Object.keys(rows[0]?.other ?? {})) {
      const [, own, unit] = /^(.*?)\s*\[([^\]]*)\]$/u.exec(title) ?? [];
      if (own?.toLowerCase() === name && unit !== undefined) return unit;
    }
  }
  return null;
}

function tooFew(
  sides: readonly MeasuredSide[],
  unread: readonly { readonly problems: readonly Problem[] }[],
  quantity: string,
): Problem[] {
  if (unread.length > 0) return unread.flatMap(({ problems }) => problems);
  const message = `found ${sides.length} construction with ${quote(quantity)}, expected two or more: name another run`;
  return [{ file: sides[0]?.path ?? '', line: null, column: null, code: 'nothing-to-compare', message }];
}
