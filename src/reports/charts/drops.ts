import { counted } from '../../quantity/format.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import { type PathDrop, standingOf } from '../text/levels.ts';
import { axisBelow, axisLeft, axisRight, horizontal, type Plot, vertical } from './axes.ts';
import { type Figure, INK, label } from './figure.ts';
import { element, type Markup, together } from './svg.ts';

const WIDTH = 720;
const HEIGHT = 330;
const PLOT: Plot = { left: 78, right: WIDTH - 74, top: 34, bottom: HEIGHT - 58 };
/** More drops than this are dots too small to tell apart; the levels are then summed up in words and in the table. */
const MOST = 400;

/**
 * Level by drop: each drop at its height in the order in which it was made, filled where the tyre failed, hollow where
 * it survived, a cross where the drop was left out; the line joins the drops that count, so that reversals show.
 */
export function dropsFigure({ path, protocol }: ImpactResult, id: string): Figure | null {
  const drops = path.slice(0, MOST);
  if (drops.length === 0) return null;
  const heights = drops.map(({ height }) => height);
  const x = horizontal(PLOT, 1, drops.length, 0.02);
  const y = vertical(PLOT, Math.min(...heights), Math.max(...heights), 0.08);
  const radius = drops.length <= 60 ? 5 : drops.length <= 150 ? 3.5 : 2;
  const at = drops.map((drop, i) => ({ drop, x: x(i + 1), y: y(drop.height) }));
  const used = at.filter(({ drop }) => drop.used);
  const joins = protocol.method === 'up-and-down' ? pathThrough(used) : null;
  const perMillimetre = energyPerMillimetre(drops);
  const energy =
    perMillimetre === null ? null : y.copy().domain(y.domain().map((height) => height * perMillimetre));
  return {
    id,
    title: 'Drops, level by level',
    alternative: alternativeOf(path),
    width: WIDTH,
    height: HEIGHT,
    body: together(
      axisLeft(PLOT, y, 'height above contact (mm)'),
      axisBelow(PLOT, x, 'drop, in order'),
      ...(energy === null ? [] : [axisRight(PLOT, energy, 'energy (J)')]),
      ...(joins === null
        ? []
        : [element('path', { d: joins, stroke: INK.rule, 'stroke-width': 1.5, fill: 'none' })]),
      ...at.map((place) => mark(place.drop, place.x, place.y, radius)),
      legend(path),
    ),
  };
}

function mark(drop: PathDrop, x: number, y: number, radius: number): Markup {
  const standing = standingOf(drop);
  if (standing === 'leftOut') {
    const d = `M${x - radius} ${y - radius}l${2 * radius} ${2 * radius}m0 ${-2 * radius}l${-2 * radius} ${2 * radius}`;
    return element('path', {
      d: d.replace(/\d+\.\d+/g, (n) => Number(n).toFixed(2)),
      stroke: INK.muted,
      'stroke-width': 1.5,
      fill: 'none',
    });
  }
  const fill = standing === 'failed' ? INK.mark : '#ffffff';
  return element('circle', { cx: x, cy: y, r: radius, fill, stroke: INK.mark, 'stroke-width': 1.5 });
}

/** The marks with their words, in one line above the plot. */
function legend(drops: readonly PathDrop[]): Markup {
  const entries: [PathDrop, string][] = [];
  const words = { failed: 'failed', survived: 'survived', leftOut: 'left out' } as const;
  for (const standing of ['failed', 'survived', 'leftOut'] as const) {
    const drop = drops.find((candidate) => standingOf(candidate) === standing);
    if (drop !== undefined) entries.push([drop, words[standing]]);
  }
  return together(
    ...entries.map(([drop, word], i) =>
      together(mark(drop, PLOT.left + 8 + i * 96, 16, 5), label(PLOT.left + 20 + i * 96, 20, word)),
    ),
  );
}

function pathThrough(places: readonly { readonly x: number; readonly y: number }[]): string {
  return places.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(2)} ${y.toFixed(2)}`).join('');
}

/** J for a mm where it is one and the same for all drops; null otherwise. */
function energyPerMillimetre(drops: readonly PathDrop[]): number | null {
  const [first] = drops;
  if (first === undefined || first.energy === null || first.height === 0) return null;
  const ratio = first.energy / first.height;
  const same = drops.every(
    ({ energy, height }) => energy !== null && Math.abs(energy / height - ratio) < 1e-9 * ratio,
  );
  return same ? ratio : null;
}

function alternativeOf(path: readonly PathDrop[]): string {
  const count = { failed: 0, survived: 0, leftOut: 0 };
  let [lowest, highest] = [Infinity, -Infinity];
  for (const drop of path) {
    count[standingOf(drop)] += 1;
    lowest = Math.min(lowest, drop.height);
    highest = Math.max(highest, drop.height);
  }
  const out = count.leftOut > 0 ? `, ${count.leftOut} left out` : '';
  const shown = path.length > MOST ? ` The first ${MOST} are drawn.` : '';
  return `${counted(path.length, 'drop')} between ${Math.round(lowest)} and ${Math.round(highest)} mm: ${count.failed} failed, ${count.survived} survived${out}.${shown}`;
}
