import { written } from '../../quantity/amount.ts';
import type { JudgedCriterion } from '../../result/criterion.ts';
import { verdictWord } from '../text/names.ts';
import { axisBelow, horizontal, type Plot, type Scale } from './axes.ts';
import { type Figure, INK, label } from './figure.ts';
import { element, type Markup, together } from './svg.ts';

const WIDTH = 720;
const ROW = 34;
const LEFT = 190;

interface Row {
  readonly criterion: JudgedCriterion;
  readonly limit: number;
  readonly estimate: number;
  /** Shares of the limit; null where unbounded. */
  readonly lower: number | null;
  readonly upper: number | null;
}

/**
 * How far each criterion's estimate stands from its limit: all as shares of their limits, so that joules and kilometres
 * stand in one picture; the bar ends at the one-sided bounds, an arrow where there is none, and the end that decides is
 * drawn thick. Criteria without one positive limit and an estimate are not drawn.
 */
export function criteriaFigure(criteria: readonly JudgedCriterion[], id: string): Figure | null {
  const rows = criteria.flatMap(rowOf);
  if (rows.length === 0) return null;
  const height = 84 + rows.length * ROW;
  const plot: Plot = { left: LEFT, right: WIDTH - 120, top: 26, bottom: height - 50 };
  const ends = rows.flatMap(({ estimate, lower, upper }) => [
    estimate,
    lower ?? estimate,
    upper ?? estimate,
    1,
  ]);
  const x = horizontal(
    plot,
    100 * Math.max(0, Math.min(...ends)),
    100 * Math.min(4, Math.max(...ends)),
    0.08,
  );
  return {
    id,
    title: 'Distance to the limits',
    alternative: rows.map(sentenceOf).join(' '),
    width: WIDTH,
    height,
    body: together(
      axisBelow(plot, x, 'share of the limit (%)'),
      element('path', {
        d: `M${round(x(100))} ${plot.top - 6}V${plot.bottom}`,
        stroke: INK.limit,
        'stroke-width': 1.5,
        'stroke-dasharray': '5 3',
      }),
      label(x(100), plot.top - 12, 'limit', { anchor: 'middle', fill: INK.limit }),
      ...rows.map((row, i) => drawn(row, x, plot, plot.top + ROW * (i + 0.5))),
    ),
  };
}

function drawn({ criterion, estimate, lower, upper }: Row, x: Scale, plot: Plot, y: number): Markup {
  const [least, most] = x.domain() as [number, number];
  const inside = (share: number) => Math.min(most, Math.max(least, 100 * share));
  const from = lower === null ? least : inside(lower);
  const to = upper === null ? most : inside(upper);
  const isOpenBelow = lower === null || 100 * lower < least;
  const isOpenAbove = upper === null || 100 * upper > most;
  const end = (share: number, open: boolean, direction: -1 | 1): Markup => {
    const at = round(x(share));
    const d = open
      ? `M${at - direction * 7} ${y - 5}L${at} ${y}L${at - direction * 7} ${y + 5}`
      : `M${at} ${y - 6}v12`;
    return element('path', { d, stroke: INK.fit, 'stroke-width': 2.5, fill: 'none' });
  };
  return together(
    label(plot.left - 12, y + 4, criterion.id, { anchor: 'end', most: 26 }),
    element('path', { d: `M${round(x(from))} ${y}H${round(x(to))}`, stroke: INK.fit, 'stroke-width': 2 }),
    end(from, isOpenBelow, -1),
    end(to, isOpenAbove, 1),
    element('circle', { cx: x(inside(estimate)), cy: y, r: 4.5, fill: INK.fit }),
    label(plot.right + 14, y + 4, verdictWord(criterion.verdict), { weight: 600 }),
  );
}

function rowOf(criterion: JudgedCriterion): Row[] {
  const limit = criterion.limit.atLeast ?? criterion.limit.atMost ?? null;
  const { estimate, bounds } = criterion;
  if (limit === null || limit <= 0 || estimate === null) return [];
  const share = (value: number | null) => (value === null ? null : value / limit);
  return [
    { criterion, limit, estimate: estimate / limit, lower: share(bounds.lower), upper: share(bounds.upper) },
  ];
}

function sentenceOf({ criterion, estimate, limit }: Row): string {
  const word = criterion.limit.atLeast === undefined ? 'at most' : 'at least';
  const asked = `${word} ${written(limit, criterion.limit.unit)}`;
  return `${criterion.id}: ${(100 * estimate).toFixed(0)} % of the limit, ${asked}; ${verdictWord(criterion.verdict)}.`;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
