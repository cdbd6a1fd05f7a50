import type { Language } from '../words/language.ts';
import { axisBelow, dashed, horizontal, horizontalEnd, line, type Plot, type Scale } from './axes.ts';
import { type Figure, INK, label, labelBeside, WIDTH } from './figure.ts';
import { ends, shown } from './numbers.ts';
import { element, type Markup, rounded, together } from './svg.ts';

const ROW = 28;

/** One construction of a comparison; null ends are unbounded. */
export interface ComparedConstruction {
  readonly name: string;
  readonly value: number | null;
  /** That all others are shown as shares of it, so that it has no interval. */
  readonly isWhole?: boolean | undefined;
  readonly lower: number | null;
  readonly upper: number | null;
  /** Letters of the groups it is in: those that share one are not told apart. */
  readonly group?: string | undefined;
  readonly reference?: boolean | undefined;
}

/** Constructions with their intervals, one below the other; the reference's value as a line across. */
export function comparisonFigure(
  rows: readonly ComparedConstruction[],
  { title, unit }: { readonly title: string; readonly unit: string },
  id: string,
  language: Language,
  most = 30,
): Figure | null {
  const { charts } = language.words;
  const known = rows.filter(({ value, lower, upper }) => value !== null || lower !== null || upper !== null);
  const drawnRows = known.slice(0, most);
  if (drawnRows.length === 0) return null;
  const rest = known.length - drawnRows.length;
  const grouped = drawnRows.some(({ group }) => group !== undefined);
  const height = 34 + drawnRows.length * ROW + (rest > 0 ? ROW : 0) + 50;
  const plot: Plot = { left: 150, right: WIDTH - 96, top: 30, bottom: height - 50 };
  const reach = ends(
    drawnRows.flatMap(({ value, lower, upper }) => [value, lower, upper].filter((it) => it !== null)),
  );
  const x = horizontal(plot, reach.least, reach.most, 0.08);
  const say = (value: number) => `${shown(language, value, reach.most - reach.least)} ${unit}`;
  const reference = drawnRows.find(({ reference: isIt, value }) => isIt === true && value !== null);
  return {
    id,
    title: charts.titles.comparison,
    alternative: [
      ...drawnRows.map((row) =>
        charts.tell.construction({
          name: row.name.slice(0, 40),
          value: row.value === null ? '—' : say(row.value),
          range: row.isWhole ? null : rangeOf(row, say, language),
          group: row.group ?? null,
        }),
      ),
      ...(grouped ? [charts.tell.groups] : []),
    ].join(' '),
    width: WIDTH,
    height,
    body: together(
      ...(reference === undefined
        ? []
        : [
            dashed(x(reference.value!), plot.top - 8, plot.bottom, INK.muted),
            labelBeside(
              x(reference.value!),
              plot.top - 10,
              charts.reference,
              { left: 4, right: WIDTH - 4 },
              {
                fill: INK.muted,
              },
            ),
          ]),
      axisBelow(plot, x, title, language),
      ...drawnRows.map((row, i) => drawn(row, x, plot, plot.top + ROW * (i + 0.5), say)),
      ...(rest > 0 ? [label(plot.left, plot.bottom - 8, charts.more(rest), { fill: INK.muted })] : []),
    ),
  };
}

function drawn(
  row: ComparedConstruction,
  x: Scale,
  plot: Plot,
  y: number,
  say: (value: number) => string,
): Markup {
  const from = row.lower === null ? plot.left : x(row.lower);
  const to = row.upper === null ? plot.right : x(row.upper);
  const bold = row.reference === true ? { weight: 600 } : {};
  const group = row.group === undefined ? '' : `  ${row.group}`;
  return together(
    label(plot.left - 12, y + 4, row.name, { anchor: 'end', room: plot.left - 16, ...bold }),
    ...(row.isWhole
      ? []
      : [
          line(`M${rounded(from)} ${rounded(y)}H${rounded(to)}`, INK.fit, 2),
          horizontalEnd(from, y, row.lower === null, -1),
          horizontalEnd(to, y, row.upper === null, 1),
        ]),
    ...(row.value === null
      ? []
      : [
          element('circle', {
            cx: x(row.value),
            cy: y,
            r: 5,
            fill: row.reference === true ? '#ffffff' : INK.fit,
            stroke: INK.fit,
            'stroke-width': 2,
          }),
        ]),
    label(plot.right + 12, y + 4, `${row.value === null ? '—' : say(row.value)}${group}`, {
      room: WIDTH - plot.right - 14,
    }),
  );
}

function rangeOf(
  { lower, upper }: ComparedConstruction,
  say: (value: number) => string,
  { words }: Language,
): string {
  if (lower !== null && upper !== null) return words.between(say(lower), say(upper));
  if (lower !== null) return words.from(say(lower));
  return upper === null ? words.open : words.upTo(say(upper));
}
