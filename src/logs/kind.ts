/** The tables of a lab, told apart by their headers. */
export type TableKind = 'drops' | 'drum samples' | 'drum outcomes' | 'specimens';

/** Names that only this kind of table has together; the first kind that has them all is meant. */
export const NEEDED_COLUMNS: readonly { readonly kind: TableKind; readonly names: readonly string[] }[] = [
  { kind: 'drops', names: ['specimen', 'height', 'outcome'] },
  { kind: 'drum samples', names: ['speed', 'load'] },
  { kind: 'drum outcomes', names: ['specimen', 'survived', 'failed'] },
  { kind: 'specimens', names: ['specimen', 'construction'] },
];

/**
 * Which table has these columns, or null where they tell no kind.
 *
 * @param names of the columns, in lower case, without units
 */
export function kindOfTable(names: readonly string[]): TableKind | null {
  const present = new Set(names);
  return NEEDED_COLUMNS.find((mark) => mark.names.every((name) => present.has(name)))?.kind ?? null;
}
