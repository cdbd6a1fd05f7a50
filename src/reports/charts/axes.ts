import { type ScaleContinuousNumeric, type ScaleLinear, scaleLinear, scaleLog } from 'd3-scale';
import { shortExponent } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';
import { FONT_SIZE, INK, label, labelWidth } from './figure.ts';
import { element, type Markup, rounded, together } from './svg.ts';

/** The rectangle in which data are drawn, within the figure. */
export interface Plot {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export type Scale = ScaleLinear<number, number>;
type AnyScale = ScaleContinuousNumeric<number, number>;

/** A scale over [low, high], a little wider, so that no mark stands on the edge; a single value gets room around it. */
export function horizontal(plot: Plot, low: number, high: number, room = 0.04): Scale {
  return scaleLinear(widened(low, high, room), [plot.left, plot.right]);
}

/** The same, upwards. */
export function vertical(plot: Plot, low: number, high: number, room = 0.06): Scale {
  return scaleLinear(widened(low, high, room), [plot.bottom, plot.top]);
}

/** A logarithmic scale over [low, high], both positive. */
export function horizontalLog(plot: Plot, low: number, high: number): AnyScale {
  const factor = high > low ? (high / low) ** 0.06 : 1.3;
  return scaleLog([low / factor, high * factor], [plot.left, plot.right]);
}

function widened(low: number, high: number, room: number): [number, number] {
  const span = high - low;
  const size = Math.max(Math.abs(low), Math.abs(high));
  // A span below the digits of its numbers is none: ticks in it could not be told apart.
  const more = span > 1e-9 * size ? span * room : 0.1 * (size || 1);
  return [low - more, high + more];
}

/** Numbers for the ticks of a scale: all as fine as their step needs, with an exponent where they would be too long. */
export function tickText(scale: AnyScale, count: number, language: Language): (value: number) => string {
  const size = Math.max(...scale.domain().map(Math.abs));
  const long = size >= 1e6 || size < 1e-3;
  const format = long ? scale.tickFormat(count, 'e') : scale.tickFormat(count, 'f');
  return (value) => language.number(shortExponent(format(value)));
}

/** The axis below a plot: ticks with their numbers, and the title with its unit. */
export function axisBelow(
  plot: Plot,
  scale: AnyScale,
  title: string,
  language: Language,
  { count = 6, format = tickText(scale, count, language), ticks = scale.ticks(count) } = {},
): Markup {
  const kept = apart(
    ticks,
    (value) => scale(value),
    (value) => labelWidth(format(value)) + 10,
  );
  return together(
    line(`M${rounded(plot.left)} ${rounded(plot.bottom)}H${rounded(plot.right)}`, INK.muted),
    ...kept.map((value) =>
      together(
        line(`M${rounded(scale(value))} ${rounded(plot.bottom)}v5`, INK.muted),
        label(scale(value), plot.bottom + 18, format(value), { anchor: 'middle', fill: INK.muted }),
      ),
    ),
    label((plot.left + plot.right) / 2, plot.bottom + 37, title, { anchor: 'middle' }),
  );
}

/** The axis left of a plot, with light lines across at its ticks. */
export function axisLeft(
  plot: Plot,
  scale: AnyScale,
  title: string,
  language: Language,
  { count = 6, format = tickText(scale, count, language), ticks = scale.ticks(count) } = {},
): Markup {
  const kept = apart(
    ticks,
    (value) => scale(value),
    () => FONT_SIZE + 4,
  );
  const wide = Math.max(0, ...kept.map((value) => labelWidth(format(value))));
  return together(
    ...kept.map((value) =>
      together(
        line(`M${rounded(plot.left)} ${rounded(scale(value))}H${rounded(plot.right)}`, INK.rule),
        label(plot.left - 8, scale(value) + FONT_SIZE / 3, format(value), { anchor: 'end', fill: INK.muted }),
      ),
    ),
    label(Math.max(FONT_SIZE, plot.left - wide - 20), (plot.top + plot.bottom) / 2, title, {
      anchor: 'middle',
      turned: true,
    }),
  );
}

/** A second axis right of a plot, for the same places in another unit. */
export function axisRight(plot: Plot, scale: AnyScale, title: string, language: Language, count = 6): Markup {
  const format = tickText(scale, count, language);
  const kept = apart(
    scale.ticks(count),
    (value) => scale(value),
    () => FONT_SIZE + 4,
  );
  const wide = Math.max(0, ...kept.map((value) => labelWidth(format(value))));
  return together(
    ...kept.map((value) =>
      label(plot.right + 8, scale(value) + FONT_SIZE / 3, format(value), { fill: INK.muted }),
    ),
    label(plot.right + wide + 26, (plot.top + plot.bottom) / 2, title, { anchor: 'middle', turned: true }),
  );
}

/** A stroke along a path. */
export function line(d: string, stroke: string, width = 1, dashes?: string): Markup {
  return element('path', { d, stroke, 'stroke-width': width, 'stroke-dasharray': dashes, fill: 'none' });
}

/** A dashed line across a plot at a limit or a reference. */
export function dashed(x: number, from: number, to: number, stroke: string): Markup {
  return line(`M${rounded(x)} ${rounded(from)}V${rounded(to)}`, stroke, 1.5, '5 3');
}

/** The end of a horizontal interval: a bar where it is closed, an arrow head where it goes on. */
export function horizontalEnd(x: number, y: number, open: boolean, direction: -1 | 1, width = 2): Markup {
  const d = open
    ? `M${rounded(x - direction * 7)} ${rounded(y - 5)}L${rounded(x)} ${rounded(y)}L${rounded(x - direction * 7)} ${rounded(y + 5)}`
    : `M${rounded(x)} ${rounded(y - 5)}v10`;
  return line(d, INK.fit, width);
}

/** Ticks whose labels do not touch: every second is left out until they fit. */
function apart(
  ticks: readonly number[],
  place: (value: number) => number,
  size: (value: number) => number,
): readonly number[] {
  let kept = ticks;
  while (kept.length > 2 && touching(kept, place, size)) kept = kept.filter((_, i) => i % 2 === 0);
  return kept.length === 2 && touching(kept, place, size) ? kept.slice(0, 1) : kept;
}

function touching(
  ticks: readonly number[],
  place: (value: number) => number,
  size: (value: number) => number,
): boolean {
  return ticks.some((value, i) => {
    const before = ticks[i - 1];
    return before !== undefined && Math.abs(place(value) - place(before)) < (size(value) + size(before)) / 2;
  });
}
