import { significant } from '../../quantity/format.ts';
import type { Estimate, Interval } from '../../result/estimate.ts';
import { curveQuantile } from '../../statistics/isotonic/curve-quantile.ts';
import { type Corner, centredIsotonicCurve, isotonicCurve } from '../../statistics/isotonic/failure-curve.ts';
import { orderInterval } from '../../statistics/isotonic/order-interval.ts';
import type { Response } from '../../statistics/isotonic/response.ts';
import { normalCritical } from '../../statistics/likelihood/critical.ts';
import { smallestTrim, spearmanKarber } from '../../statistics/spearman-karber/spearman-karber.ts';
import { turnbull, turnbullQuantile } from '../../statistics/turnbull/turnbull.ts';
import { shareAimedAt } from '../rules/up-and-down.ts';
import { entryOf, type LevelEvidence } from './evidence.ts';

const SINGLE_LOOKS =
  'it takes drops as single looks, and a rise is one look over several levels; ask for nonparametric';

/** The median, and where the rule aims elsewhere that share, off the isotonic failure curve. */
export function isotonicEstimate(evidence: LevelEvidence): Estimate[] {
  return offCurve(evidence, 'isotonic', isotonicCurve);
}

/** The same off the centred curve (Oron and Flournoy 2017), which rises strictly between its corners. */
export function centredIsotonicEstimate(evidence: LevelEvidence): Estimate[] {
  return offCurve(evidence, 'centred-isotonic', centredIsotonicCurve);
}

function offCurve(
  evidence: LevelEvidence,
  method: string,
  curveOf: (responses: readonly Response[]) => Corner[],
): Estimate[] {
  const { protocol, responses, confidence } = evidence;
  const aim = protocol.survivalsToRaise === null ? null : shareAimedAt(protocol.survivalsToRaise);
  const entry = (quantity: string, share: number, more: Partial<Estimate> = {}): Estimate => {
    const head = entryOf(evidence, method, quantity, more);
    if (protocol.method === 'rising-height') return { ...head, why: SINGLE_LOOKS };
    const found = curveQuantile(curveOf(responses), share);
    const { lower, upper } = orderInterval(responses, share, confidence);
    const interval: Interval = {
      level: confidence,
      sides: 2,
      lower: finite(evidence, lower),
      upper: finite(evidence, upper),
      method: 'order-limits',
    };
    const open =
      interval.lower === null || interval.upper === null
        ? 'the interval assumes no law and ends at levels that were tested; so few drops leave it open'
        : null;
    return { ...head, value: finite(evidence, found.value), interval, why: found.why ?? open };
  };
  return [
    entry('medianFailureEnergy', 0.5),
    ...(aim === null ? [] : [entry('failureEnergyQuantile', aim, { probability: aim })]),
  ];
}

/**
 * The mean of the failure curve, for a symmetric law its median; where the ends of the curve are open it is trimmed by
 * as little as it must be, and says so.
 */
export function spearmanKarberEstimate(evidence: LevelEvidence): Estimate[] {
  const { responses, protocol, confidence, law } = evidence;
  const head = entryOf(evidence, 'spearman-karber', 'medianFailureEnergy');
  if (protocol.method === 'rising-height') return [{ ...head, why: SINGLE_LOOKS }];
  const plain = spearmanKarber(responses);
  const trim = plain.value === null ? smallestTrim(responses) : 0;
  const found = trim === null || plain.value !== null ? plain : spearmanKarber(responses, trim);
  if (found.value === null) return [{ ...head, why: found.why }];
  const { mean, standardError } = found.value;
  const half = normalCritical(confidence, 2) * standardError;
  const value = finite(evidence, mean)!;
  const trimmed =
    found.value.trim > 0
      ? `trimmed by ${significant(100 * found.value.trim, 3)} % at each end, as the curve does not run from 0 to 1`
      : null;
  const moving =
    protocol.method === 'fixed-level'
      ? null
      : 'made for fixed levels: where the outcomes steer the levels, its error is too small';
  return [
    {
      ...head,
      value,
      standardError: law.scale === 'log' ? value * standardError : standardError,
      interval: {
        level: confidence,
        sides: 2,
        lower: finite(evidence, mean - half),
        upper: finite(evidence, mean + half),
        method: 'wald',
      },
      why: [trimmed, moving].filter((part) => part !== null).join('; ') || null,
    },
  ];
}

/** The span that holds the median of the non-parametric maximum-likelihood estimate (Turnbull 1976). */
export function nonparametricEstimate(evidence: LevelEvidence): Estimate[] {
  const head = entryOf(evidence, 'nonparametric', 'medianFailureEnergy');
  const { observations } = evidence.observations;
  if (observations.length === 0) return [{ ...head, why: 'there are no drops' }];
  const fit = turnbull(observations);
  if (!fit.optimal) {
    return [
      { ...head, why: 'the search did not reach the conditions of a maximum (Karush, Kuhn and Tucker)' },
    ];
  }
  const { lower, upper } = turnbullQuantile(fit, 0.5);
  const ends = `the data place the median from ${end(lower)} to ${end(upper)} and do not say where between`;
  if (!Number.isFinite(lower) || !Number.isFinite(upper)) return [{ ...head, why: ends }];
  return [{ ...head, value: (lower + upper) / 2, why: `${ends}; the middle is printed, and no interval` }];
}

function end(level: number): string {
  if (level === Infinity) return 'no upper end';
  return level === -Infinity ? 'no lower end' : `${significant(level, 4)} J`;
}

/** A level of the law's scale in J; null where it is open. */
function finite({ law }: LevelEvidence, y: number | null): number | null {
  if (y === null || !Number.isFinite(y)) return null;
  return law.scale === 'log' ? Math.exp(y) : y;
}
