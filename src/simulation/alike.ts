import type { StandardLaw } from '../statistics/laws/standard-law.ts';
import { type ProfileBasis, prepareProfile } from '../statistics/likelihood/constrained.ts';
import type { Sample } from '../statistics/likelihood/observation.ts';

/** Different samples that are remembered; later ones are fitted each time. */
const MOST_KNOWN = 20_000;

/**
 * Prepares the profile of each sample once. A hundred thousand tests of 30 drops have some two thousand different tables
 * of counts between them, and all that is looked for follows from the table.
 *
 * @returns the basis of a sample that may be refilled afterwards: equal samples get the same object
 */
export function preparingOnce(law: StandardLaw): (sample: Sample, key: string) => ProfileBasis {
  const known = new Map<string, ProfileBasis>();
  return (sample, key) => {
    const before = known.get(key);
    if (before !== undefined) return before;
    const { scale, size, lower, upper, count, logJacobian } = sample;
    const kept = {
      scale,
      size,
      lower: lower.slice(0, size),
      upper: upper.slice(0, size),
      count: count.slice(0, size),
      logJacobian,
    };
    const basis = prepareProfile(kept, law);
    if (known.size < MOST_KNOWN) known.set(key, basis);
    return basis;
  };
}

/** A function of a basis that is worked out once for each, and with it for all tests that share it. */
export function once<Value>(of: (basis: ProfileBasis) => Value): (basis: ProfileBasis) => Value {
  const known = new WeakMap<ProfileBasis, { readonly value: Value }>();
  return (basis) => {
    const before = known.get(basis);
    if (before !== undefined) return before.value;
    const value = of(basis);
    known.set(basis, { value });
    return value;
  };
}

/** The same for a function of a number beside: the last number is remembered for each basis. */
export function onceAt<Value>(
  of: (basis: ProfileBasis, at: number) => Value,
): (basis: ProfileBasis, at: number) => Value {
  const known = new WeakMap<ProfileBasis, { readonly at: number; readonly value: Value }>();
  return (basis, at) => {
    const before = known.get(basis);
    if (before !== undefined && before.at === at) return before.value;
    const value = of(basis, at);
    known.set(basis, { at, value });
    return value;
  };
}
