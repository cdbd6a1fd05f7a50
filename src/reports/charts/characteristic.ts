import { line as curve } from 'd3-shape';
import type { Verdict } from '../../result/criterion.ts';
import { stated } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';
import { axisBelow, axisLeft, dashed, horizontal, line, type Plot, vertical } from './axes.ts';
import { apartBelow, type Figure, FONT_SIZE, INK, label, labelBeside, labelWidth, WIDTH } from './figure.ts';
import { ends, shown } from './numbers.ts';
import { together } from './svg.ts';

const HEIGHT = 300;

/** Chances of the verdicts at one true median; shares of tests. */
export interface VerdictChances {
  /** J. */
  readonly truth: number;
  readonly pass: number;
  readonly fail: number;
  readonly inconclusive: number;
}

const CURVES = [
  { verdict: 'pass', stroke: INK.fit, width: 2.5, dashes: undefined },
  { verdict: 'inconclusive', stroke: INK.muted, width: 2, dashes: '2 3' },
  { verdict: 'fail', stroke: INK.limit, width: 2, dashes: '8 3' },
] as const satisfies readonly { readonly verdict: Verdict; readonly [key: string]: unknown }[];

/** The operating characteristic: how likely each verdict is, over the true strength. */
export function characteristicFigure(
  given: readonly VerdictChances[],
  limit: number | null,
  id: string,
  language: Language,
): Figure | null {
  const { charts, verdict: words } = language.words;
  const points = given.filter(({ truth }) => Number.isFinite(truth)).toSorted((a, b) => a.truth - b.truth);
  if (points.length < 2) return null;
  const wide = Math.max(...CURVES.map(({ verdict }) => labelWidth(words[verdict], 600)));
  const plot: Plot = { left: 60, right: WIDTH - wide - 20, top: 30, bottom: HEIGHT - 50 };
  const reach = ends([...points.map(({ truth }) => truth), ...(limit === null ? [] : [limit])]);
  const x = horizontal(plot, reach.least, reach.most, 0.02);
  const y = vertical(plot, 0, 100, 0.02);
  const last = points.at(-1)!;
  const places = apartBelow(
    CURVES.map(({ verdict }) => y(100 * last[verdict])),
    FONT_SIZE + 3,
    plot.top + 4,
    plot.bottom,
  );
  const say = (value: number) => shown(language, value, reach.most - reach.least);
  const even = evenChance(points);
  return {
    id,
    title: charts.titles.characteristic,
    alternative: charts.tell.characteristic({
      points: points.length,
      lowest: say(reach.least),
      highest: say(reach.most),
      even: even === null ? null : say(even),
    }),
    width: WIDTH,
    height: HEIGHT,
    body: together(
      axisLeft(plot, y, charts.chanceOfVerdict, language, { ticks: [0, 20, 40, 60, 80, 100] }),
      axisBelow(plot, x, charts.trueMedian, language),
      ...(limit === null
        ? []
        : [
            dashed(x(limit), 14, plot.bottom, INK.limit),
            labelBeside(
              x(limit),
              18,
              `${charts.limit} ${stated(language, limit, 'J')}`,
              { left: 4, right: WIDTH - 4 },
              {
                fill: INK.limit,
                weight: 600,
              },
            ),
          ]),
      ...CURVES.map(({ verdict, stroke, width, dashes }, i) =>
        together(
          line(
            curve<VerdictChances>()
              .x(({ truth }) => x(truth))
              .y((point) => y(100 * point[verdict]))
              .digits(2)(points) ?? '',
            stroke,
            width,
            dashes,
          ),
          label(plot.right + 8, places[i]! + 4, words[verdict], { fill: stroke, weight: 600 }),
        ),
      ),
    ),
  };
}

/** The true median at which a pass is as likely as not, between two points; null where it is never crossed. */
export function evenChance(points: readonly VerdictChances[]): number | null {
  for (const [i, point] of points.entries()) {
    const before = points[i - 1];
    if (before === undefined || before.pass >= 0.5 || point.pass < 0.5) continue;
    return before.truth + ((0.5 - before.pass) / (point.pass - before.pass)) * (point.truth - before.truth);
  }
  return null;
}
