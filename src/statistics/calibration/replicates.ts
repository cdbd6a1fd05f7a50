import { prepareProfile } from '../likelihood/constrained.ts';
import type { Sample } from '../likelihood/observation.ts';
import { randomStream } from '../random/random-stream.ts';
import { bestLine } from './best-line.ts';
import { type Cells, cellsOf, logChances, visitCells } from './cells.ts';
import { correlatedHits } from './correlated-hits.ts';
import { drawing, type Strength } from './draw.ts';
import { type Experiment, emptyTrials } from './experiment.ts';

/**
 * Simulated tests of one experiment, drawn at several strengths and weighted so as to stand for any strength near them:
 * an outcome's chance enters the chance of a whole test as a factor, whatever the rule does with it, so that the ratio
 * of two likelihoods of a test is the ratio of its chances (importance sampling; the mixture of all strengths that were
 * drawn from is the denominator, the balance heuristic of Veach and Guibas 1995, SIGGRAPH '95, 419–428).
 */
export interface Replicates {
  /** Number of tests so far; the arrays are longer. */
  size: number;
  readonly strengths: Strength[];
  readonly cells: Cells;
  /** Range of the cells that occur. */
  first: number;
  last: number;
  /** Merged observations of test t: entries start[t] to start[t + 1] of `cell` and `count`. */
  readonly start: Int32Array;
  readonly cell: Int32Array;
  readonly count: Float64Array;
  /** Suprema of the log-likelihoods over all laws, and where they are reached, as BestLine. */
  readonly supremum: Float64Array;
  readonly location: Float64Array;
  readonly scale: Float64Array;
  readonly turn: Float64Array;
  /** Draws `each` more tests at a strength; at most as often as was said. */
  add(strength: Strength): void;
  /** Writes the weights of the tests for a strength; they sum to about `size`. */
  weigh(strength: Strength, into: Float64Array): void;
}

/**
 * @param each tests at each strength
 * @param most strengths at most
 */
export function replicates(experiment: Experiment, each: number, most: number, seed: number): Replicates {
  const { law, reading, share, mostDrops, mostSpecimens } = experiment;
  const cells = cellsOf(experiment);
  const kinds = cells.lower.length;
  const tests = each * most;
  const trials = emptyTrials(mostDrops);
  const effects = new Float64Array(mostSpecimens);
  const tally = new Int32Array(kinds);
  const sample = emptySample(kinds);
  const row = new Float64Array(kinds);
  const density = new Float64Array(tests);
  const mixture = new Float64Array(tests).fill(-Infinity);
  /** Tests and strengths that the mixture stands for: it is found when first asked for. */
  let mixed = 0;
  let mixedStrengths = 0;
  const hits = reading === 'hits' && share > 0 ? correlatedHits(experiment, tests) : null;
  const drawn: Replicates = {
    size: 0,
    strengths: [],
    cells,
    first: kinds,
    last: 0,
    start: new Int32Array(tests + 1),
    cell: new Int32Array(tests * Math.min(reading === 'hits' ? mostDrops : mostSpecimens, kinds)),
    count: new Float64Array(tests * Math.min(reading === 'hits' ? mostDrops : mostSpecimens, kinds)),
    supremum: new Float64Array(tests),
    location: new Float64Array(tests),
    scale: new Float64Array(tests),
    turn: new Float64Array(tests),
    add(strength) {
      const draw = drawing(experiment, strength);
      drawn.strengths.push(strength);
      for (let i = 0; i < each; i++) {
        draw(randomStream(seed, drawn.size), trials, effects);
        hits?.keep(drawn.size, trials, effects);
        keep();
      }
    },
    weigh(strength, into) {
      if (mixed < drawn.size) mix();
      logDensities(strength, 0, into);
      const count = drawn.strengths.length;
      for (let t = 0; t < drawn.size; t++) into[t] = count * Math.exp(into[t]! - mixture[t]!);
    },
  };
  return drawn;

  /** Brings the log-chances of all tests under the mixture of the strengths, times their number, up to date. */
  function mix(): void {
    drawn.strengths.forEach((strength, k) => {
      // Tests that were there before know this strength already.
      const from = k < mixedStrengths ? mixed : 0;
      logDensities(strength, from, density);
      for (let t = from; t < drawn.size; t++) mixture[t] = logSum(mixture[t]!, density[t]!);
    });
    mixed = drawn.size;
    mixedStrengths = drawn.strengths.length;
  }

  /** Takes the test in `trials` in as the next one. */
  function keep(): void {
    const t = drawn.size++;
    let low = kinds;
    let high = 0;
    visitCells(trials, reading, (cell) => {
      tally[cell]!++;
      if (cell < low) low = cell;
      if (cell > high) high = cell;
    });
    let entry = drawn.start[t]!;
    sample.size = 0;
    for (let cell = low; cell <= high; cell++) {
      const count = tally[cell]!;
      if (count === 0) continue;
      tally[cell] = 0;
      drawn.cell[entry] = cell;
      drawn.count[entry++] = count;
      sample.lower[sample.size] = cells.lower[cell]!;
      sample.upper[sample.size] = cells.upper[cell]!;
      sample.count[sample.size++] = count;
    }
    drawn.start[t + 1] = entry;
    drawn.first = Math.min(drawn.first, low);
    drawn.last = Math.max(drawn.last, high);
    const basis = prepareProfile(sample, law);
    const line = bestLine(basis);
    drawn.supremum[t] = basis.supremum;
    drawn.location[t] = line.location;
    drawn.scale[t] = line.scale;
    drawn.turn[t] = line.turn;
  }

  /** Log-chances of the tests from `first` on at a strength, up to a term of the test alone. */
  function logDensities(strength: Strength, first: number, into: Float64Array): void {
    const { size, start, cell, count } = drawn;
    if (hits !== null) {
      const { location, scale } = strength;
      const logChance = (level: number) => law.logCdf((experiment.levels[level]! - location) / scale);
      hits.logDensities(first, size, logChance, into);
      return;
    }
    logChances(law, cells, strength, drawn.first, drawn.last, row);
    for (let t = first; t < size; t++) {
      let sum = 0;
      for (let e = start[t]!; e < start[t + 1]!; e++) sum += count[e]! * row[cell[e]!]!;
      into[t] = sum;
    }
  }
}

function emptySample(most: number): Sample {
  return {
    scale: 'identity',
    size: 0,
    lower: new Float64Array(most),
    upper: new Float64Array(most),
    count: new Float64Array(most),
    logJacobian: 0,
  };
}

function logSum(a: number, b: number): number {
  const high = Math.max(a, b);
  return high === -Infinity ? high : high + Math.log1p(Math.exp(Math.min(a, b) - high));
}
