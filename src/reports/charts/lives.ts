import { stated } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';
import { axisBelow, dashed, horizontal, horizontalEnd, line, type Plot, type Scale } from './axes.ts';
import { type Figure, INK, label, labelBeside, WIDTH } from './figure.ts';
import { ends, shown } from './numbers.ts';
import { element, type Markup, rounded, together } from './svg.ts';

const ROW = 22;

/** The life of one tyre on the drum, km. */
export interface Life {
  readonly specimen: string;
  /** Distance that it is known to have survived. */
  readonly survived: number;
  /** Where its failure was found; null for a suspension: taken off, or still running. */
  readonly failed: number | null;
  readonly cause?: string | null | undefined;
}

/** One bar a tyre: its distance, ended by a dot where it failed, by an arrow where it did not; hatched between looks. */
export function livesFigure(
  lives: readonly Life[],
  limit: number | null,
  id: string,
  language: Language,
  most = 40,
): Figure | null {
  const { charts } = language.words;
  const known = lives.filter(({ survived, failed }) => Number.isFinite(failed ?? survived));
  const rows = known.toSorted((a, b) => reachOf(b) - reachOf(a)).slice(0, most);
  if (rows.length === 0) return null;
  const rest = known.length - rows.length;
  const height = 30 + rows.length * ROW + (rest > 0 ? ROW : 0) + 50;
  const plot: Plot = { left: 130, right: WIDTH - 110, top: 26, bottom: height - 50 };
  const reach = ends(known.map(reachOf));
  const x = horizontal(plot, 0, Math.max(reach.most, limit ?? 0), 0).domain([
    0,
    (Math.max(reach.most, limit ?? 0) || 1) * 1.06,
  ]);
  const say = (value: number) => shown(language, value, reach.most);
  const running = known.filter(({ failed }) => failed === null).length;
  return {
    id,
    title: charts.titles.lives,
    alternative: charts.tell.lives({
      failed: known.length - running,
      running,
      shortest: say(reach.least),
      longest: say(reach.most),
    }),
    width: WIDTH,
    height,
    body: together(
      axisBelow(plot, x, charts.distance, language, { count: 5 }),
      ...rows.map((life, i) => drawn(life, x, plot, plot.top + ROW * (i + 0.5))),
      ...(rest > 0 ? [label(plot.left, plot.bottom - 8, charts.more(rest), { fill: INK.muted })] : []),
      ...(limit === null
        ? []
        : [
            dashed(x(limit), 14, plot.bottom, INK.limit),
            labelBeside(
              x(limit),
              18,
              `${charts.limit} ${stated(language, limit, 'km')}`,
              { left: 4, right: WIDTH - 4 },
              {
                fill: INK.limit,
                weight: 600,
              },
            ),
          ]),
    ),
  };
}

function reachOf({ survived, failed }: Life): number {
  return failed ?? survived;
}

function drawn({ specimen, survived, failed, cause }: Life, x: Scale, plot: Plot, y: number): Markup {
  const end = x(failed ?? survived);
  const certain = x(Math.min(survived, failed ?? survived));
  return together(
    label(plot.left - 12, y + 4, specimen, { anchor: 'end', room: plot.left - 16 }),
    element('rect', {
      x: plot.left,
      y: y - 5,
      width: Math.max(0, certain - plot.left),
      height: 10,
      fill: INK.band,
    }),
    line(`M${rounded(plot.left)} ${rounded(y)}H${rounded(certain)}`, INK.fit, 1.5),
    ...(failed !== null && end > certain
      ? [line(`M${rounded(certain)} ${rounded(y)}H${rounded(end)}`, INK.fit, 1.5, '2 3')]
      : []),
    failed === null
      ? together(line(`M${rounded(end)} ${rounded(y)}h12`, INK.fit, 1.5), horizontalEnd(end + 12, y, true, 1))
      : element('circle', { cx: end, cy: y, r: 4.5, fill: INK.mark }),
    ...(cause
      ? [label(plot.right + 12, y + 4, cause, { room: WIDTH - plot.right - 14, fill: INK.muted })]
      : []),
  );
}
