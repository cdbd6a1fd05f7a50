import type { JudgedCriterion } from '../../result/criterion.ts';
import { stated } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';
import { axisBelow, dashed, horizontal, horizontalEnd, line, type Plot, type Scale } from './axes.ts';
import { type Figure, INK, label, WIDTH } from './figure.ts';
import { ends } from './numbers.ts';
import { element, type Markup, rounded, together } from './svg.ts';

const ROW = 30;
const MOST = 24;
/** Shares of a limit beyond this are drawn at the edge, as an arrow: what is near the limits must not be squeezed. */
const FARTHEST = 2.5;

interface Row {
  readonly criterion: JudgedCriterion;
  /** Shares of the limit; null where unbounded. */
  readonly estimate: number;
  readonly lower: number | null;
  readonly upper: number | null;
}

/**
 * How far each criterion's estimate stands from its limit: all as shares of their limits, so that joules and kilometres
 * stand in one picture; the bar ends at the one-sided bounds, an arrow where there is none, and the end that decides is
 * drawn thick. Criteria without one positive limit and an estimate are not drawn.
 */
export function criteriaFigure(
  criteria: readonly JudgedCriterion[],
  id: string,
  language: Language,
): Figure | null {
  const { charts } = language.words;
  const all = criteria.flatMap(rowOf);
  const rows = all.slice(0, MOST);
  if (rows.length === 0) return null;
  const rest = all.length - rows.length;
  const height = 74 + rows.length * ROW + (rest > 0 ? 20 : 0);
  const plot: Plot = { left: 120, right: WIDTH - 122, top: 24, bottom: height - 50 };
  const reach = ends(
    rows.flatMap(({ estimate, lower, upper }) => [estimate, lower ?? estimate, upper ?? estimate, 1]),
  );
  const x = horizontal(
    plot,
    100 * Math.max(0, reach.least),
    100 * Math.max(1, Math.min(FARTHEST, reach.most)),
    0.08,
  );
  return {
    id,
    title: charts.titles.criteria,
    alternative: rows.map((row) => sentenceOf(row, language)).join(' '),
    width: WIDTH,
    height,
    body: together(
      axisBelow(plot, x, charts.shareOfLimit, language, { count: 5 }),
      dashed(x(100), plot.top - 4, plot.bottom, INK.limit),
      label(x(100), plot.top - 10, charts.limit, { anchor: 'middle', fill: INK.limit, weight: 600 }),
      ...rows.map((row, i) => drawn(row, x, plot, plot.top + ROW * (i + 0.5), language)),
      ...(rest > 0 ? [label(plot.left, plot.bottom - 6, charts.more(rest), { fill: INK.muted })] : []),
    ),
  };
}

function drawn(row: Row, x: Scale, plot: Plot, y: number, { words }: Language): Markup {
  const { criterion, estimate, lower, upper } = row;
  const [least, most] = x.domain() as [number, number];
  const inside = (share: number) => x(Math.min(most, Math.max(least, 100 * share)));
  const from = lower === null ? plot.left : inside(lower);
  const to = upper === null ? plot.right : inside(upper);
  const isOpenBelow = lower === null || 100 * lower < least;
  const isOpenAbove = upper === null || 100 * upper > most;
  const decidesBelow = criterion.limit.atLeast !== undefined;
  const center = inside(estimate);
  const beyond = 100 * estimate > most || 100 * estimate < least;
  return together(
    label(plot.left - 12, y + 4, criterion.id, { anchor: 'end', room: plot.left - 16 }),
    line(`M${rounded(from)} ${rounded(y)}H${rounded(to)}`, INK.fit, 2),
    horizontalEnd(from, y, isOpenBelow, -1, decidesBelow ? 4 : 2),
    horizontalEnd(to, y, isOpenAbove, 1, decidesBelow ? 2 : 4),
    ...(beyond ? [] : [element('circle', { cx: center, cy: y, r: 4.5, fill: INK.fit })]),
    label(plot.right + 12, y + 4, words.verdict[criterion.verdict], {
      weight: 600,
      room: WIDTH - plot.right - 14,
    }),
  );
}

function rowOf(criterion: JudgedCriterion): Row[] {
  const limit = criterion.limit.atLeast ?? criterion.limit.atMost ?? null;
  const { estimate, bounds } = criterion;
  if (limit === null || limit <= 0 || estimate === null) return [];
  const share = (value: number | null) => (value === null ? null : value / limit);
  const row = {
    criterion,
    estimate: estimate / limit,
    lower: share(bounds.lower),
    upper: share(bounds.upper),
  };
  return Number.isFinite(row.estimate) ? [row] : [];
}

function sentenceOf({ criterion, estimate }: Row, language: Language): string {
  const { words } = language;
  const { atLeast, atMost, unit } = criterion.limit;
  const limit = stated(language, (atLeast ?? atMost)!, unit);
  const percent = 100 * estimate < 1e4 ? `${(100 * estimate).toFixed(0)} %` : `> 10000 %`;
  return words.charts.tell.criterion({
    id: criterion.id.slice(0, 40),
    share: percent,
    asked: atLeast === undefined ? words.criteria.atMost(limit) : words.criteria.atLeast(limit),
    verdict: words.verdict[criterion.verdict],
  });
}
