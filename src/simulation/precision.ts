import type { Simulated } from '../result/simulation.ts';
import type { Design } from './design.ts';
import { type FoundMedians, medianErrors } from './median-errors.ts';
import { leastSize, withSize } from './sizes.ts';
import type { AssumedStrength } from './strength.ts';

export interface Simulating {
  readonly tests: number;
  readonly seed: number;
}

/** How near a test comes to the median, and what it costs. */
export interface Precision {
  readonly size: number;
  /** The share `confidence` of tests finds a median within so much of the true one, on the fitted scale. */
  readonly within: Simulated;
  readonly drops: number;
  readonly specimens: number;
}

/** How near tests of one size come to the median. */
export function precisionAt(
  design: Design,
  size: number,
  assumed: AssumedStrength,
  confidence: number,
  simulating: Simulating,
): Precision {
  const found = medianErrors({ ...design, protocol: withSize(design.protocol, size) }, assumed, simulating);
  return { size, within: withinOf(found, confidence), drops: found.drops, specimens: found.specimens };
}

/** The least size whose tests come near enough; null where not even the largest does. */
export function sizeForPrecision(
  design: Design,
  wished: number,
  assumed: AssumedStrength,
  confidence: number,
  simulating: Simulating,
): Precision | null {
  const known = new Map<number, Precision>();
  const at = (size: number) => {
    const found = known.get(size) ?? precisionAt(design, size, assumed, confidence, simulating);
    known.set(size, found);
    return found;
  };
  const size = leastSize(3, (candidate) => at(candidate).within.value <= wished);
  return size === null ? null : at(size);
}

function withinOf({ errors }: FoundMedians, confidence: number): Simulated {
  const sizes = errors.map(Math.abs).sort();
  const at = (share: number) =>
    sizes[Math.min(sizes.length - 1, Math.max(0, Math.ceil(share * sizes.length) - 1))]!;
  // The error of a quantile, read off the quantiles one binomial error away.
  const step = Math.sqrt((confidence * (1 - confidence)) / sizes.length);
  return { value: at(confidence), error: (at(confidence + step) - at(confidence - step)) / 2 };
}
