import { area, line as curve } from 'd3-shape';
import type { ReportedWear } from '../../result/report.ts';
import { grouped } from '../grouped.ts';
import { stated } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';
import { axisBelow, axisLeft, horizontal, line, type Plot, vertical } from './axes.ts';
import { type Figure, INK, label, labelBeside, WIDTH } from './figure.ts';
import { ends, shown } from './numbers.ts';
import { element, rounded, together } from './svg.ts';

const HEIGHT = 300;
const PLOT: Plot = { left: 60, right: WIDTH - 20, top: 48, bottom: HEIGHT - 50 };

export interface WearInput extends ReportedWear {
  /** Where the course meets the limit, km, with its interval; null ends are unbounded. */
  readonly crossing: {
    readonly value: number;
    readonly lower: number | null;
    readonly upper: number | null;
  } | null;
}

/** Depth of the tread over the distance, with the limit and the interval of the distance at which it is reached. */
export function wearFigure(
  { readings, lines, limit, crossing }: WearInput,
  id: string,
  language: Language,
): Figure | null {
  const { charts } = language.words;
  if (readings.length === 0) return null;
  const course = lines.flatMap(({ points }) => points);
  const farthest = ends([...readings, ...course].map(({ distance }) => distance));
  const depths = ends([
    ...readings.map(({ depth }) => depth),
    ...(limit === null ? [] : [limit]),
    ...course.map(({ depth }) => depth),
    0,
  ]);
  const reach = Math.max(farthest.most, crossing?.upper ?? crossing?.value ?? 0) || 1;
  const x = horizontal(PLOT, 0, reach, 0).domain([0, reach * 1.05]);
  const y = vertical(PLOT, depths.least, depths.most, 0.06);
  // Bands of several tyres would hide each other.
  const banded = lines.length === 1 ? course : [];
  const inside = (value: number) => Math.min(PLOT.bottom, Math.max(PLOT.top, y(value)));
  const band = area<(typeof course)[number]>()
    .x(({ distance }) => x(distance))
    .y0(({ lower }) => inside(lower))
    .y1(({ upper }) => inside(upper))
    .digits(2)(banded);
  const path = curve<(typeof course)[number]>()
    .x(({ distance }) => x(distance))
    .y((point) => inside(point.depth))
    .digits(2);
  const sayKilometres = (value: number) => shown(language, value, reach);
  const sayMillimetres = (value: number) => shown(language, value, depths.most - depths.least);
  const crossed =
    crossing === null
      ? null
      : `${sayKilometres(crossing.value)}${crossing.lower === null || crossing.upper === null ? '' : ` (${language.words.between(sayKilometres(crossing.lower), sayKilometres(crossing.upper))})`}`;
  return {
    id,
    title: charts.titles.wear,
    alternative: charts.tell.wear({
      readings: readings.length,
      limit: limit === null ? null : sayMillimetres(limit),
      crossing: crossed,
    }),
    width: WIDTH,
    height: HEIGHT,
    body: together(
      ...(banded.length < 2 ? [] : [element('path', { d: band ?? '', fill: INK.band })]),
      axisLeft(PLOT, y, charts.treadDepth, language, { count: 5 }),
      axisBelow(PLOT, x, charts.distance, language, { count: 5 }),
      ...grouped(readings, ({ specimen }) => specimen).map(([, own]) =>
        line(
          own
            .toSorted((a, b) => a.distance - b.distance)
            .map(
              (reading, i) =>
                `${i === 0 ? 'M' : 'L'}${rounded(x(reading.distance))} ${rounded(y(reading.depth))}`,
            )
            .join(''),
          INK.muted,
          0.75,
        ),
      ),
      ...lines.map(({ points }) => line(path(points) ?? '', INK.fit, lines.length === 1 ? 2 : 1)),
      ...readings.map(({ distance, depth: mm }) =>
        element('circle', { cx: x(distance), cy: y(mm), r: 3, fill: INK.mark }),
      ),
      ...(limit === null
        ? []
        : [
            line(`M${PLOT.left} ${rounded(y(limit))}H${PLOT.right}`, INK.limit, 1.5, '5 3'),
            label(PLOT.left + 4, 16, `${charts.limit} ${stated(language, limit, 'mm')}`, {
              fill: INK.limit,
              weight: 600,
            }),
            line(`M${PLOT.left + 2} 20V${rounded(y(limit))}`, INK.limit, 0.75),
          ]),
      ...(crossing === null || limit === null
        ? []
        : [
            line(
              `M${rounded(crossing.lower === null ? PLOT.left : x(crossing.lower))} ${rounded(y(limit))}H${rounded(crossing.upper === null ? PLOT.right : x(crossing.upper))}`,
              INK.fit,
              5,
            ),
            element('circle', {
              cx: x(crossing.value),
              cy: y(limit),
              r: 5,
              fill: '#ffffff',
              stroke: INK.fit,
              'stroke-width': 2,
            }),
            line(`M${rounded(x(crossing.value))} 38V${rounded(y(limit) - 6)}`, INK.fit, 0.75),
            labelBeside(
              x(crossing.value),
              34,
              `${charts.crossing}: ${crossed} km`,
              { left: 4, right: WIDTH - 4 },
              { fill: INK.fit },
            ),
          ]),
    ),
  };
}
