import { echo } from '../../problem/echo.ts';
import type { ReportedTimeline, TimelineMinute, TimelineStretch } from '../../result/report.ts';
import type { Language } from '../words/language.ts';
import { axisBelow, axisLeft, horizontal, line, type Plot, type Scale, vertical } from './axes.ts';
import { type Figure, INK, label, labelWidth, WIDTH } from './figure.ts';
import { ends, shown } from './numbers.ts';
import { element, type Markup, rounded, together } from './svg.ts';

const HEIGHT = 260;
const PLOT: Plot = { left: 84, right: WIDTH - 20, top: 40, bottom: HEIGHT - 50 };
const HOUR = 3_600_000;
const MINUTE = 60_000;

/** A channel to be drawn, with the nights where they are known. */
export interface TimelineInput extends ReportedTimeline {
  /** Stretches of milliseconds, by the laboratory's clock; empty where nobody tells its zone. */
  readonly nights: readonly { readonly from: number; readonly to: number }[];
}

interface Column {
  readonly x: number;
  readonly min: number;
  readonly max: number;
  readonly mean: number;
  readonly outside: boolean;
}

/**
 * A channel of a drum test over its time, from the minutes: of each column of the picture the extremes, so that no peak
 * is lost however long the log is, and the mean; set value and band, what lay outside it, standstills and nights.
 */
export function timelineFigure(input: TimelineInput, id: string, language: Language): Figure | null {
  const { charts } = language.words;
  const { unit, minutes, schedule, nights } = input;
  // Turned, beside an axis of this height, longer names would run out of the picture.
  const channel = echo(language.words.channel(input.channel), 20);
  const valued = minutes.filter(({ min, max, mean }) => min !== null && max !== null && mean !== null);
  // Standstills are shaded; their noughts would squeeze the band into a line.
  const turning = valued.filter(({ running }) => running);
  const known = turning.length > 0 ? turning : valued;
  const [first, last] = [minutes[0], minutes.at(-1)];
  if (known.length === 0 || first === undefined || last === undefined) return null;
  const span = last.time + MINUTE - first.time;
  const hours = (time: number) => (time - first.time) / HOUR;
  const limits = schedule.flatMap(({ value, lower, upper }) => [value, lower ?? value, upper ?? value]);
  const reach = ends([...known.flatMap(({ min, max }) => [min!, max!]), ...limits]);
  const x = horizontal(PLOT, 0, span / HOUR, 0);
  const y = vertical(PLOT, reach.least, reach.most, 0.06);
  const at = (time: number) => Math.min(PLOT.right, Math.max(PLOT.left, x(hours(time))));
  const pauses = pausesOf(minutes);
  const columns = columnsOf(known, schedule, at, y);
  const outside = known.filter((minute) => isOutside(minute, schedule)).length;
  const values = ends(known.flatMap(({ min, max }) => [min!, max!]));
  const say = (value: number) => `${shown(language, value, values.most - values.least)} ${unit}`;
  const stretch = (from: number, to: number, fill: string, top: number, height: number) =>
    element('rect', { x: at(from), y: top, width: Math.max(0.5, at(to) - at(from)), height, fill });
  const tall = PLOT.bottom - PLOT.top;
  return {
    id,
    title: charts.titles.timeline(channel),
    alternative: charts.tell.timeline({
      channel,
      hours: shown(language, span / HOUR, span / HOUR),
      least: say(values.least),
      most: say(values.most),
      outside,
      pauses: pauses.length,
    }),
    width: WIDTH,
    height: HEIGHT,
    body: together(
      ...schedule
        .filter(({ lower, upper }) => lower !== null && upper !== null)
        .map(({ from, to, lower, upper }) =>
          element('rect', {
            x: at(from),
            y: y(upper!),
            width: Math.max(0, at(to) - at(from)),
            height: y(lower!) - y(upper!),
            fill: INK.band,
          }),
        ),
      ...pauses.map(({ from, to }) => stretch(from, to, INK.pause, PLOT.top, tall)),
      axisLeft(PLOT, y, `${channel} (${unit})`, language, { count: 5 }),
      axisBelow(PLOT, x, charts.hours, language),
      ...nights.map(({ from, to }) => stretch(from, to, INK.muted, PLOT.bottom - 5, 5)),
      extremes(columns),
      ...schedule.map(({ from, to, value }) =>
        line(`M${rounded(at(from))} ${rounded(y(value))}H${rounded(at(to))}`, INK.fit, 1, '6 3'),
      ),
      line(means(columns), INK.mark, 1),
      legend({ pauses: pauses.length > 0, nights: nights.length > 0, outside: outside > 0 }, language),
    ),
  };
}

