import { normalCritical } from '../likelihood/critical.ts';
import { randomStream } from '../random/random-stream.ts';
import { guardedLevel, restsOnShare } from './assumed-share.ts';
import type { CriticalQuestion, CriticalValues, Tail } from './critical-values.ts';
import type { Strength } from './draw.ts';
import type { Experiment } from './experiment.ts';
import { drawn, type Replicates } from './replicates.ts';
import { signedRoots } from './signed-roots.ts';
import { weightedQuantile } from './weighted-quantile.ts';

/** How much is simulated, from what seed: the same settings give the same critical values every time. */
export interface SimulationSettings {
  readonly seed: number;
  /** Tests at each strength that is drawn from. */
  readonly each: number;
}

/** Of the tests of one strength: with fewer effective ones, more are simulated at the strength asked for. */
const LEAST_EFFECTIVE = 0.5;
/** Strengths drawn from whose tests stand for another one: more say little more. */
const NEAREST = 2;

/** Signed roots of tests with their weights: what all critical values at one value of a quantile are read from. */
interface Distribution {
  readonly above: Float64Array;
  readonly below: Float64Array;
  readonly both: Float64Array;
  readonly weights: Float64Array;
  /** What was read from it, by level and tail. */
  readonly criticals: Map<string, number>;
}

/**
 * Critical values by simulating the test's own rule at the strength that is asked for. Tests drawn at neighbouring
 * strengths are used again, weighted by the ratio of their chances, as long as they say enough of it: an outcome's chance
 * enters that of a whole test as a factor, whatever the rule does with it (importance sampling; the mixture of the
 * strengths that were drawn from is the denominator, the balance heuristic of Veach and Guibas 1995, SIGGRAPH '95,
 * 419–428). Hits that share the effect of their specimen are drawn anew each time, since weights would say little.
 *
 * Where a share between specimens is assumed critical values are not below those of χ²: a smaller share than the assumed
 * one needs them for the lower tail (calibration.md).
 */
export function simulatedCriticals(experiment: Experiment, settings: SimulationSettings): CriticalValues {
  const { each, seed } = settings;
  const drawing = drawn(experiment);
  const findRoots = signedRoots(drawing, experiment.step);
  const isWeighted = experiment.reading === 'rises' || experiment.share === 0;
  const groups: Replicates[] = [];
  const known = new Map<string, Distribution>();
  const asked = new Float64Array(each);
  const under = new Float64Array(each);

  function draw(strength: Strength): Replicates {
    const group = drawing.at(strength, each, randomStream(seed, groups.length));
    groups.push(group);
    return group;
  }

  /** Of every test of the groups, one after another: how often it stands for itself at a strength. */
  function weightsAt(strength: Strength, from: readonly Replicates[]): Float64Array {
    const weights = new Float64Array(from.length * each);
    from.forEach((group, g) => {
      const own = weights.subarray(g * each, (g + 1) * each);
      drawing.logChancesAt(strength, group, asked);
      for (const other of from) {
        drawing.logChancesAt(other.strength, group, under);
        for (let t = 0; t < each; t++) own[t]! += Math.exp(under[t]! - asked[t]!);
      }
      for (let t = 0; t < each; t++) own[t] = from.length / own[t]!;
    });
    return weights;
  }

  function distributionAt({ p, y, strength }: CriticalQuestion): Distribution {
    const key = `${p} ${y} ${strength.scale}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    let near = isWeighted ? nearest(groups, strength) : [];
    let weights = weightsAt(strength, near);
    if (effective(weights) < LEAST_EFFECTIVE * each) {
      near = [...near.slice(0, NEAREST - 1), draw(strength)];
      if (!isWeighted) near = near.slice(-1);
      weights = isWeighted ? weightsAt(strength, near) : new Float64Array(each).fill(1);
    }
    const above = new Float64Array(weights.length);
    near.forEach((group, g) => {
      findRoots(group, y, p, above.subarray(g * each, (g + 1) * each));
    });
    const found = {
      above,
      below: above.map((root) => -root),
      both: above.map(Math.abs),
      weights,
      criticals: new Map(),
    };
    known.set(key, found);
    return found;
  }

  function criticalAt({ values, weights }: Asked, level: number, tail: Tail): number {
    if (!restsOnShare(experiment)) return weightedQuantile(values, weights, level);
    const root = weightedQuantile(values, weights, guardedLevel(level));
    return Math.max(root, normalCritical(level, tail === 'both' ? 2 : 1));
  }

  return (question) => {
    const { level, tail } = question;
    const { weights, criticals, ...roots } = distributionAt(question);
    const key = `${level} ${tail}`;
    const critical = criticals.get(key) ?? criticalAt({ values: roots[tail], weights }, level, tail);
    criticals.set(key, critical);
    return critical;
  };
}

interface Asked {
  readonly values: Float64Array;
  readonly weights: Float64Array;
}

/** The groups drawn nearest to a strength, in units of its scale. */
function nearest(groups: readonly Replicates[], { location, scale }: Strength): Replicates[] {
  const distance = ({ strength: one }: Replicates) =>
    ((one.location - location) / scale) ** 2 + Math.log(one.scale / scale) ** 2;
  return [...groups].sort((a, b) => distance(a) - distance(b)).slice(0, NEAREST);
}

/** How many equally weighted draws would say as much (Kish 1965): (Σw)²/Σw². */
function effective(weights: Float64Array): number {
  let sum = 0;
  let squares = 0;
  for (const weight of weights) {
    sum += weight;
    squares += weight * weight;
  }
  return squares > 0 ? (sum * sum) / squares : 0;
}
