import type { RatioOfRatios, RelativeToReference, WithInterval } from '../result/comparison.ts';
import {
  type BoundedQuantile,
  differenceOfQuantiles,
  ratioOfQuantiles,
} from '../statistics/calibration/contrast.ts';
import type { LawName } from '../statistics/law.ts';
import { laws } from '../statistics/laws/laws.ts';
import { judgeMargin } from './joined.ts';
import { ratioOfMedians } from './pair.ts';
import { membersOf, type Side } from './side.ts';

/** A ratio with limits at a level: of one side to its reference. */
type Bounded = Pick<WithInterval, 'value' | 'lower' | 'upper'>;

/**
 * The reference that was tested with a side: of the same run, else on the same days with the same rig. Null where there
 * is none.
 *
 * @param references places among the sides
 */
export function referenceOf(
  side: number,
  sides: readonly Side[],
  references: readonly number[],
): number | null {
  const own = sides[side]!;
  const sameRun = references.find((place) => sides[place]!.sample.path === own.sample.path);
  if (sameRun !== undefined) return sameRun;
  const [days, rig] = [membersOf(own, 'day'), membersOf(own, 'rig')];
  if (days === null) return null;
  const isSame = (a: readonly string[] | null, b: readonly string[] | null) =>
    a !== null && String(a) === String(b);
  return (
    references.find(
      (place) =>
        isSame(membersOf(sides[place]!, 'day'), days) &&
        (rig === null || isSame(membersOf(sides[place]!, 'rig'), rig)),
    ) ?? null
  );
}

/** Every side as a ratio of medians to the reference of its own day, with the judgement of a margin where one is given. */
export function relativeTo(
  sides: readonly Side[],
  matched: ReadonlyMap<number, number>,
  law: LawName,
  confidence: number,
  margin: number | null,
): RelativeToReference[] {
  return [...matched].map(([sample, reference]) => {
    const ratio = ratioAt(sides[reference]!, sides[sample]!, law, confidence, 2);
    const oneSided = ratioAt(sides[reference]!, sides[sample]!, law, confidence, 1);
    const why = ratio.value === null ? 'there is no single best median on one side' : null;
    return {
      sample,
      reference,
      ratio: { ...ratio, why },
      nonInferiority: margin === null ? null : judgeMargin(oneSided, margin),
    };
  });
}

/**
 * Ratios of two such ratios: what the day does to a side and to its reference cancels. The limits of the logarithms are
 * joined (Zou and Donner 2008), as those of a ratio are.
 */
export function ratiosOfRatios(relative: readonly RelativeToReference[]): RatioOfRatios[] {
  return relative.flatMap((one, i) =>
    relative.slice(i + 1).flatMap((other): RatioOfRatios[] => {
      if (one.reference === other.reference) return [];
      const { lower, upper } = differenceOfQuantiles(onLog(one.ratio), onLog(other.ratio));
      const [x, y] = [one.ratio.value, other.ratio.value];
      const exp = (end: number | null) => (end === null ? null : Math.exp(end));
      return [
        {
          first: one.sample,
          second: other.sample,
          value: x === null || y === null ? null : y / x,
          lower: exp(lower),
          upper: exp(upper),
          why: x === null || y === null ? 'one of the ratios has no single best value' : null,
        },
      ];
    }),
  );
}

function ratioAt(reference: Side, side: Side, law: LawName, confidence: number, sides: 1 | 2): Bounded {
  const [a, b] = [reference.calibrated?.(0.5, confidence, sides), side.calibrated?.(0.5, confidence, sides)];
  if (a && b) {
    const value = Number.isFinite(a.best) && Number.isFinite(b.best) && a.best > 0 ? b.best / a.best : null;
    return { value, ...ratioOfQuantiles(a, b, laws[law].scale) };
  }
  return ratioOfMedians(reference.looks, side.looks, laws[law], confidence, sides);
}

function onLog({ value, lower, upper }: Bounded): BoundedQuantile {
  const log = (x: number | null) => (x === null || x <= 0 ? null : Math.log(x));
  return { best: log(value) ?? Number.NaN, lower: log(lower), upper: log(upper) };
}
