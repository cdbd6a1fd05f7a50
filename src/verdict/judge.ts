import type { Criterion } from '../documents/kinds.ts';
import { counted } from '../quantity/format.ts';
import type { JudgedCriterion, Verdict } from '../result/criterion.ts';
import { decisionRules } from './decision-rules.ts';
import type { Evidence } from './evidence.ts';
import { moreSpecimens } from './more.ts';

/**
 * Holds the evidence against one criterion by its decision rule (CONTRACT: verdicts). Numbers are compared at full
 * precision; rounding happens in the sentence `why` alone. A pass on fewer specimens than the criterion asks for is
 * inconclusive, a fail stays.
 */
export function judge(criterion: Criterion, given: Evidence): JudgedCriterion {
  const evidence = withFiniteNumbers(given);
  if (evidence.status !== 'valid') {
    const verdict = evidence.status === 'invalid' ? 'invalid' : 'not-tested';
    const why = evidence.why ?? (verdict === 'invalid' ? 'the evidence is not valid' : 'nothing was tested');
    return judged(criterion, evidence, verdict, why);
  }
  const { verdict, why } = decisionRules[criterion.rule](criterion, evidence);
  const tooFew = criterion.minSpecimens !== null && evidence.specimens < criterion.minSpecimens;
  if (verdict === 'fail' || (verdict === 'pass' && !tooFew)) return judged(criterion, evidence, verdict, why);
  const had = `${counted(evidence.specimens, 'tyre')} tested, ${criterion.minSpecimens} asked for`;
  const reason = verdict === 'pass' ? `${had}, though ${why}` : tooFew ? `${why}; ${had}` : why;
  if (criterion.rule !== 'lower-bound') return judged(criterion, evidence, 'inconclusive', reason);
  const more = moreSpecimens(criterion, evidence);
  return { ...judged(criterion, evidence, 'inconclusive', reason), more };
}

/** A criterion with its verdict in the form that results carry. */
export function judged(
  criterion: Criterion,
  evidence: Evidence,
  verdict: Verdict,
  why: string,
  counts = true,
): JudgedCriterion {
  return {
    id: criterion.id,
    quantity: criterion.quantity,
    ...(criterion.probability === null ? {} : { probability: criterion.probability }),
    ...(criterion.at === null ? {} : { at: criterion.at }),
    limit: criterion.limit,
    rule: criterion.each ? 'each' : criterion.rule,
    confidence: criterion.confidence,
    estimate: evidence.estimate,
    standardError: evidence.standardError,
    specimens: evidence.specimens,
    bounds: { lower: evidence.lower, upper: evidence.upper },
    basis: { method: evidence.method, interval: evidence.interval },
    verdict,
    why,
    counted: counts,
  };
}

/** An infinite bound is no bound, and a number that is none was never had. */
function withFiniteNumbers(evidence: Evidence): Evidence {
  const finite = (value: number | null) => (value !== null && Number.isFinite(value) ? value : null);
  return {
    ...evidence,
    estimate: finite(evidence.estimate),
    standardError: finite(evidence.standardError),
    lower: finite(evidence.lower),
    upper: finite(evidence.upper),
  };
}
