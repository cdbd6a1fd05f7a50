import type { Criterion } from '../documents/kinds.ts';
import { counted } from '../quantity/format.ts';
import type { JudgedCriterion } from '../result/criterion.ts';
import { withoutEvidence } from './evidence.ts';
import { judge, judged } from './judge.ts';
import { acceptanceOf, accepts, guarded, limitInWords } from './limit.ts';

/**
 * Judges a criterion again from the numbers that an earlier judgement kept: by another limit, or to see that the
 * verdict follows from them. The bounds stay those of the earlier confidence, so only the limit may be another.
 * What was not tested, is not valid or is shown elsewhere stays so.
 */
export function rejudge(criterion: Criterion, earlier: JudgedCriterion): JudgedCriterion {
  const { sample, construction, verdict } = earlier;
  const label = sample === undefined ? {} : { sample, construction: construction ?? null };
  if (verdict === 'not-tested' || verdict === 'invalid' || verdict === 'external') {
    return { ...earlier, limit: criterion.limit };
  }
  if (earlier.measured !== undefined) return { ...judgeEnds(criterion, earlier, earlier.measured), ...label };
  return {
    ...judge(criterion, {
      status: 'valid',
      estimate: earlier.estimate,
      standardError: earlier.standardError,
      lower: earlier.bounds.lower,
      upper: earlier.bounds.upper,
      method: earlier.basis.method,
      interval: earlier.basis.interval,
      specimens: earlier.specimens,
      why: null,
    }),
    ...label,
  };
}

/** Every measured tyre meets a limit where the smallest and the largest do; who is beyond it, the ends cannot tell. */
function judgeEnds(
  criterion: Criterion,
  earlier: JudgedCriterion,
  measured: NonNullable<JudgedCriterion['measured']>,
): JudgedCriterion {
  const { smallest, largest, specimens } = measured;
  const limit = acceptanceOf(criterion.limit);
  const range = guarded(limit, criterion.rule === 'guard-band' ? (criterion.guard ?? 0) : 0);
  const isMet = accepts(range, smallest) && accepts(range, largest);
  const tooFew = criterion.minSpecimens !== null && specimens < criterion.minSpecimens;
  const verdict = !isMet ? 'fail' : tooFew ? 'inconclusive' : 'pass';
  const asked = limitInWords(limit, criterion.limit.unit);
  const ends = `the smallest, ${smallest}, and the largest, ${largest}, of ${counted(specimens, 'measured tyre')}`;
  const why = `${ends} ${isMet ? 'meet' : 'do not both meet'} ${asked}`;
  const beyond = verdict === earlier.verdict ? measured.beyond : [];
  const evidence = withoutEvidence('none', null, specimens);
  return { ...judged(criterion, evidence, verdict, why), measured: { ...measured, beyond } };
}
