import type { ColumnKind } from '../columns.ts';
import { headerCell, namesColumn } from '../export/header.ts';
import type { ExportProfile } from '../export/profile.ts';
import { SAMPLE_QUANTITIES } from './quantities.ts';

/** Quantities of which each position of a drum has a column of its own: `load A`, `pressure A`. */
export const OF_POSITION: readonly string[] = SAMPLE_QUANTITIES.filter(
  ({ isOfPosition }) => isOfPosition,
).map(({ name }) => name);

const POSITIONED = new RegExp(`^(${OF_POSITION.join('|')}) (\\S.*)$`, 'iu');

/** The quantity and the position of a column such as `load A`; null for any other name. */
export function positionedName(
  name: string,
): { readonly quantity: string; readonly position: string } | null {
  const [, quantity, position] = POSITIONED.exec(name) ?? [];
  return quantity === undefined ? null : { quantity: quantity.toLowerCase(), position: position! };
}

/** Where the columns of a profile are by position, how it calls them; empty where there is one. */
export function positionsOfProfile({ columns }: ExportProfile): readonly string[] {
  return unique([...columns.keys()].flatMap((name) => loadPosition(name) ?? []));
}

/** The positions of which a header has a load of its own; empty where there is one. */
export function positionsOfHeader(
  cells: readonly string[],
  profile: ExportProfile | null,
): readonly string[] {
  const named = profile === null ? [] : positionsOfProfile(profile);
  if (named.length > 0) return named;
  return unique(cells.flatMap((cell) => loadPosition(headerCell(cell).name) ?? []));
}

/** The kinds of columns at one position: its own where the header has them, else those of the whole drum. */
export function kindsAt<Kind extends ColumnKind<string>>(
  kinds: readonly Kind[],
  position: string | null,
  cells: readonly string[],
  profile: ExportProfile | null,
): readonly Kind[] {
  if (position === null) return kinds;
  return kinds.map((kind) => {
    if (!OF_POSITION.includes(kind.name)) return kind;
    const name = `${kind.name} ${position}`.toLowerCase();
    const rule = profile?.columns.get(name);
    return cells.some((cell) => namesColumn(cell, { name }, rule)) ? { ...kind, name } : kind;
  });
}

function loadPosition(name: string): string | null {
  const found = positionedName(name);
  return found?.quantity === 'load' ? found.position : null;
}

function unique(values: readonly string[]): string[] {
  return values.filter(
    (value, i) => values.findIndex((other) => other.toLowerCase() === value.toLowerCase()) === i,
  );
}
