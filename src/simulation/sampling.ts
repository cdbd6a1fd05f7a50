import { emptySample } from '../statistics/likelihood/empty-sample.ts';
import type { Sample } from '../statistics/likelihood/observation.ts';
import { MOST_DROPS, type Trials } from './carry-out.ts';
import type { LevelTable } from './level-table.ts';

/** What the likelihood reads of a test. */
export interface Counted {
  readonly sample: Sample;
  /** The same for tests whose samples are equal, as long as they share a level table. */
  key: string;
}

/** Turns the drops of a simulated test into what the likelihood reads; what is returned is refilled by each call. */
export type Sampling = (trials: Trials, levels: LevelTable) => Counted;

/**
 * Single looks: a failure at y is (−∞, y], a survival (y, ∞); equal ones merged, in rising order, as
 * gatherObservations does with the observations of a log.
 */
export function singleLooks(scale: Sample['scale']): Sampling {
  const sample = emptySample(MOST_DROPS, scale);
  const counted = { sample, key: '' };
  const codes: number[] = [];
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
    codes.length = 0;
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
      codes.push(level, failures[level]!, survivals[level]!);
      failures[level] = 0;
      survivals[level] = 0;
    }
    sample.size = size;
    counted.key = String.fromCharCode(...codes);
    return counted;
  };
}

/** More than there are levels in a table. */
const LEVELS = 0x10000;

/**
 * Rises: each specimen's strength lies in (last survived, failed], open where it never survived or never failed; equal
 * ones merged.
 */
export function rises(scale: Sample['scale']): Sampling {
  const sample = emptySample(MOST_DROPS, scale);
  const counted = { sample, key: '' };
  /** Of each specimen the numbers of the two levels, counted from 1; 0 for an open end. */
  const pairs: number[] = [];
  const codes: number[] = [];
  return ({ size, specimen, failed, level }, levels) => {
    pairs.length = 0;
    let survived = 0;
    for (let i = 0; i < size; i++) {
      // Another specimen, or the next site of the same one, which begins below.
      const isLast =
        i + 1 === size || specimen[i + 1] !== specimen[i] || levels.y[level[i + 1]!]! <= levels.y[level[i]!]!;
      if (failed[i]) pairs.push(survived * LEVELS + level[i]! + 1);
      else if (isLast) pairs.push((level[i]! + 1) * LEVELS);
      survived = failed[i] || isLast ? 0 : level[i]! + 1;
    }
    pairs.sort((a, b) => a - b);
    codes.length = 0;
    sample.size = 0;
    for (let i = 0; i < pairs.length; ) {
      let next = i + 1;
      while (pairs[next] === pairs[i]) next++;
      const low = Math.floor(pairs[i]! / LEVELS);
      const high = pairs[i]! % LEVELS;
      sample.lower[sample.size] = low === 0 ? -Infinity : levels.y[low - 1]!;
      sample.upper[sample.size] = high === 0 ? Infinity : levels.y[high - 1]!;
      sample.count[sample.size++] = next - i;
      codes.push(low, high, next - i);
      i = next;
    }
    counted.key = String.fromCharCode(...codes);
    return counted;
  };
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
