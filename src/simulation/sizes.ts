import type { ImpactProtocol } from '../documents/kinds.ts';

/** What the size of a test is counted in: what a lab buys and plans by. */
export type SizeUnit = 'drops' | 'specimens' | 'drops per level';

/** How the size of a protocol's test is counted: a rise is a specimen's, a fixed-level test has as many at each level. */
export function sizeUnit({ method }: ImpactProtocol): SizeUnit {
  if (method === 'rising-height') return 'specimens';
  return method === 'fixed-level' ? 'drops per level' : 'drops';
}

/** The protocol as it would be with another size, and nothing else changed. */
export function withSize(protocol: ImpactProtocol, size: number): ImpactProtocol {
  switch (sizeUnit(protocol)) {
    case 'specimens':
      return { ...protocol, stop: { specimens: size } };
    case 'drops per level':
      return { ...protocol, stop: null, perLevel: size };
    case 'drops':
      return { ...protocol, stop: { drops: size } };
  }
}

/** Largest size that a search goes to. */
export const MOST_SIZE = 500;

/**
 * The least size from `from` up that is enough, found by doubling and then halving; null where not even the largest is.
 * What is enough at one size is so at larger ones, but for the noise of the simulation.
 */
export function leastSize(from: number, isEnough: (size: number) => boolean): number | null {
  let low = from - 1;
  let high = from;
  while (!isEnough(high)) {
    if (high === MOST_SIZE) return null;
    low = high;
    high = Math.min(MOST_SIZE, 2 * high);
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (isEnough(middle)) high = middle;
    else low = middle;
  }
  return high;
}
