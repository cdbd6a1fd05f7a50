/** What is known of each observation beside its outcome: a factor (such as the construction) or a number. */
export type Covariate =
  | {
      readonly name: string;
      readonly kind: 'factor';
      readonly values: readonly string[];
      readonly reference?: string;
    }
  | { readonly name: string; readonly kind: 'number'; readonly values: readonly number[] };

/** A value for each covariate. */
export type Setting = Readonly<Record<string, string | number>>;

/** One column of a design: the product of its parts; a part is a number, or 1 at one level of a factor and 0 elsewhere. */
interface Column {
  readonly name: string;
  readonly term: string;
  readonly parts: readonly { readonly covariate: string; readonly level: string | null }[];
}

/** The columns of a model and how to fill them. The first is the intercept. */
export interface Design {
  readonly columns: readonly string[];
  /** The term that each column belongs to, such as `construction` or `construction × pressure`. */
  readonly terms: readonly string[];
  /** A row for each observation. */
  readonly rows: readonly Float64Array[];
  /** The row of a setting. Throws a RangeError for a covariate without a value or a level never seen. */
  rowAt(setting: Setting): Float64Array;
}

/**
 * A design with an intercept and, for each term, the covariate itself or the product of several (an interaction). A factor
 * has a column for each level but its reference (the first met, unless stated): the difference from the reference.
 *
 * @param terms names of covariates; a term of several is their interaction and needs each of them as a term before it
 * @throws RangeError for a name without covariate, an interaction without its parts, or covariates of unequal length
 */
export function buildDesign(
  covariates: readonly Covariate[],
  terms: readonly (readonly string[])[],
  size: number,
): Design {
  const byName = new Map(covariates.map((c) => [c.name, c]));
  for (const c of covariates)
    if (c.values.length !== size)
      throw new RangeError(`covariate ${c.name} has ${c.values.length} values for ${size} observations`);
  const columns: Column[] = [{ name: 'intercept', term: 'intercept', parts: [] }];
  const seen = new Set<string>();
  for (const term of terms) {
    if (term.length > 1)
      for (const part of term)
        if (!seen.has(part))
          throw new RangeError(`the interaction ${term.join(' × ')} needs the term ${part} before it`);
    columns.push(...columnsOf(term, byName));
    seen.add(term.join(' × '));
  }
  const rowAt = (setting: Setting) => Float64Array.from(columns, (c) => entryOf(c, setting, byName));
  const rows = Array.from({ length: size }, (_, i) =>
    rowAt(Object.fromEntries(covariates.map((c) => [c.name, c.values[i]!]))),
  );
  return { columns: columns.map((c) => c.name), terms: columns.map((c) => c.term), rows, rowAt };
}

/** The levels of a factor, its reference first, the others in the order in which they are met. */
export function levelsOf(factor: Covariate & { kind: 'factor' }): string[] {
  const met = [...new Set(factor.values)];
  const { reference } = factor;
  if (reference === undefined) return met;
  return [reference, ...met.filter((level) => level !== reference)];
}

function columnsOf(term: readonly string[], byName: ReadonlyMap<string, Covariate>): Column[] {
  let columns: Column[] = [{ name: '', term: term.join(' × '), parts: [] }];
  for (const name of term) {
    const covariate = byName.get(name);
    if (covariate === undefined) throw new RangeError(`no covariate ${name}`);
    const levels = covariate.kind === 'number' ? [null] : levelsOf(covariate).slice(1);
    columns = columns.flatMap((column) =>
      levels.map((level) => ({
        term: column.term,
        name: [column.name, level === null ? name : `${name} ${level}`].filter(Boolean).join(' × '),
        parts: [...column.parts, { covariate: name, level }],
      })),
    );
  }
  return columns;
}

function entryOf(column: Column, setting: Setting, byName: ReadonlyMap<string, Covariate>): number {
  let product = 1;
  for (const { covariate, level } of column.parts) {
    const value = setting[covariate];
    const known = byName.get(covariate)!;
    if (known.kind === 'factor') {
      if (!known.values.includes(value as string) && value !== known.reference)
        throw new RangeError(`${covariate} has no level ${value}`);
      product *= value === level ? 1 : 0;
    } else {
      if (typeof value !== 'number' || !Number.isFinite(value))
        throw new RangeError(`${covariate} ${value} is not a finite number`);
      product *= value;
    }
  }
  return product;
}
