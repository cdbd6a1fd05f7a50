import type { ComparedPair, Influence } from '../result/comparison.ts';
import type { Law } from '../statistics/laws/laws.ts';
import type { Observation } from '../statistics/likelihood/observation.ts';
import { adjust } from '../statistics/multiplicity/adjust.ts';
import { groupsNotToldApart } from '../statistics/multiplicity/groups.ts';
import { comparePair, equalMedians } from './pair.ts';

/** What one specimen says of a strength, J. */
export interface Look extends Observation {
  readonly specimen: string;
}

export interface SamplesCompared {
  readonly pairs: readonly ComparedPair[];
  readonly ranking: readonly number[] | null;
  readonly groups: readonly (readonly number[])[];
  readonly influence: readonly Influence[];
}

/** All pairs of samples, with Holm's adjustment of the test of equal medians over them. */
export function compareSamples(
  samples: readonly (readonly Look[])[],
  law: Law,
  confidence: number,
): SamplesCompared {
  const places = samples.flatMap((_, i) => samples.slice(i + 1).map((__, k) => [i, i + 1 + k] as const));
  const found = places.map(([a, b]) => comparePair(samples[a]!, samples[b]!, law, confidence));
  const ps = found.map(({ differences }) => differences[0]!.p);
  const known = ps.filter((p) => p !== null);
  // A pair without an estimate still counts as a question asked.
  const adjusted =
    known.length === 0
      ? []
      : adjust(
          ps.map((p) => p ?? 1),
          'holm',
        );
  const pairs = places.map(([first, second], i): ComparedPair => {
    const holm = ps[i] === null ? null : (adjusted[i] ?? null);
    const toldApart = holm === null ? null : holm <= 1 - confidence;
    return { first, second, ...found[i]!, holm, toldApart };
  });
  const ranking = rankingOf(samples.length, pairs);
  const apart = pairs.filter(({ toldApart }) => toldApart === true);
  return {
    pairs,
    ranking,
    groups: ranking === null ? [] : groupsNotToldApart(ranking, apart),
    influence: pairs.flatMap((pair) => influenceOn(pair, samples, law, confidence)),
  };
}

/** Weakest first, by the medians that each pair's own spreads give; null where one has none. */
function rankingOf(size: number, pairs: readonly ComparedPair[]): number[] | null {
  const medians = new Array<number | null>(size).fill(null);
  for (const { first, second, differences } of pairs) {
    const own = differences.find(({ probability, spreads }) => probability === 0.5 && spreads === 'separate');
    const common = differences[0]!;
    for (const [place, i] of [
      [first, 0],
      [second, 1],
    ] as const) {
      medians[place] ??= own?.energies[i] ?? common.energies[i];
    }
  }
  if (medians.some((median) => median === null)) return null;
  return medians.map((_, i) => i).sort((a, b) => medians[a]! - medians[b]! || a - b);
}

/** What turns when one specimen at a time is left out: who is stronger, and whether the pair is told apart. */
function influenceOn(
  { first, second, differences, toldApart }: ComparedPair,
  samples: readonly (readonly Look[])[],
  law: Law,
  confidence: number,
): Influence[] {
  const whole = differences[0]!;
  const [a, b] = whole.energies;
  if (a === null || b === null) return [];
  const pairwise = whole.p !== null && whole.p <= 1 - confidence;
  // Where Holm's adjustment decides otherwise than the pair alone, a test of the pair alone says nothing of it.
  const follows = pairwise === toldApart;
  return [first, second].flatMap((sample) => {
    const specimens = [...new Set(samples[sample]!.map(({ specimen }) => specimen))];
    return specimens.flatMap((specimen): Influence[] => {
      const without = (place: number) =>
        place === sample ? samples[place]!.filter((look) => look.specimen !== specimen) : samples[place]!;
      const rest = [without(first), without(second)] as const;
      const turned = rest.some((looks) => looks.length === 0) ? null : equalMedians(...rest, law);
      if (turned === null) return [{ sample, specimen, effect: 'no estimate is left' }];
      const [x, y] = turned.energies;
      if (Math.sign(y - x) !== Math.sign(b - a))
        return [{ sample, specimen, effect: 'the two change places' }];
      if (!follows || turned.p === null) return [];
      const apart = turned.p <= 1 - confidence;
      if (apart === pairwise) return [];
      return [
        { sample, specimen, effect: apart ? 'the two are told apart' : 'the two are no longer told apart' },
      ];
    });
  });
}
