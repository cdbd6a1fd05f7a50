import { area, line as curveLine } from 'd3-shape';
import { amount, decimalsToTell } from '../../quantity/amount.ts';
import { decimalsFor } from '../../quantity/format.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import type { ResponseCurve } from '../../result/report.ts';
import { grouped } from '../grouped.ts';
import { isHandy, stated } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';
import { axisBelow, axisLeft, dashed, horizontal, line, type Plot, type Scale, vertical } from './axes.ts';
import { type Figure, INK, label, labelBeside, labelWidth, WIDTH } from './figure.ts';
import { ends } from './numbers.ts';
import { element, type Markup, rounded, together } from './svg.ts';

const HEIGHT = 348;
const PLOT: Plot = { left: 60, right: WIDTH - 86, top: 62, bottom: HEIGHT - 50 };
/** Height of the strips in which the outcomes stand, above and below the curve. */
const RUG = 15;
/** More strokes than this run into one another. */
const MOST_STROKES = 600;

/** A limit at a share failed, with the bound that decides on it. */
export interface CurveLimit {
  readonly probability: number;
  /** J. */
  readonly limit: number;
  readonly bound: number | null;
  readonly confidence: string;
}

/** What a response curve is drawn from. */
export interface CurveInput {
  readonly curve: ResponseCurve;
  readonly path: ImpactResult['path'];
  /** The estimated median and its interval, as the text has them; null where there is none. */
  readonly median: { readonly text: string; readonly range: string | null } | null;
  readonly limit: CurveLimit | null;
  /** Level of the band, written. */
  readonly level: string;
}

/**
 * The share that fails over the energy: curve, pointwise band, the outcomes as strokes (failures above, survivals
 * below), the limit, and the bound that decides at the limit's share.
 */
export function responseFigure(input: CurveInput, id: string, language: Language): Figure | null {
  const { curve, path, median, limit, level } = input;
  const { charts } = language.words;
  const outcomes = path.filter(({ used, energy }) => used && energy !== null && Number.isFinite(energy));
  const points = curve.points.filter(({ energy }) => Number.isFinite(energy));
  if (points.length < 2 || outcomes.length === 0) return null;
  const { least, most } = ends([
    ...points.map(({ energy }) => energy),
    ...(limit === null ? [] : [limit.limit, limit.bound ?? limit.limit]),
  ]);
  const x = horizontal(PLOT, least, most, 0.02);
  const y = vertical({ ...PLOT, top: PLOT.top + RUG, bottom: PLOT.bottom - RUG }, 0, 100, 0);
  const band = area<ResponseCurve['points'][number]>()
    .x((point) => x(point.energy))
    .y0((point) => y(100 * point.lower))
    .y1((point) => y(100 * point.upper))
    .digits(2)(points);
  const fitted = points.filter(({ failure }) => failure !== null);
  const best = curveLine<ResponseCurve['points'][number]>()
    .x((point) => x(point.energy))
    .y((point) => y(100 * point.failure!))
    .digits(2)(fitted);
  const span = most - least;
  // A bound that misses the limit must not be written as if it met it.
  const decimals = limit?.bound == null ? 0 : decimalsToTell(limit.bound, limit.limit, decimalsFor(span));
  const say = (value: number) =>
    isHandy(value) ? language.number(amount(value, decimals, 'J')) : stated(language, value, 'J');
  return {
    id,
    title: charts.titles.response,
    alternative:
      charts.tell.response({
        median: median?.text ?? null,
        range: median?.range ?? null,
        drops: language.words.drops(outcomes.length),
        band: level,
      }) +
      (limit === null
        ? ''
        : charts.tell.limit({
            limit: stated(language, limit.limit, 'J'),
            bound: limit.bound === null ? null : say(limit.bound),
          })),
    width: WIDTH,
    height: HEIGHT,
    body: together(
      element('path', { d: band ?? '', fill: INK.band, stroke: 'none' }),
      axisLeft(PLOT, y, charts.shareFailed, language, { ticks: [0, 20, 50, 80, 100] }),
      axisBelow(PLOT, x, charts.energy, language),
      ...(fitted.length < 2 ? [] : [line(best ?? '', INK.fit, 2.5)]),
      rug(outcomes, x, language),
      legend(charts.band(level)),
      ...(limit === null ? [] : [limitMarks(limit, x, y, say, language)]),
    ),
  };
}

function limitMarks(
  { probability, limit, bound, confidence }: CurveLimit,
  x: Scale,
  y: Scale,
  say: (value: number) => string,
  language: Language,
): Markup {
  const { charts } = language.words;
  const within = { left: 4, right: WIDTH - 4 };
  const level = y(100 * probability);
  const stroke = INK.limit;
  return together(
    dashed(x(limit), 30, PLOT.bottom, stroke),
    labelBeside(x(limit), 36, `${charts.limit} ${stated(language, limit, 'J')}`, within, {
      fill: stroke,
      weight: 600,
    }),
    ...(bound === null
      ? []
      : [
          line(`M${rounded(x(limit))} ${rounded(level)}H${rounded(x(bound))}`, INK.fit, 1, '2 2'),
          line(`M${rounded(x(bound))} ${rounded(level - 9)}v18`, INK.fit, 3.5),
          line(`M${rounded(x(bound))} 46V${rounded(level - 9)}`, INK.fit, 0.75),
          labelBeside(x(bound), 54, `${charts.bound(confidence)} ${say(bound)}`, within, { fill: INK.fit }),
        ]),
  );
}

function legend(band: string): Markup {
  return together(
    element('rect', { x: PLOT.left, y: 8, width: 18, height: 12, fill: INK.band }),
    line(`M${PLOT.left} 14h18`, INK.fit, 2.5),
    label(PLOT.left + 24, 18, band),
  );
}

/** The outcomes as strokes: failures at the top, survivals at the bottom, equal energies side by side. */
function rug(drops: ImpactResult['path'], x: Scale, language: Language): Markup {
  const { charts } = language.words;
  const strip = (outcome: 'failed' | 'survived', top: number): Markup => {
    const own = drops.filter((drop) => drop.outcome === outcome);
    const same = grouped(own.slice(0, MOST_STROKES), ({ energy }) => energy!);
    const places = same.flatMap(([energy, all]) => {
      const pitch = Math.min(2.5, 20 / all.length);
      return all.map((_, i) => x(energy) + (i - (all.length - 1) / 2) * pitch);
    });
    const d = places.map((place) => `M${rounded(place)} ${rounded(top)}v${RUG - 4}`).join('');
    const words = `${own.length} ${charts[outcome]}`;
    const middle = top + RUG / 2 + 2;
    return together(
      line(d, INK.mark, 1.2),
      labelWidth(words) < WIDTH - PLOT.right - 10
        ? label(PLOT.right + 8, middle, words)
        : together(
            label(PLOT.right + 8, middle - 6, String(own.length)),
            label(PLOT.right + 8, middle + 8, charts[outcome]),
          ),
    );
  };
  return together(strip('failed', PLOT.top + 2), strip('survived', PLOT.bottom - RUG + 2));
}
