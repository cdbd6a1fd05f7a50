import type { FlatCause, Ride } from '../logs/rides.ts';
import { FLAT_CAUSES } from '../logs/rides.ts';
import type { FieldConstruction, FieldDispersion, FieldRate, FieldRatio } from '../result/field.ts';
import { adjust } from '../statistics/multiplicity/adjust.ts';
import { dispersedRate } from '../statistics/rates/dispersed-rate.ts';
import { overDispersion } from '../statistics/rates/over-dispersion.ts';
import { type Count, poissonRate } from '../statistics/rates/poisson-rate.ts';
import { rateRatio } from '../statistics/rates/rate-ratio.ts';
import { grouped } from '../statistics/summary/grouped.ts';

export type ComparedCause = FlatCause | 'all';
export const LEVEL = 0.95;
/** Rates are per so many km. */
const PER = 1000;
/** Scatter of riders beyond chance that is called so (common practice, no source). */
const MORE_THAN_CHANCE = 0.05;

/** Flats of one cause and thousands of km of some rides. */
export function countOf(rides: readonly Ride[], cause: ComparedCause): Count {
  return {
    events: rides.reduce(
      (sum, { flats, cause: own }) => sum + (cause === 'all' || own === cause ? flats : 0),
      0,
    ),
    exposure: rides.reduce((sum, { distance }) => sum + distance, 0) / PER,
  };
}

/** One construction: rates of all flats and of each cause that occurs, exact by Garwood; the scatter of its riders. */
export function constructionInField(
  construction: string,
  rides: readonly Ride[],
  cause: ComparedCause,
  causes: readonly ComparedCause[],
): FieldConstruction {
  const riders = grouped(rides, ({ rider }) => rider).map(([, own]) => countOf(own, cause));
  const rates = causes.map((one): FieldRate => {
    const count = countOf(rides, one);
    return { cause: one, flats: count.events, ...poissonRate(count, LEVEL) };
  });
  return {
    construction,
    distance: rides.reduce((sum, { distance }) => sum + distance, 0),
    riders: riders.length,
    rates,
    dispersion: dispersionOf(riders),
  };
}

/** `all`, and the causes that occur, in the order of the vocabulary. */
export function causesOf(rides: readonly Ride[]): ComparedCause[] {
  const seen = new Set(rides.filter(({ flats }) => flats > 0).map(({ cause }) => cause ?? 'unknown'));
  return ['all', ...FLAT_CAUSES.filter((cause) => seen.has(cause))];
}

function dispersionOf(all: readonly Count[]): FieldDispersion | null {
  const riders = all.filter(({ exposure }) => exposure > 0);
  const events = riders.reduce((sum, rider) => sum + rider.events, 0);
  if (riders.length < 2 || events === 0) return null;
  const { ratio, p, leastExpected } = overDispersion(riders);
  const { lower, upper } = dispersedRate(riders, LEVEL);
  const rough = leastExpected < 5 ? '; few flats a rider, so this is rough' : '';
  const why =
    p < MORE_THAN_CHANCE
      ? `riders differ by more than chance: the limits over riders hold, the exact ones are too narrow${rough}`
      : `riders do not differ by more than chance would have them${rough}`;
  return { riders: riders.length, ratio, p, lower, upper, why };
}

/** Every two constructions against one another, exactly given the total, with Holm's adjustment. */
export function ratiosOf(
  counts: readonly { readonly construction: string; readonly count: Count }[],
): FieldRatio[] {
  const pairs = counts.flatMap((first, i) => counts.slice(i + 1).map((second) => [first, second] as const));
  const found = pairs.map(([first, second]) => {
    const names = { first: first.construction, second: second.construction };
    if (first.count.events + second.count.events === 0) {
      const why = 'neither has a flat of this cause';
      return { ...names, ratio: null, lower: 0, upper: null, p: 1, why };
    }
    const { ratio, lower, upper, p } = rateRatio(first.count, second.count, LEVEL);
    return { ...names, ratio, lower, upper, p, why: null };
  });
  if (found.length === 0) return [];
  const holm = adjust(
    found.map(({ p }) => p),
    'holm',
  );
  return found.map((one, i) => ({ ...one, holm: holm[i]! }));
}
