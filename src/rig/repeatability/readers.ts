import type { PairedReading } from '../../logs/study-readings.ts';
import type { ReadersResult } from '../../result/repeatability.ts';
import { agreementTable, cohensKappa, kappaLimits } from '../../statistics/agreement/kappa.ts';
import { LEVEL } from './gauge-study.ts';

/** The agreement of two readers of damage beyond chance. Throws a RangeError where there is nothing that both read. */
export function readersStudy(pairs: readonly PairedReading[]): ReadersResult {
  if (pairs.length === 0) throw new RangeError('no specimen was read by both');
  const { readings, table } = agreementTable(
    pairs.map(({ first }) => first),
    pairs.map(({ second }) => second),
  );
  const told = { kind: 'readers', specimens: pairs.length, readings, table } as const;
  if (readings.length < 2) {
    const why = 'both always read the same one thing: they agree, and chance alone would too';
    return { ...told, observed: 1, expected: 1, kappa: null, standardError: null, interval: null, why };
  }
  const agreement = cohensKappa(table);
  const { observed, expected, kappa, standardError } = agreement;
  const limits = kappaLimits(agreement, LEVEL);
  return {
    ...told,
    observed,
    expected,
    kappa,
    standardError,
    interval: limits && { level: LEVEL, ...limits },
    why: kappa === null ? 'both always read the same one thing: chance alone agrees fully' : null,
  };
}
