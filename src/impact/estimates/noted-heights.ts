import { mean, sampleStandardDeviation } from 'simple-statistics';
import type { Estimate } from '../../result/estimate.ts';
import type { Observations } from '../observations.ts';
import type { Basis } from './from-count.ts';

/**
 * The mean of the energies at which rising-height specimens were noted as failed: what labs have long reported. It is
 * given with what is wrong with it, and without an interval, so that it can be compared with old reports and nothing
 * else: where a tyre has one fixed threshold it is high by half a step, where hits scatter or damage adds up its bias
 * goes with start and step. A specimen that survived to the top has no such energy and makes it null.
 */
export function meanOfNotedHeights({ observations }: Observations, basis: Basis): Estimate[] {
  const noted = observations.map(({ upper }) => upper);
  const open = noted.filter((upper) => upper === Infinity).length;
  const head = {
    quantity: 'medianFailureEnergy',
    method: 'mean-of-noted-heights',
    unit: 'J',
    interval: null,
    specimens: basis.specimens,
    drops: basis.drops,
  };
  if (noted.length === 0 || open > 0) {
    const why = `the mean of noted heights does not exist: ${open} of ${noted.length} specimens did not fail`;
    return [{ ...head, value: null, standardError: null, why }];
  }
  return [
    {
      ...head,
      value: mean(noted),
      standardError: noted.length > 1 ? sampleStandardDeviation(noted) / Math.sqrt(noted.length) : null,
      why: 'for comparison with old reports only: it lies high by half a step where a tyre has one fixed strength, and its bias moves with start and step where hits scatter or damage adds up',
    },
  ];
}
