import type { Sample } from '../statistics/likelihood/observation.ts';
import { MOST_DROPS, type Trials } from './carry-out.ts';
import type { LevelTable } from './level-table.ts';

/** Turns the drops of a simulated test into what the likelihood reads; the sample is refilled by each call. */
export type Sampling = (trials: Trials, levels: LevelTable) => Sample;

/**
 * Single looks: a failure at y is (−∞, y], a survival (y, ∞); equal ones merged, in rising order, as
 * gatherObservations does with the observations of a log.
 */
export function singleLooks(scale: Sample['scale']): Sampling {
  const sample = emptySample(scale);
  let failures = new Int32Array(64);
  let survivals = new Int32Array(64);
  const used: number[] = [];
  return (trials, levels) => {
    if (failures.length < levels.size) {
      failures = new Int32Array(2 * levels.size);
      survivals = new Int32Array(2 * levels.size);
    }
    used.length = 0;
    for (let i = 0; i < trials.size; i++) {
      const level = trials.level[i]!;
      if (failures[level] === 0 && survivals[level] === 0) used.push(level);
      (trials.failed[i] ? failures : survivals)[level]!++;
    }
    sortBy(used, levels.y);
    let size = 0;
    const add = (lower: number, upper: number, count: number) => {
      if (count === 0) return;
      sample.lower[size] = lower;
      sample.upper[size] = upper;
      sample.count[size++] = count;
    };
    for (const level of used) add(-Infinity, levels.y[level]!, failures[level]!);
    for (const level of used) {
      add(levels.y[level]!, Infinity, survivals[level]!);
      failures[level] = 0;
      survivals[level] = 0;
    }
    sample.size = size;
    return sample;
  };
}

/** Rises: each specimen's strength lies in (last survived, failed], open where it never survived or never failed. */
export function rises(scale: Sample['scale']): Sampling {
  const sample = emptySample(scale);
  return ({ size, specimen, failed, level }, levels) => {
    let specimens = -1;
    for (let i = 0; i < size; i++) {
      if (specimen[i] !== specimens) {
        specimens = specimen[i]!;
        sample.lower[specimens] = -Infinity;
        sample.upper[specimens] = Infinity;
        sample.count[specimens] = 1;
      }
      (failed[i] ? sample.upper : sample.lower)[specimens] = levels.y[level[i]!]!;
    }
    sample.size = specimens + 1;
    return sample;
  };
}

function emptySample(scale: Sample['scale']): Sample {
  const room = () => new Float64Array(MOST_DROPS);
  return { scale, size: 0, lower: room(), upper: room(), count: room(), logJacobian: 0 };
}

/** Levels are few and nearly in order: insertion. */
function sortBy(numbers: number[], key: readonly number[]): void {
  for (let i = 1; i < numbers.length; i++) {
    const moved = numbers[i]!;
    let j = i - 1;
    for (; j >= 0 && key[numbers[j]!]! > key[moved]!; j--) numbers[j + 1] = numbers[j]!;
    numbers[j + 1] = moved;
  }
}
