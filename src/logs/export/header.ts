import { dimensionOf } from '../../quantity/units.ts';
import { normalName } from './fingerprint.ts';
import type { ColumnRule } from './profile.ts';

/** A header cell taken apart. */
export interface HeaderCell {
  /** As compared: single spaces, composed form. */
  readonly title: string;
  /** Without the unit in brackets. */
  readonly name: string;
  /** Null without brackets; in round ones only what is a unit counts as one. */
  readonly unit: string | null;
}

const BRACKETS = /^(.*?)\s*(?:\[([^\]]*)\]|\(([^)]*)\))$/u;

export function headerCell(cell: string): HeaderCell {
  const title = normalName(cell);
  const [, name, square, round] = BRACKETS.exec(title) ?? [];
  if (square !== undefined) return { title, name: name!, unit: mendedUnit(square) };
  if (round !== undefined && dimensionOf(mendedUnit(round)) !== null) {
    return { title, name: name!, unit: mendedUnit(round) };
  }
  return { title, name: title, unit: null };
}

/** Whether a header cell names the column of a kind: by the profile's name, or where it has none the plain one. */
export function namesColumn(
  cell: string,
  kind: { readonly name: string },
  rule: ColumnRule | undefined,
): boolean {
  const { title, name } = headerCell(cell);
  if (rule) return title === normalName(rule.name) || name === normalName(rule.name);
  return name.toLowerCase() === kind.name;
}

/** `Â°C` and the like: units whose code page was mistaken before the export came here. Common practice, no source. */
const MISTAKEN: Readonly<Record<string, string>> = { 'Â°': '°', Âµ: 'µ', 'Â²': '²', '\ufffdC': '°C', º: '°' };

/** A unit with its code page's damage mended. */
export function mendedUnit(text: string): string {
  let unit = text.trim();
  for (const [wrong, right] of Object.entries(MISTAKEN)) unit = unit.replace(wrong, right);
  return unit;
}
