import type { StandardLaw } from '../laws/standard-law.ts';
import { normalCritical } from '../likelihood/critical.ts';
import { guardedLevel, restsOnShare } from './assumed-share.ts';
import type { CriticalValues } from './critical-values.ts';
import type { Strength } from './draw.ts';
import type { Experiment } from './experiment.ts';
import { replicates } from './replicates.ts';
import { signedRoots } from './signed-roots.ts';
import { weightedQuantile } from './weighted-quantile.ts';

/** How much is simulated, from what seed: the same settings give the same critical values every time. */
export interface SimulationSettings {
  readonly seed: number;
  /** Tests at each strength that is drawn from. */
  readonly each: number;
}

/** Of the tests of one strength: with fewer effective ones, more are simulated at the strength asked for. */
const LEAST_EFFECTIVE = 0.8;
const MOST_STRENGTHS = 12;

/**
 * Critical values by simulating the test's own rule at the strength that is asked for. Tests drawn at other strengths
 * are used again, with weights, as long as they say enough of it. Where a share between specimens is assumed they are not
 * below those of χ²: a smaller share than the assumed one needs them for the lower tail (calibration.md).
 *
 * @param anchors strengths near which questions are to be expected
 */
export function simulatedCriticals(
  experiment: Experiment,
  law: StandardLaw,
  settings: SimulationSettings,
  anchors: readonly Strength[] = [],
): CriticalValues {
  const { each, seed } = settings;
  const drawn = replicates(experiment, each, MOST_STRENGTHS, seed);
  const weights = new Float64Array(each * MOST_STRENGTHS);
  const roots = new Float64Array(weights.length);
  return ({ p, y, strength, level, tail }) => {
    if (drawn.size === 0) for (const anchor of anchors) drawn.add(anchor);
    if (drawn.size === 0) drawn.add(strength);
    drawn.weigh(strength, weights);
    const isThin = effective(weights, drawn.size) < LEAST_EFFECTIVE * each;
    if (isThin && drawn.strengths.length < MOST_STRENGTHS) {
      drawn.add(strength);
      drawn.weigh(strength, weights);
    }
    signedRoots(drawn, law, y, p, strength.scale, roots);
    for (let t = 0; t < drawn.size; t++) {
      const root = roots[t]!;
      roots[t] = tail === 'both' ? Math.abs(root) : tail === 'above' ? root : -root;
    }
    const all = roots.subarray(0, drawn.size);
    if (!restsOnShare(experiment)) return weightedQuantile(all, weights, level);
    const root = weightedQuantile(all, weights, guardedLevel(level));
    return Math.max(root, normalCritical(level, tail === 'both' ? 2 : 1));
  };
}

/** How many equally weighted draws would say as much (Kish 1965): (Σw)²/Σw². */
function effective(weights: Float64Array, size: number): number {
  let sum = 0;
  let squares = 0;
  for (let t = 0; t < size; t++) {
    sum += weights[t]!;
    squares += weights[t]! * weights[t]!;
  }
  return squares > 0 ? (sum * sum) / squares : 0;
}
