import { area } from 'd3-shape';
import { grouped } from '../grouped.ts';
import { stated } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';
import { axisBelow, axisLeft, horizontalLog, line, type Plot, vertical } from './axes.ts';
import { type Figure, INK, label, WIDTH } from './figure.ts';
import { ends, shown } from './numbers.ts';
import { element, rounded, together } from './svg.ts';

const HEIGHT = 360;
const PLOT: Plot = { left: 66, right: WIDTH - 20, top: 32, bottom: HEIGHT - 66 };
const SHARES = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 0.8, 0.9, 0.99];

export interface WeibullInput {
  /** Failures at their plotting positions; km and share failed. */
  readonly points: readonly { readonly life: number; readonly share: number }[];
  /** km. */
  readonly suspensions: readonly number[];
  /** The fitted law; null where there is none. */
  readonly fit: { readonly shape: number; readonly characteristicLife: number } | null;
  /** Pointwise interval of the share failed. */
  readonly band: readonly { readonly life: number; readonly lower: number; readonly upper: number }[];
  /** Written; null where there is no band. */
  readonly level: string | null;
}

/** Shares failed over the distance on scales where a Weibull law is a straight line: ln(−ln(1 − F)) over ln x. */
export function weibullFigure(input: WeibullInput, id: string, language: Language): Figure | null {
  const { charts } = language.words;
  const points = input.points.filter(({ life, share }) => life > 0 && share > 0 && share < 1);
  const suspensions = input.suspensions.filter((life) => life > 0);
  if (points.length + suspensions.length === 0) return null;
  const reach = ends([...points.map(({ life }) => life), ...suspensions]);
  const x = horizontalLog(PLOT, reach.least, reach.most);
  const [low, high] = x.domain() as [number, number];
  const lowest = Math.min(0.05, ...points.map(({ share }) => share)) / 1.5;
  const y = vertical(PLOT, weibit(lowest), weibit(0.99), 0.02);
  const inside = (share: number) => y(weibit(Math.min(0.992, Math.max(lowest / 1.1, share))));
  const { fit, level } = input;
  const band = input.band.filter(({ life }) => life >= low && life <= high);
  const shape = area<(typeof band)[number]>()
    .x(({ life }) => x(life))
    .y0(({ lower }) => inside(lower))
    .y1(({ upper }) => inside(upper))
    .digits(2)(band);
  const say = (value: number) => shown(language, value, reach.most - reach.least || reach.most);
  return {
    id,
    title: charts.titles.weibull,
    alternative: charts.tell.weibull({
      failed: points.length,
      running: suspensions.length,
      shape: fit === null ? null : language.number(fit.shape.toPrecision(2)),
      life: fit === null ? null : stated(language, Number(fit.characteristicLife.toPrecision(3)), '1'),
    }),
    width: WIDTH,
    height: HEIGHT,
    body: together(
      ...(band.length < 2 ? [] : [element('path', { d: shape ?? '', fill: INK.band })]),
      axisLeft(PLOT, y, charts.shareFailedOnLawScale, language, {
        ticks: SHARES.filter((share) => share > lowest).map(weibit),
        format: (value) => language.number(String(Math.round(1000 * (1 - Math.exp(-Math.exp(value)))) / 10)),
      }),
      axisBelow({ ...PLOT, bottom: PLOT.bottom + 16 }, x, charts.distance, language, {
        format: (value) => say(value),
      }),
      ...(fit === null ? [] : [line(lineOf(fit, low, high, lowest, x, y), INK.fit, 2)]),
      line(strokes(suspensions, x), INK.mark, 1.2),
      ...points.map(({ life, share }) =>
        element('circle', { cx: x(life), cy: inside(share), r: 4, fill: INK.mark }),
      ),
      ...(level === null || band.length < 2
        ? []
        : [
            element('rect', { x: PLOT.left, y: 8, width: 18, height: 12, fill: INK.band }),
            label(PLOT.left + 24, 18, charts.band(level)),
          ]),
    ),
  };
}

/** One stroke a suspension, equal ones side by side. */
function strokes(lives: readonly number[], x: (life: number) => number): string {
  return grouped(lives, (life) => life)
    .flatMap(([life, all]) =>
      all.map((_, i) => x(life) + (i - (all.length - 1) / 2) * Math.min(3, 24 / all.length)),
    )
    .map((place) => `M${rounded(place)} ${PLOT.bottom + 4}v10`)
    .join('');
}

function weibit(share: number): number {
  return Math.log(-Math.log1p(-share));
}

/** The law as a line between the edges of the plot. */
function lineOf(
  { shape, characteristicLife }: NonNullable<WeibullInput['fit']>,
  low: number,
  high: number,
  lowest: number,
  x: (value: number) => number,
  y: (value: number) => number,
): string {
  const lifeAt = (share: number) => characteristicLife * (-Math.log1p(-share)) ** (1 / shape);
  const from = Math.min(high, Math.max(low, lifeAt(lowest)));
  const to = Math.max(low, Math.min(high, lifeAt(0.99)));
  const at = (life: number) => y(shape * Math.log(life / characteristicLife));
  return `M${rounded(x(from))} ${rounded(at(from))}L${rounded(x(to))} ${rounded(at(to))}`;
}
