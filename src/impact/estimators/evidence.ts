import type { ImpactProtocol } from '../../documents/kinds.ts';
import type { Estimate } from '../../result/estimate.ts';
import type { Response } from '../../statistics/isotonic/response.ts';
import { type Law, laws } from '../../statistics/laws/laws.ts';
import type { CountableDrops } from '../estimates/from-count.ts';
import type { Measure, Observations } from '../observations.ts';
import type { ReplayedDrop } from '../replay/replayed.ts';

/** What the estimators beside the likelihood are given. */
export interface LevelEvidence {
  readonly protocol: ImpactProtocol;
  readonly law: Law;
  /** Drops that stand in the estimate, in order. */
  readonly drops: readonly ReplayedDrop[];
  readonly observations: Observations;
  /** The drops on an equally spaced grid whose path was kept, or why they are not that. */
  readonly countable: CountableDrops;
  /** Failures and drops level by level, on the scale of the law (J, or ln J). */
  readonly responses: readonly Response[];
  readonly confidence: number;
}

/** One estimator: its entries of the result, each with a reason where it gives no number. */
export type Estimator = (evidence: LevelEvidence) => Estimate[];

export function levelEvidence(
  protocol: ImpactProtocol,
  replay: { readonly drops: readonly ReplayedDrop[] },
  observations: Observations,
  countable: CountableDrops,
  energyOf: Measure,
): LevelEvidence {
  const law = laws[protocol.distribution];
  const drops = replay.drops.filter(
    ({ use, drop }) =>
      use === 'used' && energyOf(drop) !== null && (drop.outcome === 'failed' || drop.outcome === 'survived'),
  );
  return {
    protocol,
    law,
    drops,
    observations,
    countable,
    responses: responsesOf(drops, energyOf, law),
    confidence: protocol.confidence,
  };
}

/** The parts of an entry that all estimators share; numbers and reasons are put over it. */
export function entryOf(
  { observations, protocol }: LevelEvidence,
  method: string,
  quantity: string,
  more: Partial<Estimate> = {},
): Estimate {
  const isLog = laws[protocol.distribution].scale === 'log';
  return {
    quantity,
    method,
    unit: quantity === 'energySpread' && isLog ? '1' : 'J',
    value: null,
    standardError: null,
    interval: null,
    specimens: observations.specimens,
    drops: observations.drops,
    why: null,
    ...more,
  };
}

/**
 * Drops of one planned level are one group, at the mean of its energies: heights that scatter within their tolerance
 * are no levels of their own. Where the method has no levels, equal energies are.
 */
function responsesOf(drops: readonly ReplayedDrop[], energyOf: Measure, { scale }: Law): Response[] {
  const groups = new Map<string, { sum: number; failures: number; drops: number }>();
  for (const { drop, level } of drops) {
    const energy = energyOf(drop)!;
    const y = scale === 'log' ? Math.log(energy) : energy;
    const key = level === null ? `at ${energy}` : `${level} ${drop.mass ?? ''}`;
    const group = groups.get(key) ?? { sum: 0, failures: 0, drops: 0 };
    groups.set(key, group);
    group.sum += y;
    group.drops += 1;
    if (drop.outcome === 'failed') group.failures += 1;
  }
  return [...groups.values()].map(({ sum, failures, drops: made }) => ({
    level: sum / made,
    failures,
    drops: made,
  }));
}
