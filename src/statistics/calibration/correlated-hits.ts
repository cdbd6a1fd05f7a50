import { normal } from '../laws/normal.ts';
import type { Experiment, Trials } from './experiment.ts';

/**
 * Hits of simulated tests that share the effect of their specimen. Given the effects u with which a test was drawn its
 * hits are independent, with chances Φ((Φ⁻¹(F(z)) − √share·u)/√(1 − share)), so that tests can be weighted as they are.
 */
export interface CorrelatedHits {
  /** Takes test t in; tests come in their order. */
  keep(t: number, trials: Trials, effects: Float64Array): void;
  /** Log-chances of the tests from `first` to before `end`, given their effects, where a level fails with e^logChance. */
  logDensities(first: number, end: number, logChance: (level: number) => number, into: Float64Array): void;
}

export function correlatedHits({ levels, mostDrops, share }: Experiment, tests: number): CorrelatedHits {
  const start = new Int32Array(tests + 1);
  const level = new Int32Array(tests * mostDrops);
  const sign = new Int8Array(tests * mostDrops);
  const shift = new Float64Array(tests * mostDrops);
  const probits = new Float64Array(levels.length);
  const between = Math.sqrt(share);
  const within = Math.sqrt(1 - share);
  return {
    keep(t, trials, effects) {
      let at = start[t]!;
      for (let k = 0; k < trials.size; k++) {
        level[at] = trials.level[k]!;
        sign[at] = trials.failed[k] ? 1 : -1;
        shift[at++] = (between * effects[trials.specimen[k]!]!) / within;
      }
      start[t + 1] = at;
    },
    logDensities(first, end, logChance, into) {
      for (let i = 0; i < probits.length; i++) probits[i] = normal.quantileOfLogCdf(logChance(i)) / within;
      for (let t = first; t < end; t++) {
        let sum = 0;
        for (let e = start[t]!; e < start[t + 1]!; e++)
          sum += logCdf(sign[e]! * (probits[level[e]!]! - shift[e]!));
        into[t] = sum;
      }
    },
  };
}

const REACH = 9;
const PER_UNIT = 64;
let table: Float64Array | null = null;

/** log Φ within 3e-5 by straight lines between 64 points a unit: ten times as fast as to the last digit, for weights. */
function logCdf(z: number): number {
  if (!(z > -REACH && z < REACH)) return normal.logCdf(z);
  table ??= Float64Array.from({ length: 2 * REACH * PER_UNIT + 1 }, (_, i) =>
    normal.logCdf(i / PER_UNIT - REACH),
  );
  const place = (z + REACH) * PER_UNIT;
  const index = Math.floor(place);
  const low = table[index]!;
  return low + (place - index) * (table[index + 1]! - low);
}
