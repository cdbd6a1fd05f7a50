import type { Ride } from '../logs/rides.ts';
import { percent } from '../quantity/amount.ts';
import type { FieldCircumstance } from '../result/field.ts';
import { grouped } from '../statistics/summary/grouped.ts';

/** Share of the km that would have to be ridden otherwise before two constructions were ridden alike (common practice, no source). */
const MOVED = 0.2;
/** bar by which mean pressures may differ. */
const BAR = 0.1;

const NAMED = {
  riders: (ride: Ride) => ride.rider,
  position: (ride: Ride) => ride.position,
  terrain: (ride: Ride) => ride.terrain,
  bike: (ride: Ride) => ride.bike,
  season: (ride: Ride) => ride.month,
} as const;

/** What constructions may differ in beside themselves, by the km ridden. Riders are counted, never named. */
export function circumstancesOf(
  constructions: readonly { readonly construction: string; readonly rides: readonly Ride[] }[],
): FieldCircumstance[] {
  if (constructions.length < 2) return [];
  const named = (Object.keys(NAMED) as (keyof typeof NAMED)[]).map((circumstance): FieldCircumstance => {
    const kindOf = NAMED[circumstance];
    const ridden = constructions.map(({ construction, rides }) => ({
      construction,
      shares: sharesOf(rides, kindOf),
    }));
    const silent = ridden.find(({ shares }) => shares === null);
    if (silent !== undefined) {
      const why = `not recorded for ${silent.construction}: it may stand for the construction`;
      return { circumstance, standing: 'not-recorded', why };
    }
    const worst = worstPair(ridden as Shared[]);
    const share = percent(Math.round(100 * worst.moved) / 100);
    const why =
      circumstance === 'riders'
        ? ridersWords(constructions, share)
        : `${share} of the km of ${worst.first} and ${worst.second} were ridden otherwise`;
    return { circumstance, standing: worst.moved > MOVED ? 'confounded' : 'alike', why };
  });
  return [...named, pressureOf(constructions)];
}

interface Shared {
  readonly construction: string;
  readonly shares: ReadonlyMap<string, number>;
}

/** Shares of the km by value; null where a tenth of them or more has none. */
function sharesOf(rides: readonly Ride[], kindOf: (ride: Ride) => string | null): Map<string, number> | null {
  const total = sum(rides);
  const known = rides.filter((ride) => kindOf(ride) !== null);
  if (!(total > 0) || sum(known) < 0.9 * total) return null;
  return new Map(grouped(known, kindOf).map(([value, own]) => [value!, sum(own) / sum(known)]));
}

function sum(rides: readonly Ride[]): number {
  return rides.reduce((km, { distance }) => km + distance, 0);
}

/** The pair that was ridden most differently: half the sum of the differences of shares. */
function worstPair(ridden: readonly Shared[]) {
  const pairs = ridden.flatMap((first, i) =>
    ridden.slice(i + 1).map((second) => {
      const values = new Set([...first.shares.keys(), ...second.shares.keys()]);
      const moved =
        [...values].reduce(
          (all, value) => all + Math.abs((first.shares.get(value) ?? 0) - (second.shares.get(value) ?? 0)),
          0,
        ) / 2;
      return { first: first.construction, second: second.construction, moved };
    }),
  );
  return pairs.reduce((worst, pair) => (pair.moved > worst.moved ? pair : worst));
}

function ridersWords(constructions: readonly { readonly rides: readonly Ride[] }[], share: string): string {
  const of = constructions.map(({ rides }) => new Set(rides.map(({ rider }) => rider)));
  const all = new Set(of.flatMap((riders) => [...riders]));
  const everywhere = [...all].filter((rider) => of.every((riders) => riders.has(rider))).length;
  return `${everywhere} of ${all.size} riders rode every construction; up to ${share} of the km are of other riders`;
}

function pressureOf(
  constructions: readonly { readonly construction: string; readonly rides: readonly Ride[] }[],
): FieldCircumstance {
  const means = constructions.map(({ construction, rides }) => {
    const known = rides.filter(({ pressure, distance }) => pressure !== null && distance > 0);
    const km = sum(known);
    const mean =
      km > 0 && km >= 0.9 * sum(rides)
        ? known.reduce((all, { pressure, distance }) => all + pressure! * distance, 0) / km
        : null;
    return { construction, mean };
  });
  const silent = means.find(({ mean }) => mean === null);
  if (silent !== undefined) {
    const why = `not recorded for ${silent.construction}: it may stand for the construction`;
    return { circumstance: 'pressure', standing: 'not-recorded', why };
  }
  const values = means.map(({ mean }) => mean!);
  const apart = Math.max(...values) - Math.min(...values);
  const why = `mean pressures from ${Math.min(...values).toFixed(2)} to ${Math.max(...values).toFixed(2)} bar`;
  return { circumstance: 'pressure', standing: apart > BAR ? 'confounded' : 'alike', why };
}
