import type { Sample } from './observation.ts';

/** A sample of nothing with room for so many different observations, to be refilled by simulated tests. */
export function emptySample(most: number, scale: Sample['scale'] = 'identity'): Sample {
  const room = () => new Float64Array(most);
  return { scale, size: 0, lower: room(), upper: room(), count: room(), logJacobian: 0 };
}
