import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { FONT_SIZE, INK, label, labelWidth } from './figure.ts';
import { element, type Markup, together } from './svg.ts';

/** The rectangle in which data are drawn, within the figure. */
export interface Plot {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export type Scale = ScaleLinear<number, number>;

/** A scale over [low, high], a little wider, so that no mark stands on the edge; a single value gets room around it. */
export function horizontal(plot: Plot, low: number, high: number, room = 0.04): Scale {
  return scaleLinear(widened(low, high, room), [plot.left, plot.right]);
}

/** The same, upwards. */
export function vertical(plot: Plot, low: number, high: number, room = 0.06): Scale {
  return scaleLinear(widened(low, high, room), [plot.bottom, plot.top]);
}

function widened(low: number, high: number, room: number): [number, number] {
  const span = high - low;
  const more = span > 0 ? span * room : Math.max(Math.abs(low), 1) * 0.1;
  return [low - more, high + more];
}

/** The axis below a plot: ticks with their numbers, and the title with its unit. */
export function axisBelow(plot: Plot, scale: Scale, title: string, count = 6): Markup {
  const format = scale.tickFormat(count);
  const ticks = apart(
    scale.ticks(count),
    (value) => scale(value),
    (value) => labelWidth(format(value)) + 10,
  );
  return together(
    element('path', { d: `M${plot.left} ${plot.bottom}H${plot.right}`, stroke: INK.muted, fill: 'none' }),
    ...ticks.map((value) =>
      together(
        element('path', { d: `M${two(scale(value))} ${plot.bottom}v5`, stroke: INK.muted, fill: 'none' }),
        label(scale(value), plot.bottom + 18, format(value), { anchor: 'middle', fill: INK.muted }),
      ),
    ),
    label((plot.left + plot.right) / 2, plot.bottom + 36, title, { anchor: 'middle' }),
  );
}

/** The axis left of a plot, with light lines across at its ticks. */
export function axisLeft(
  plot: Plot,
  scale: Scale,
  title: string,
  count = 6,
  format = scale.tickFormat(count),
): Markup {
  const ticks = apart(
    scale.ticks(count),
    (value) => scale(value),
    () => FONT_SIZE + 4,
  );
  const wide = Math.max(0, ...ticks.map((value) => labelWidth(format(value))));
  return together(
    ...ticks.map((value) =>
      together(
        element('path', {
          d: `M${plot.left} ${two(scale(value))}H${plot.right}`,
          stroke: INK.rule,
          fill: 'none',
        }),
        label(plot.left - 8, scale(value) + FONT_SIZE / 3, format(value), { anchor: 'end', fill: INK.muted }),
      ),
    ),
    label(Math.max(FONT_SIZE, plot.left - wide - 22), (plot.top + plot.bottom) / 2, title, {
      anchor: 'middle',
      turned: true,
    }),
  );
}

/** A second axis right of a plot, for the same places in another unit. */
export function axisRight(plot: Plot, scale: Scale, title: string, count = 6): Markup {
  const format = scale.tickFormat(count);
  const ticks = scale.ticks(count);
  const wide = Math.max(0, ...ticks.map((value) => labelWidth(format(value))));
  return together(
    ...ticks.map((value) =>
      label(plot.right + 8, scale(value) + FONT_SIZE / 3, format(value), {
        anchor: 'start',
        fill: INK.muted,
      }),
    ),
    label(plot.right + wide + 26, (plot.top + plot.bottom) / 2, title, { anchor: 'middle', turned: true }),
  );
}

/** Ticks whose labels do not touch: every second is left out until they fit. */
function apart(
  ticks: readonly number[],
  place: (value: number) => number,
  size: (value: number) => number,
): readonly number[] {
  let kept = ticks;
  while (
    kept.length > 2 &&
    kept.some(
      (value, i) =>
        i > 0 && Math.abs(place(value) - place(kept[i - 1]!)) < (size(value) + size(kept[i - 1]!)) / 2,
    )
  ) {
    kept = kept.filter((_, i) => i % 2 === 0);
  }
  return kept;
}

function two(value: number): number {
  return Math.round(value * 100) / 100;
}
