import type { Criterion, Specification } from '../documents/kinds.ts';
import { echo } from '../problem/echo.ts';
import type { JudgedCriterion, Verdict } from '../result/criterion.ts';
import { type Evidence, type Measurement, withoutEvidence } from './evidence.ts';
import { judge, judged } from './judge.ts';
import { judgeEach } from './judge-each.ts';
import { overallVerdict } from './overall.ts';

/** What one run has to say about a specification. */
export interface RunEvidence {
  readonly protocol: { readonly id: string; readonly version: string };
  /** The evidence for a criterion of this run's protocol, in the unit of its limit. */
  evidenceFor(criterion: Criterion): Evidence;
  /** Every specimen of the run with what was measured on it, for criteria that look at each one. */
  measurementsFor(criterion: Criterion): readonly Measurement[];
}

/**
 * Judges the criteria of a specification that a run can speak to. Criteria of other protocols are listed as not
 * tested and not counted; a pinned version that differs from the run's makes its criterion invalid.
 */
export function judgeSpecification(
  specification: Specification,
  run: RunEvidence,
): { readonly criteria: readonly JudgedCriterion[]; readonly verdict: Verdict } {
  const criteria = specification.criteria.map((criterion) => judgeFor(run, criterion));
  return { criteria, verdict: overallVerdict(criteria) };
}

function judgeFor(run: RunEvidence, criterion: Criterion): JudgedCriterion {
  const nothing = withoutEvidence('none', null);
  if (criterion.external !== null) {
    const why = `to be shown outside this lab (${echo(criterion.external)}); not judged here`;
    return judged(criterion, nothing, 'external', why);
  }
  const asked = criterion.protocol;
  if (asked !== null && asked.id !== run.protocol.id) {
    const why = `rests on protocol ${named(asked)}, and this run followed ${named(run.protocol)}`;
    return judged(criterion, nothing, 'not-tested', why, false);
  }
  if (asked !== null && asked.version !== null && asked.version !== run.protocol.version) {
    const why = `rests on protocol ${named(asked)}, and this run followed version ${echo(run.protocol.version)}`;
    return judge(criterion, withoutEvidence('invalid', why));
  }
  if (criterion.each) return judgeEach(criterion, run.measurementsFor(criterion));
  return judge(criterion, run.evidenceFor(criterion));
}

function named({ id, version }: { readonly id: string; readonly version: string | null }): string {
  return echo(id) + (version === null ? '' : `@${echo(version)}`);
}