/** Minutes put together into columns a pixel wide. */
function columnsOf(
  minutes: readonly TimelineMinute[],
  schedule: readonly TimelineStretch[],
  at: (time: number) => number,
  y: Scale,
): Column[] {
  const found = new Map<number, { min: number; max: number; sum: number; n: number; outside: boolean }>();
  for (const minute of minutes) {
    const place = Math.round(at(minute.time + MINUTE / 2));
    const column = found.get(place) ?? { min: Infinity, max: -Infinity, sum: 0, n: 0, outside: false };
    column.min = Math.min(column.min, minute.min!);
    column.max = Math.max(column.max, minute.max!);
    column.sum += minute.mean!;
    column.n += 1;
    column.outside ||= isOutside(minute, schedule);
    found.set(place, column);
  }
  return [...found]
    .sort(([a], [b]) => a - b)
    .map(([place, { min, max, sum, n, outside }]) => ({
      x: place,
      min: y(min),
      max: y(max),
      mean: y(sum / n),
      outside,
    }));
}

function extremes(columns: readonly Column[]): Markup {
  const bars = (chosen: readonly Column[]) =>
    chosen.map(({ x, min, max }) => `M${x} ${rounded(Math.max(min, max + 1))}V${rounded(max)}`).join('');
  const marks = columns
    .filter(({ outside }) => outside)
    .map(({ x }) => `M${x} ${PLOT.top - 7}l-3 -6h6z`)
    .join('');
  return together(
    line(bars(columns), INK.range, 1),
    ...(marks === '' ? [] : [element('path', { d: marks, fill: INK.limit })]),
  );
}

/** The means as a line, broken where nothing was logged. */
function means(columns: readonly Column[]): string {
  const gaps = columns.slice(1).map(({ x }, i) => x - columns[i]!.x);
  const usual = gaps.toSorted((a, b) => a - b)[gaps.length >> 1] ?? 1;
  return columns
    .map(
      ({ x, mean }, i) =>
        `${i === 0 || gaps[i - 1]! > 2.5 * usual ? 'M' : 'L'}${rounded(x)} ${rounded(mean)}`,
    )
    .join('');
}

/** Beyond every band that is in force within a minute of it: at a border of blocks either will do. */
function isOutside(
  { time, min, max, running }: TimelineMinute,
  schedule: readonly TimelineStretch[],
): boolean {
  if (!running) return false;
  const near = schedule.filter(({ from, to }) => time + 2 * MINUTE > from && time - MINUTE < to);
  if (near.length === 0) return false;
  const below = near.every(({ lower }) => lower !== null && min !== null && min < lower);
  const above = near.every(({ upper }) => upper !== null && max !== null && max > upper);
  return below || above;
}

/** Stretches in which the drum stood, or nothing was logged for more than two minutes. */
function pausesOf(minutes: readonly TimelineMinute[]): { readonly from: number; readonly to: number }[] {
  const found: { from: number; to: number }[] = [];
  let [last, isLastPause] = [minutes[0]!.time, false];
  for (const { time, running } of minutes) {
    if (time - last > 2 * MINUTE) found.push({ from: last + MINUTE, to: time });
    if (!running) {
      const open = found.at(-1);
      if (isLastPause && open !== undefined) open.to = time + MINUTE;
      else found.push({ from: time, to: time + MINUTE });
    }
    [last, isLastPause] = [time, !running];
  }
  return found;
}

function legend(
  has: { readonly pauses: boolean; readonly nights: boolean; readonly outside: boolean },
  { words: { charts } }: Language,
): Markup {
  let left = PLOT.left;
  const pieces: Markup[] = [];
  const add = (drawn: Markup, word: string) => {
    pieces.push(drawn, label(left + 24, 20, word));
    left += labelWidth(word) + 34;
  };
  add(
    together(
      element('rect', { x: left, y: 10, width: 18, height: 12, fill: INK.band }),
      line(`M${left} 16h18`, INK.fit, 1, '6 3'),
    ),
    charts.setValue,
  );
  if (has.outside) add(element('path', { d: `M${left + 9} 21l-5 -10h10z`, fill: INK.limit }), charts.outside);
  if (has.pauses)
    add(element('rect', { x: left, y: 10, width: 18, height: 12, fill: INK.pause }), charts.pause);
  if (has.nights)
    add(element('rect', { x: left, y: 14, width: 18, height: 5, fill: INK.muted }), charts.night);
  return together(...pieces);
}
