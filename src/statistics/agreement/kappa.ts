import { normalCritical } from '../likelihood/critical.ts';

/** Agreement of two readers beyond chance. */
export interface Agreement {
  /** Share of specimens that both read alike. */
  readonly observed: number;
  /** The share expected if the readings had nothing to do with one another. */
  readonly expected: number;
  /** (observed − expected)/(1 − expected); null where both always say the same one thing. */
  readonly kappa: number | null;
  readonly standardError: number | null;
  /** Standard error where there is no agreement but by chance: for the test of kappa = 0. */
  readonly standardErrorOfChance: number | null;
}

/**
 * Cohen's kappa (1960) with the large-sample standard errors of Fleiss, Cohen & Everitt (1969), Psychological Bulletin 72,
 * 323–327. With few specimens, or where one reading is rare, kappa is low though the readers agree: give the table too.
 *
 * @param table counts, a row for each reading of the first reader, a column for each of the second, in the same order
 * @throws RangeError for a table that is not square or holds nothing
 */
export function cohensKappa(table: readonly (readonly number[])[]): Agreement {
  const size = table.length;
  const n = table.flat().reduce((a, b) => a + b, 0);
  if (size < 2 || table.some((row) => row.length !== size) || !(n > 0))
    throw new RangeError('agreement needs a square table of counts with at least two readings');
  const share = table.map((row) => row.map((count) => count / n));
  const rows = share.map((row) => row.reduce((a, b) => a + b));
  const columns = rows.map((_, j) => share.reduce((sum, row) => sum + row[j]!, 0));
  const observed = rows.reduce((sum, _, i) => sum + share[i]![i]!, 0);
  const expected = rows.reduce((sum, row, i) => sum + row * columns[i]!, 0);
  const rest = 1 - expected;
  // Each marginal a single reading: chance alone agrees fully.
  if (!(rest > 1e-12)) {
    return { observed, expected, kappa: null, standardError: null, standardErrorOfChance: null };
  }
  const kappa = (observed - expected) / rest;
  let diagonal = 0;
  let off = 0;
  let crossed = 0;
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) {
      const both = rows[j]! + columns[i]!;
      if (i === j) diagonal += share[i]![i]! * (1 - both * (1 - kappa)) ** 2;
      else off += share[i]![j]! * both * both * (1 - kappa) ** 2;
    }
    crossed += rows[i]! * columns[i]! * (rows[i]! + columns[i]!);
  }
  const last = (kappa - expected * (1 - kappa)) ** 2;
  return {
    observed,
    expected,
    kappa,
    standardError: Math.sqrt(Math.max(0, diagonal + off - last) / n) / rest,
    standardErrorOfChance: Math.sqrt((expected + expected * expected - crossed) / n) / rest,
  };
}

/** The table of two lists of readings, the readings in order of their first appearance. */
export function agreementTable(
  first: readonly string[],
  second: readonly string[],
): { readonly readings: readonly string[]; readonly table: number[][] } {
  if (first.length !== second.length)
    throw new RangeError(`${first.length} readings of the first reader, ${second.length} of the second`);
  const readings = [...new Set([...first, ...second])];
  const table = readings.map(() => readings.map(() => 0));
  for (const [i, one] of first.entries()) {
    const row = table[readings.indexOf(one)]!;
    row[readings.indexOf(second[i]!)]!++;
  }
  return { readings, table };
}

/** kappa ± z·standard error, cut at −1 and 1; null without kappa. */
export function kappaLimits({ kappa, standardError }: Agreement, level: number) {
  if (kappa === null || standardError === null) return null;
  const half = normalCritical(level, 2) * standardError;
  return { lower: Math.max(-1, kappa - half), upper: Math.min(1, kappa + half) };
}
