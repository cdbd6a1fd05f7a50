import type { ImpactResult } from '../../result/analysis.ts';
import { grouped } from '../grouped.ts';
import { type PathDrop, type Standing, standingOf } from '../text/levels.ts';
import type { Language } from '../words/language.ts';
import { axisBelow, axisLeft, axisRight, horizontal, line, type Plot, vertical } from './axes.ts';
import { type Figure, INK, label, labelWidth, WIDTH } from './figure.ts';
import { ends, shown } from './numbers.ts';
import { element, type Markup, rounded, together } from './svg.ts';

const HEIGHT = 320;
const PLOT: Plot = { left: 74, right: WIDTH - 74, top: 34, bottom: HEIGHT - 50 };
/** More drops than this are dots too small to tell apart; the text alternative says that the rest is not drawn. */
const MOST = 300;

interface Place {
  readonly drop: PathDrop;
  readonly x: number;
  readonly y: number;
}

/**
 * Level by drop: each drop at its height, or its mass where that was varied, in the order in which it was made, filled where the tyre failed, hollow where
 * it survived, a cross where the drop was left out; the line joins the drops that count, and a ring marks those after
 * which an up-and-down series turns back.
 */
export function dropsFigure(
  { path, protocol }: Pick<ImpactResult, 'path' | 'protocol'>,
  id: string,
  language: Language,
): Figure | null {
  const byMass = path.some(({ mass }) => mass !== undefined);
  const levelOf = (drop: PathDrop) => (byMass ? (drop.mass ?? Number.NaN) : drop.height);
  const drops = path.slice(0, MOST).filter((drop) => Number.isFinite(levelOf(drop)));
  if (drops.length === 0) return null;
  const { charts } = language.words;
  const { least, most } = ends(drops.map(levelOf));
  const x = horizontal(PLOT, 1, drops.length, 0.02);
  const y = vertical(PLOT, least, most, 0.08);
  const radius = drops.length <= 60 ? 4.5 : drops.length <= 150 ? 3 : 1.8;
  const at = drops.map((drop, i) => ({ drop, x: x(i + 1), y: y(levelOf(drop)) }));
  const isStaircase = protocol.method.endsWith('up-and-down');
  const series = grouped(
    at.filter(({ drop }) => drop.used),
    ({ drop }) => drop.series,
  ).map(([, places]) => places);
  const turns = isStaircase ? series.flatMap(reversals) : [];
  const perLevel = energyPerLevel(drops, levelOf);
  const energy = perLevel === null ? null : y.copy().domain(y.domain().map((level) => level * perLevel));
  return {
    id,
    title: charts.titles.drops,
    alternative: charts.tell.drops({
      ...tallied(path),
      drops: language.words.drops(path.length),
      lowest: shown(language, least, most - least),
      highest: shown(language, most, most - least),
      unit: byMass ? 'kg' : 'mm',
      reversals: isStaircase ? turns.length : null,
      shown: drops.length,
      all: path.length,
    }),
    width: WIDTH,
    height: HEIGHT,
    body: together(
      axisLeft(PLOT, y, byMass ? charts.fallingMass : charts.height, language),
      axisBelow(PLOT, x, charts.dropInOrder, language, {
        ticks: x.ticks(8).filter((tick) => Number.isInteger(tick) && tick >= 1),
      }),
      ...(energy === null ? [] : [axisRight(PLOT, energy, charts.energy, language)]),
      ...(isStaircase ? series.map((places) => line(pathThrough(places), INK.muted, 1)) : []),
      ...turns.map((place) => ring(place.x, place.y, radius)),
      ...at.map((place) => mark(standingOf(place.drop), place.x, place.y, radius)),
      legend(at, turns.length > 0, language),
    ),
  };
}

/** The mark of a drop; the same in every picture. */
export function mark(standing: Standing, x: number, y: number, radius: number): Markup {
  if (standing === 'leftOut') {
    const d = `M${rounded(x - radius)} ${rounded(y - radius)}L${rounded(x + radius)} ${rounded(y + radius)}M${rounded(x - radius)} ${rounded(y + radius)}L${rounded(x + radius)} ${rounded(y - radius)}`;
    return line(d, INK.muted, 1.5);
  }
  const fill = standing === 'failed' ? INK.mark : '#ffffff';
  return element('circle', { cx: x, cy: y, r: radius, fill, stroke: INK.mark, 'stroke-width': 1.5 });
}

function ring(x: number, y: number, radius: number): Markup {
  return element('circle', { cx: x, cy: y, r: radius + 3, fill: 'none', stroke: INK.muted });
}

/** Drops whose outcome differs from that of the drop before: there the series turns. */
function reversals(places: readonly Place[]): Place[] {
  return places.filter(({ drop }, i) => i > 0 && drop.outcome !== places[i - 1]!.drop.outcome);
}

/** The marks with their words, in one line above the plot. */
function legend(at: readonly Place[], turns: boolean, { words: { charts } }: Language): Markup {
  let left = PLOT.left + 8;
  const pieces: Markup[] = [];
  const add = (drawn: (x: number) => Markup, word: string) => {
    pieces.push(drawn(left), label(left + 12, 20, word));
    left += labelWidth(word) + 34;
  };
  for (const standing of ['failed', 'survived', 'leftOut'] as const) {
    if (at.some(({ drop }) => standingOf(drop) === standing))
      add((x) => mark(standing, x, 16, 4.5), charts[standing]);
  }
  if (turns) add((x) => together(ring(x, 16, 3.5), mark('survived', x, 16, 3)), charts.reversal);
  return together(...pieces);
}

function pathThrough(places: readonly Place[]): string {
  return places.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${rounded(x)} ${rounded(y)}`).join('');
}

/** J for a mm, or a kg, where it is one and the same for all drops; null otherwise. */
function energyPerLevel(drops: readonly PathDrop[], levelOf: (drop: PathDrop) => number): number | null {
  const [first] = drops;
  if (first === undefined || first.energy === null || levelOf(first) === 0) return null;
  const ratio = first.energy / levelOf(first);
  const same = drops.every(
    (drop) =>
      drop.energy !== null && Math.abs(drop.energy - ratio * levelOf(drop)) <= 1e-9 * Math.abs(drop.energy),
  );
  return same && ratio > 0 ? ratio : null;
}

function tallied(path: readonly PathDrop[]): Readonly<Record<Standing, number>> {
  const count = { failed: 0, survived: 0, leftOut: 0 };
  for (const drop of path) count[standingOf(drop)] += 1;
  return count;
}
