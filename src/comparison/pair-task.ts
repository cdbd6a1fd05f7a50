import type { WithInterval } from '../result/comparison.ts';
import type { LawName } from '../statistics/law.ts';
import { laws } from '../statistics/laws/laws.ts';
import { comparePair, equalMedians, type PairDifferences, ratioOfMedians } from './pair.ts';
import type { Look } from './side.ts';

/** A pair as plain data, so that another thread may compare it. */
export interface PairTask {
  readonly first: readonly Look[];
  readonly second: readonly Look[];
  readonly law: LawName;
  readonly confidence: number;
}

/** The pair without one specimen of one of its sides. */
export interface LeftOut {
  readonly side: 0 | 1;
  readonly specimen: string;
  /** Null where no estimate is left. */
  readonly rest: { readonly values: readonly [number, number]; readonly p: number | null } | null;
}

export interface PairAnswer extends PairDifferences {
  /** Ratio of the medians with bounds that hold one by one. */
  readonly bounds: Omit<WithInterval, 'why'>;
  /** Empty where the whole pair has no estimate. */
  readonly leftOut: readonly LeftOut[];
}

/** Compares a pair by the likelihood, and again without each of its specimens. */
export function answerPair({ first, second, law: name, confidence }: PairTask): PairAnswer {
  const law = laws[name];
  const whole = comparePair(first, second, law, confidence);
  const exists = whole.differences[0]!.values[0] !== null;
  const bounds = exists
    ? ratioOfMedians(first, second, law, confidence, 1)
    : { value: null, lower: null, upper: null };
  return { ...whole, bounds, leftOut: exists ? leaveOut(first, second, name) : [] };
}

function leaveOut(first: readonly Look[], second: readonly Look[], name: LawName): LeftOut[] {
  const pair = [first, second] as const;
  return ([0, 1] as const).flatMap((side) => {
    const bySpecimen = new Map<string, Look[]>();
    for (const look of pair[side]) {
      const own = bySpecimen.get(look.specimen);
      if (own === undefined) bySpecimen.set(look.specimen, [look]);
      else own.push(look);
    }
    // Specimens with the same looks leave the same behind: most drops stand on few levels.
    const known = new Map<string, LeftOut['rest']>();
    return [...bySpecimen].map(([specimen, own]): LeftOut => {
      const key = own.map(({ lower, upper, count }) => `${lower} ${upper} ${count}`).join();
      const seen = known.get(key);
      if (seen !== undefined) return { side, specimen, rest: seen };
      const without = (of: 0 | 1) =>
        of === side ? pair[of].filter((look) => look.specimen !== specimen) : pair[of];
      const rest = [without(0), without(1)] as const;
      const found = rest.some((looks) => looks.length === 0) ? null : equalMedians(...rest, laws[name]);
      const left = found && { values: found.values, p: found.p };
      known.set(key, left);
      return { side, specimen, rest: left };
    });
  });
}
