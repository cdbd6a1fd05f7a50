import type { Standing } from '../text/levels.ts';
import type { Language } from '../words/language.ts';
import { axisBelow, axisLeft, horizontal, line, type Plot, vertical } from './axes.ts';
import { mark } from './drops.ts';
import { apartBelow, type Figure, FONT_SIZE, INK, label, WIDTH } from './figure.ts';
import { ends, shown } from './numbers.ts';
import { element, type Markup, rounded, together } from './svg.ts';

const HEIGHT = 320;
const PLOT: Plot = { left: 74, right: WIDTH - 110, top: 20, bottom: HEIGHT - 50 };
/** More names than this beside their points cannot be kept apart. */
const MOST_NAMES = 14;

/** A tyre at the energy of a drop, or a construction at its median with its interval. */
export interface MassPoint {
  readonly name: string;
  /** g. */
  readonly mass: number;
  /** J, or km of a life. */
  readonly energy: number;
  readonly lower?: number | null | undefined;
  readonly upper?: number | null | undefined;
  /** Set for single drops: they get the marks of drops, and no names. */
  readonly standing?: Standing | undefined;
}

/** Energy, or life, against the mass of the tyre: what more grams buy. */
export function massEnergyFigure(
  given: readonly MassPoint[],
  title: string,
  id: string,
  language: Language,
  unit: 'J' | 'km' = 'J',
): Figure | null {
  const { charts } = language.words;
  const points = given.filter(({ mass, energy }) => Number.isFinite(mass) && Number.isFinite(energy));
  if (points.length < 2) return null;
  const masses = ends(points.map(({ mass }) => mass));
  const energies = ends(
    points.flatMap(({ energy, lower, upper }) => [energy, lower ?? energy, upper ?? energy]),
  );
  const x = horizontal(PLOT, masses.least, masses.most, 0.06);
  const y = vertical(PLOT, energies.least, energies.most, 0.06);
  const named = points.filter(({ standing }) => standing === undefined);
  const sayMass = (value: number) => shown(language, value, masses.most - masses.least);
  const sayEnergy = (value: number) => shown(language, value, energies.most - energies.least);
  return {
    id,
    title: unit === 'J' ? charts.titles.massEnergy : charts.titles.massLife,
    alternative: charts.tell.massEnergy({
      points: points.length,
      lightest: sayMass(masses.least),
      heaviest: sayMass(masses.most),
      lowest: sayEnergy(energies.least),
      highest: sayEnergy(energies.most),
      unit,
    }),
    width: WIDTH,
    height: HEIGHT,
    body: together(
      axisLeft(PLOT, y, title, language),
      axisBelow(PLOT, x, charts.tyreMass, language),
      ...points.map((point) => drawn(point, x(point.mass), y(point.energy), y)),
      names(named.slice(0, MOST_NAMES), x, y),
      ...(named.length > MOST_NAMES
        ? [label(PLOT.left + 8, PLOT.top + 12, charts.more(named.length - MOST_NAMES), { fill: INK.muted })]
        : []),
      legend(points, language),
    ),
  };
}

function drawn(point: MassPoint, x: number, y: number, scale: (value: number) => number): Markup {
  if (point.standing !== undefined) return mark(point.standing, x, y, 4);
  const end = (value: number | null | undefined, direction: -1 | 1): Markup => {
    const at = value === null || value === undefined ? y + direction * -26 : scale(value);
    const open = value === null || value === undefined;
    return together(
      line(`M${rounded(x)} ${rounded(y)}V${rounded(at)}`, INK.fit, 1.5),
      open
        ? line(
            `M${rounded(x - 4)} ${rounded(at + direction * 6)}L${rounded(x)} ${rounded(at)}L${rounded(x + 4)} ${rounded(at + direction * 6)}`,
            INK.fit,
            1.5,
          )
        : line(`M${rounded(x - 4)} ${rounded(at)}h8`, INK.fit, 1.5),
    );
  };
  return together(
    end(point.lower, -1),
    end(point.upper, 1),
    element('circle', { cx: x, cy: y, r: 5, fill: INK.fit }),
  );
}

/** Names in a column right of the plot, each tied to its point. */
function names(points: readonly MassPoint[], x: (v: number) => number, y: (v: number) => number): Markup {
  const places = apartBelow(
    points.map(({ energy }) => y(energy)),
    FONT_SIZE + 3,
    PLOT.top + 8,
    PLOT.bottom - 4,
  );
  return together(
    ...points.map(({ name, mass, energy }, i) =>
      together(
        line(
          `M${rounded(x(mass) + 6)} ${rounded(y(energy))}L${rounded(PLOT.right + 4)} ${rounded(places[i]!)}`,
          INK.muted,
          0.75,
          '1 3',
        ),
        label(PLOT.right + 8, places[i]! + 4, name, { room: WIDTH - PLOT.right - 10 }),
      ),
    ),
  );
}

function legend(points: readonly MassPoint[], { words: { charts } }: Language): Markup {
  let top = PLOT.top + 14;
  const pieces: Markup[] = [];
  for (const standing of ['failed', 'survived', 'leftOut'] as const) {
    if (!points.some((point) => point.standing === standing)) continue;
    pieces.push(
      mark(standing, PLOT.right + 12, top - 4, 4),
      label(PLOT.right + 22, top, charts[standing], { room: WIDTH - PLOT.right - 24 }),
    );
    top += 20;
  }
  return together(...pieces);
}
