import { normalCritical } from '../likelihood/critical.ts';
import { randomStream } from '../random/random-stream.ts';
import { guardedLevel, restsOnShare } from './assumed-share.ts';
import type { CriticalValues, Tail } from './critical-values.ts';
import type { Experiment } from './experiment.ts';
import { drawn } from './replicates.ts';
import { signedRoots } from './signed-roots.ts';
import type { SimulationSettings } from './simulated-criticals.ts';

/** Ratio of neighbouring scales at which tests are simulated; between them critical values are read off. */
const RATIO = 1.3;
/** Values of a quantile a step apart into so many parts, where any value may be asked for. */
const PARTS = 8;

/** Sorted roots of one value and scale. */
type Sorted = Readonly<Record<Tail, Float64Array>>;

/**
 * Critical values of one design for thousands of tests: at one value of a quantile they depend on the scale alone, so
 * that a grid of scales is simulated, each scale when it is first asked for, and read between. What is drawn for a scale
 * depends on the seed and the scale only: whoever asks in whatever order finds the same.
 *
 * @param placing `each value`: for a few values, such as limits; `grid`: for any value, read between eighths of a step
 */
export function designedCriticals(
  experiment: Experiment,
  { seed, each }: SimulationSettings,
  placing: 'each value' | 'grid',
): CriticalValues {
  const drawing = drawn(experiment);
  const findRoots = signedRoots(drawing, experiment.step);
  const spacing = experiment.step / PARTS;
  const known = new Map<string, Sorted>();

  function sortedAt(p: number, y: number, rung: number): Sorted {
    const key = `${p} ${y} ${rung}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const scale = experiment.step * RATIO ** rung;
    const location = y - experiment.law.quantile(p) * scale;
    const tests = drawing.at({ location, scale }, each, randomStream(seed, MIDDLE + rung));
    const above = new Float64Array(each);
    // A hair off the grid, which levels may lie on: tests that have that level alone lie neither above nor below.
    findRoots(tests, placing === 'grid' ? y + HAIR * spacing : y, p, above);
    const found = {
      both: above.map(Math.abs).sort(),
      below: above.map((root) => -root).sort(),
      above: above.sort(),
    };
    known.set(key, found);
    return found;
  }

  const isGuarded = restsOnShare(experiment);
  return ({ p, y, strength, level, tail }) => {
    const rank = Math.ceil((isGuarded ? guardedLevel(level) : level) * (each + 1)) - 1;
    const place = Math.log(strength.scale / experiment.step) / Math.log(RATIO);
    const rung = Math.floor(place);
    const at = (value: number) => {
      const low = sortedAt(p, value, rung)[tail][rank] ?? Infinity;
      const high = sortedAt(p, value, rung + 1)[tail][rank] ?? Infinity;
      return low + (place - rung) * (high - low);
    };
    const root = placing === 'each value' ? at(y) : between(y, at);
    return isGuarded ? Math.max(root, normalCritical(level, tail === 'both' ? 2 : 1)) : root;
  };

  function between(y: number, at: (value: number) => number): number {
    const origin = experiment.levels[0]!;
    const column = (y - origin) / spacing;
    const left = Math.floor(column);
    const weight = column - left;
    return (1 - weight) * at(origin + left * spacing) + weight * at(origin + (left + 1) * spacing);
  }
}

const HAIR = 1e-6;
/** Streams are numbered from 0; scales run from far below a step to far above. */
const MIDDLE = 1000;
