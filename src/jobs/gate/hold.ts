import type { Construction, Criterion, Specification, Waiver } from '../../documents/kinds.ts';
import { echo } from '../../problem/echo.ts';
import type { JudgedCriterion, Verdict } from '../../result/criterion.ts';
import type { AppliedWaiver, GatedConstruction, GatedCriterion, GateEvidence } from '../../result/gate.ts';
import { overallOf } from '../../verdict/overall.ts';
import { rejudge } from '../../verdict/rejudge.ts';
import { waive } from '../../verdict/waive.ts';
import { type WhatIf, withLimit } from '../../verdict/what-if.ts';
import { nameOf } from './repository.ts';

/** What one run says of a specification. */
export interface Evidence {
  readonly specification: Specification;
  readonly run: string;
  readonly path: string;
  readonly result: string | null;
  readonly criteria: readonly JudgedCriterion[];
}

interface Terms {
  readonly waivers: readonly Waiver[];
  readonly asOf: string;
  readonly whatIf: readonly WhatIf[];
  /** Runs that another one repeats: kept and said, but not counted. */
  readonly repeated: ReadonlySet<string>;
}

/** Holds a construction against a specification: each criterion by all the runs that speak to it, and its waivers. */
export function hold(
  {
    construction,
    specification,
  }: { readonly construction: Construction; readonly specification: Specification },
  evidence: readonly Evidence[],
  terms: Terms,
): GatedConstruction {
  const waivers = terms.waivers.filter(
    (waiver) =>
      waiver.construction === nameOf(construction) && waiver.specification === nameOf(specification),
  );
  const criteria = specification.criteria.map((criterion) =>
    holdCriterion(criterion, evidenceOf(criterion, construction, evidence), {
      ...terms,
      waivers: waivers.filter((waiver) => waiver.criterion === criterion.id),
    }),
  );
  return {
    construction: { id: construction.id, revision: construction.revision, path: construction.source.path },
    specification: { id: specification.id, version: specification.version, path: specification.source.path },
    criteria,
    verdict: overallOf(criteria.map(({ verdict }) => verdict)),
  };
}

function holdCriterion(
  criterion: Criterion,
  evidence: readonly GateEvidence[],
  terms: Terms,
): GatedCriterion {
  const { waivers, asOf, whatIf, repeated } = terms;
  const counting = evidence.filter(({ run }) => !repeated.has(run));
  const asides = evidence.filter(({ run }) => repeated.has(run));
  const tried = whatIf.filter((question) => question.criterion === criterion.id);
  const moved = tried.reduce((limited, question) => {
    const next = withLimit(limited, question);
    return next.ok ? next.value : limited;
  }, criterion);
  const judge = (by: (judged: JudgedCriterion) => JudgedCriterion) => {
    const judgedBy = counting.map((entry) => ({ ...entry, judged: by(entry.judged) }));
    const { verdict, why } = joined(judgedBy, criterion);
    return { judgedBy, why, ...waive(criterion, verdict, waivers, asOf), insteadOf: verdict };
  };
  const { judgedBy, verdict, why, waiver, notes, insteadOf } = judge((judged) =>
    tried.length > 0 ? rejudge(moved, judged) : judged,
  );
  return {
    id: criterion.id,
    verdict,
    why,
    safety: criterion.safety,
    waiver: waiver && applied(waiver, insteadOf),
    notes: [...notes, ...asides.map(({ run }) => `run ${echo(run)} is set aside: it was repeated`)],
    ...(tried.length > 0 ? { before: judge((judged) => judged).verdict } : {}),
    evidence: judgedBy,
  };
}

function evidenceOf(
  { id }: Criterion,
  construction: Construction,
  evidence: readonly Evidence[],
): GateEvidence[] {
  return evidence.flatMap(({ run, path, result, criteria }) =>
    criteria
      .filter((judged) => judged.id === id && speaksFor(judged, construction))
      .map((judged) => ({ run, path, result, judged })),
  );
}

/** Whether a judged criterion rests on this run's own evidence, and on tyres of this construction. */
function speaksFor(judged: JudgedCriterion, construction: Construction): boolean {
  const of = judged.construction;
  return (
    judged.counted &&
    (of === undefined || of === null || of === construction.id || of === nameOf(construction))
  );
}

function joined(
  evidence: readonly GateEvidence[],
  { external }: Criterion,
): { readonly verdict: Verdict; readonly why: string } {
  if (evidence.length === 0) {
    if (external !== null)
      return { verdict: 'external', why: `to be shown outside this lab (${echo(external)})` };
    return { verdict: 'not-tested', why: 'no run speaks to it' };
  }
  const verdict = overallOf(evidence.map(({ judged }) => judged.verdict));
  return { verdict, why: evidence.find(({ judged }) => judged.verdict === verdict)!.judged.why };
}

function applied(waiver: Waiver, insteadOf: Verdict): AppliedWaiver {
  const { id, source, owner, role, reason, expires, batches, market } = waiver;
  return { id, path: source.path, owner, role, reason, expires, batches, market, insteadOf };
}
