import type { ReportedTyre } from '../../result/report.ts';
import { stated } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';
import { axisBelow, dashed, horizontal, horizontalEnd, line, type Plot, type Scale } from './axes.ts';
import { type Figure, INK, label, labelBeside, WIDTH } from './figure.ts';
import { ends, shown } from './numbers.ts';
import { element, type Markup, rounded, together } from './svg.ts';

const ROW = 18;

/** What the strengths of tyres are drawn beside. */
export interface TyreLines {
  /** J; null where there is none. */
  readonly limit: number | null;
  readonly median: {
    readonly value: number;
    readonly lower: number | null;
    readonly upper: number | null;
  } | null;
}

/**
 * One row a tyre: the energies between which its strength lies, hollow at the last it survived, filled at the one that
 * failed it, an arrow where nothing closes it; the limit and the median with its interval as lines across.
 */
export function tyresFigure(
  tyres: readonly ReportedTyre[],
  lines: TyreLines,
  id: string,
  language: Language,
  most = 40,
): Figure | null {
  const { charts } = language.words;
  const known = tyres.filter(({ lower, upper }) => lower !== null || upper !== null).toSorted(byStrength);
  const rows = known.slice(0, most);
  if (rows.length === 0) return null;
  const height = 48 + rows.length * ROW + (known.length > rows.length ? ROW : 0) + 50;
  const plot: Plot = { left: 130, right: WIDTH - 24, top: 44, bottom: height - 50 };
  const reach = ends(
    [...known.flatMap(({ lower, upper }) => [lower, upper]), lines.limit, lines.median?.value ?? null].filter(
      (value) => value !== null,
    ),
  );
  const x = horizontal(plot, reach.least, reach.most, 0.1);
  const say = (value: number) => shown(language, value, reach.most - reach.least);
  const closed = known.filter(({ lower, upper }) => lower !== null && upper !== null).length;
  const within = { left: 4, right: WIDTH - 4 };
  const rest = known.length - rows.length;
  return {
    id,
    title: charts.titles.tyres,
    alternative: charts.tell.tyres({
      closed,
      open: known.length - closed,
      lowest: say(reach.least),
      highest: say(reach.most),
      shown: rows.length,
      all: known.length,
    }),
    width: WIDTH,
    height,
    body: together(
      medianBand(lines, x, plot),
      axisBelow(plot, x, charts.energy, language),
      ...rows.map((tyre, i) => drawn(tyre, x, plot, plot.top + ROW * (i + 0.5) + 2)),
      ...(rest > 0 ? [label(plot.left, plot.bottom - 6, charts.more(rest), { fill: INK.muted })] : []),
      ...(lines.median === null
        ? []
        : [
            line(`M${rounded(x(lines.median.value))} 34V${rounded(plot.bottom)}`, INK.fit, 1.5),
            labelBeside(x(lines.median.value), 38, `${charts.median} ${say(lines.median.value)} J`, within, {
              fill: INK.fit,
            }),
          ]),
      ...(lines.limit === null
        ? []
        : [
            dashed(x(lines.limit), 14, plot.bottom, INK.limit),
            labelBeside(x(lines.limit), 18, `${charts.limit} ${stated(language, lines.limit, 'J')}`, within, {
              fill: INK.limit,
              weight: 600,
            }),
          ]),
    ),
  };
}

function medianBand({ median }: TyreLines, x: Scale, plot: Plot): Markup {
  if (median === null) return together();
  const [least, most] = x.domain() as [number, number];
  const from = x(Math.max(least, median.lower ?? least));
  const to = x(Math.min(most, median.upper ?? most));
  return element('rect', {
    x: from,
    y: plot.top - 2,
    width: Math.max(0, to - from),
    height: plot.bottom - plot.top + 2,
    fill: INK.band,
  });
}

function drawn({ specimen, lower, upper }: ReportedTyre, x: Scale, plot: Plot, y: number): Markup {
  const from = lower === null ? plot.left + 6 : x(lower);
  const to = upper === null ? plot.right - 6 : x(upper);
  const dot = (cx: number, fill: string) =>
    element('circle', { cx, cy: y, r: 4, fill, stroke: INK.mark, 'stroke-width': 1.5 });
  return together(
    label(plot.left - 12, y + 4, specimen, { anchor: 'end', room: plot.left - 16 }),
    line(`M${rounded(from)} ${rounded(y)}H${rounded(to)}`, INK.mark, 1.5),
    lower === null ? horizontalEnd(from, y, true, -1) : dot(from, '#ffffff'),
    upper === null ? horizontalEnd(to, y, true, 1) : dot(to, INK.mark),
  );
}

/** By where the strength is known to begin; those open below first. */
function byStrength(a: ReportedTyre, b: ReportedTyre): number {
  const size = ({ lower, upper }: ReportedTyre) => upper ?? lower ?? 0;
  const less = (a.lower ?? -Infinity) - (b.lower ?? -Infinity);
  return (Number.isNaN(less) ? 0 : less) || size(a) - size(b);
}
