import { fromScale } from '../statistics/likelihood/observation.ts';
import type { Estimator } from './estimator.ts';

/** The mean of the energies at which specimens of a rising-height test failed; none where one survived to the top. */
export const notedHeights: Estimator = {
  quantity: 'medianFailureEnergy',
  method: 'mean-of-noted-heights',
  unit: 'J',
  intervals: [],
  errorOf({ basis: { sample }, truth }) {
    let sum = 0;
    let specimens = 0;
    for (let i = 0; i < sample.size; i++) {
      specimens += sample.count[i]!;
      sum += sample.count[i]! * fromScale(sample.upper[i]!, sample.scale);
    }
    return Number.isFinite(sum) ? sum / specimens - truth.median : Number.NaN;
  },
};
