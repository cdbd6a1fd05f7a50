import type { LoadEquivalence } from '../documents/kinds.ts';
import type { EnduranceEstimate } from '../result/endurance.ts';
import { equivalentDistance, equivalentDistanceInterval } from '../statistics/damage/inverse-power.ts';
import type { DrumSummary } from './summary.ts';

const BOUND =
  'by Palmgren–Miner and the inverse power law, with the exponent as the protocol states it; the order of the blocks is taken for nothing, and it is no distance on a road';

/**
 * What was run, block by block at its mean load, as the distance at one load that would do as much (see
 * `equivalentDistance`). Asked for only, since no published exponent is a tyre's.
 *
 * @param summary null where no log of the drum was given
 */
export function equivalenceEstimates(
  asked: LoadEquivalence | null,
  summary: DrumSummary | null,
  tyres: number,
  confidence: number,
): EnduranceEstimate[] {
  if (asked === null) return [];
  const base = {
    quantity: 'equivalentDistance',
    method: 'palmgren-miner',
    variant: `at ${asked.load} N, exponent ${asked.exponent}`,
    unit: 'km',
    specimens: tyres,
    drops: 0,
  } as const;
  const nothing = { ...base, value: null, standardError: null, interval: null };
  if (summary === null) return [{ ...nothing, why: 'no log of the drum was given' }];
  const stretches = summary.schedule.flatMap(({ distance, channels }) => {
    const load = channels.find(({ channel }) => channel === 'load')?.mean ?? null;
    return distance.logged === 0 ? [] : [{ distance: distance.logged, load }];
  });
  const known = stretches.flatMap(({ distance, load }) => (load === null ? [] : [{ distance, load }]));
  if (known.length < stretches.length)
    return [{ ...nothing, why: 'the log has no load for some kilometres that were run' }];
  const { load, exponent, uncertainty, degrees } = asked;
  if (uncertainty === null) {
    const value = equivalentDistance(known, load, exponent);
    return [
      {
        ...base,
        value,
        standardError: null,
        interval: null,
        why: `${BOUND}; nothing is stated of the exponent's uncertainty`,
      },
    ];
  }
  const carried = {
    value: exponent,
    standardUncertainty: uncertainty,
    degrees: degrees ?? Number.POSITIVE_INFINITY,
  };
  const { value, standardUncertainty, lower, upper } = equivalentDistanceInterval(
    known,
    load,
    carried,
    confidence,
  );
  const interval = { level: confidence, sides: 2, lower, upper, method: 'exponent-uncertainty' } as const;
  return [{ ...base, value, standardError: standardUncertainty, interval, why: BOUND }];
}
