import Table from 'cli-table3';
import { clean, type Page } from './page.ts';
import { displayWidth, wrap } from './wrap.ts';

/** A column: its heading, how its cells stand, and the fewest columns it may be squeezed to. */
export interface Column {
  readonly head: string;
  readonly align: 'left' | 'right';
  /** Set on columns whose cells may be wrapped. */
  readonly least?: number;
}

/** A cell, and the colour it is put into once its width is known. */
export type Cell = string | { readonly text: string; readonly ink: (text: string) => string };

const INDENT = 2;
const GAP = 2;

/**
 * A table without rules, indented by two. Columns are as wide as their cells; where that is wider than the page,
 * those that may be wrapped give way, the widest first, and then all.
 */
export function table(page: Page, columns: readonly Column[], rows: readonly (readonly Cell[])[]): string[] {
  const heads = columns.map(({ head }) => clean(page, head));
  const texts = rows.map((row) =>
    row.map((cell) => clean(page, typeof cell === 'string' ? cell : cell.text, 200)),
  );
  const natural = columns.map((_, i) =>
    Math.max(1, ...[heads, ...texts].map((row) => displayWidth(row[i]!))),
  );
  const widths = squeezed(natural, columns, page.width - INDENT - GAP * (columns.length - 1));
  const grid = new Table({
    chars: NO_RULES,
    style: { head: [], border: [], 'padding-left': 0, 'padding-right': 0, compact: true },
    colWidths: widths.map((width, i) => width + (i < widths.length - 1 ? GAP : 0)),
    colAligns: columns.map(({ align }) => align),
  });
  const set = (text: string, i: number, ink: (text: string) => string) => {
    const lines = wrap(text, widths[i]!).map((line) => ink(line));
    // A column that stands right keeps its distance from the next one by spaces of its own.
    const gap = columns[i]!.align === 'right' && i < columns.length - 1 ? ' '.repeat(GAP) : '';
    return lines.map((line) => line + gap).join('\n');
  };
  grid.push(heads.map((text, i) => set(text, i, page.ink.dim)));
  for (const [r, row] of texts.entries()) {
    grid.push(row.map((text, i) => set(text, i, inkOf(rows[r]![i]!))));
  }
  return grid
    .toString()
    .split('\n')
    .map((line) => (' '.repeat(INDENT) + line).trimEnd());
}

function inkOf(cell: Cell): (text: string) => string {
  return typeof cell === 'string' ? (text) => text : cell.ink;
}

function squeezed(natural: readonly number[], columns: readonly Column[], room: number): number[] {
  const widths = [...natural];
  const total = () => widths.reduce((sum, width) => sum + width, 0);
  const giveWay = (least: (i: number) => number | undefined) => {
    while (total() > room) {
      const able = widths
        .map((width, i) => ({ i, spare: width - (least(i) ?? width), width }))
        .filter(({ spare }) => spare > 0)
        .sort((a, b) => b.width - a.width);
      if (able.length === 0) return;
      widths[able[0]!.i]! -= 1;
    }
  };
  giveWay((i) => columns[i]!.least);
  giveWay(() => 4);
  return widths;
}

const NO_RULES = {
  top: '',
  'top-mid': '',
  'top-left': '',
  'top-right': '',
  bottom: '',
  'bottom-mid': '',
  'bottom-left': '',
  'bottom-right': '',
  left: '',
  'left-mid': '',
  mid: '',
  'mid-mid': '',
  right: '',
  'right-mid': '',
  middle: '',
};
