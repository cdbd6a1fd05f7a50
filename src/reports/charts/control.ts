import { line as curve } from 'd3-shape';
import { decimalsFor } from '../../quantity/format.ts';
import type { MonitoredPoint, MonitoredStandard } from '../../result/monitor.ts';
import type { Language } from '../words/language.ts';
import { axisLeft, line, type Plot, type Scale, vertical } from './axes.ts';
import { apartBelow, type Figure, FONT_SIZE, INK, label, WIDTH } from './figure.ts';
import { ends } from './numbers.ts';
import { element, type Markup, rounded, together } from './svg.ts';

const HEIGHT = 436;
const RIGHT = WIDTH - 100;
const VALUES: Plot = { left: 70, right: RIGHT, top: 16, bottom: 240 };
const SUMS: Plot = { left: 70, right: RIGHT, top: 268, bottom: 376 };

const LEGEND = [
  'Filled: a signal. Line: weighted average. Grey: base period.',
  'Upright: the drift began. Below: sums above (solid) and below (dotted) the centre.',
];

/** Words of the picture; reports of check standards are in English only so far. */
export interface ControlWords {
  readonly title: string;
  readonly alternative: string;
  readonly value: string;
}

/**
 * A check standard over time: its points between their limits with the weighted average, and below the two cumulative sums against their
 * decision limit. The base period is shaded; what signals is filled.
 */
export function controlFigure(
  { points, limits, cusum, drift }: MonitoredStandard,
  words: ControlWords,
  id: string,
  language: Language,
): Figure {
  const step = (VALUES.right - VALUES.left) / Math.max(1, points.length);
  const x = (place: number) => VALUES.left + (place + 0.5) * step;
  const { lower, upper, centre } = limits.value;
  const range = ends([...points.map(({ value }) => value), lower, upper]);
  const y = vertical(VALUES, range.least, range.most);
  const decision = cusum.decision * limits.sigma;
  const most = ends([...points.flatMap(({ cusum: { high, low } }) => [high, low]), decision]).most;
  const z = vertical(SUMS, 0, most, 0.04).domain([0, most * 1.06]);
  const say = (value: number) => language.number(value.toFixed(Math.min(8, decimalsFor(limits.sigma))));
  const began = drift === null ? -1 : points.findIndex(({ time }) => time === drift.began);
  return {
    id,
    title: words.title,
    alternative: words.alternative,
    width: WIDTH,
    height: HEIGHT,
    body: together(
      ...basePeriods(points).map(([first, last]) =>
        element('rect', {
          x: x(first) - step / 2,
          y: VALUES.top,
          width: (last - first + 1) * step,
          height: VALUES.bottom - VALUES.top,
          fill: INK.pause,
        }),
      ),
      axisLeft(VALUES, y, words.value, language, { count: 5 }),
      across(y, upper, INK.limit, '5 3'),
      across(y, centre, INK.muted),
      across(y, lower, INK.limit, '5 3'),
      named(
        [
          [`upper ${say(upper)}`, y(upper), INK.limit],
          [`centre ${say(centre)}`, y(centre), INK.muted],
          [`lower ${say(lower)}`, y(lower), INK.limit],
        ],
        VALUES,
      ),
      path(points, x, y, ({ ewma }) => ewma.value, INK.fit),
      ...points.map((point, i) => dot(x(i), y(point.value), point.signals.length > 0)),
      ...(began < 0
        ? []
        : [line(`M${rounded(x(began) - step / 2)} ${VALUES.top}V${SUMS.bottom}`, INK.limit, 1)]),
      axisLeft(SUMS, z, 'cumulative sums', language, { count: 3 }),
      across(z, decision, INK.limit, '5 3'),
      named([[`limit ${say(decision)}`, z(decision), INK.limit]], SUMS),
      path(points, x, z, ({ cusum: sums }) => sums.high, INK.fit),
      path(points, x, z, ({ cusum: sums }) => sums.low, INK.mark, '2 2'),
      label(SUMS.left, HEIGHT - 40, points[0]?.time.slice(0, 10) ?? '', { fill: INK.muted }),
      label(SUMS.right, HEIGHT - 40, points.at(-1)?.time.slice(0, 10) ?? '', {
        anchor: 'end',
        fill: INK.muted,
      }),
      ...LEGEND.map((text, i) => label(4, HEIGHT - 20 + 16 * i, text, { fill: INK.muted })),
    ),
  };
}

/** Places of points in a row that limits come from. */
function basePeriods(points: readonly MonitoredPoint[]): [first: number, last: number][] {
  const periods: [number, number][] = [];
  for (const [i, { inBase }] of points.entries()) {
    if (!inBase) continue;
    const before = periods.at(-1);
    if (before !== undefined && before[1] === i - 1) before[1] = i;
    else periods.push([i, i]);
  }
  return periods;
}

function across(scale: Scale, value: number, stroke: string, dashes?: string): Markup {
  return line(`M${VALUES.left} ${rounded(scale(value))}H${VALUES.right}`, stroke, 1, dashes);
}

/** Names of lines at their right ends, moved apart where they would touch. */
function named(lines: readonly (readonly [string, number, string])[], plot: Plot): Markup {
  const places = apartBelow(
    lines.map(([, y]) => y),
    FONT_SIZE + 2,
    plot.top,
    plot.bottom,
  );
  return together(
    ...lines.map(([text, , fill], i) =>
      label(plot.right + 4, places[i]! + FONT_SIZE / 3, text, { fill, room: WIDTH - plot.right - 6 }),
    ),
  );
}

function path(
  points: readonly MonitoredPoint[],
  x: (place: number) => number,
  y: Scale,
  reading: (point: MonitoredPoint) => number,
  stroke: string,
  dashes?: string,
): Markup {
  const drawn = curve<MonitoredPoint>()
    .x((_, i) => x(i))
    .y((point) => y(reading(point)))
    .digits(2)([...points]);
  return line(drawn ?? '', stroke, 1.25, dashes);
}

function dot(cx: number, cy: number, isFilled: boolean): Markup {
  return element('circle', {
    cx,
    cy,
    r: 2.6,
    fill: isFilled ? INK.limit : '#ffffff',
    stroke: isFilled ? INK.limit : INK.mark,
    'stroke-width': 1,
  });
}
