import { Readable } from 'node:stream';
import type { Construction, Specification } from '../../documents/kinds.ts';
import { InputError } from '../../problem/problem.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import type { JudgedCriterion, Verdict } from '../../result/criterion.ts';
import type { EnduranceResult } from '../../result/endurance.ts';
import type { GatedConstruction, GatedCriterion, GateResult } from '../../result/gate.ts';
import { overallOf } from '../../verdict/overall.ts';
import { analyzeDocuments } from '../analyze.ts';
import { type Documents, documentsOf } from '../documents-of.ts';
import { nameOf, repositoryOf } from './register.ts';

/** A run with its documents, read once and judged by each specification that applies. */
interface ReadRun {
  readonly path: string;
  readonly documents: Documents;
}

/**
 * Judges every construction under some paths by every specification that applies to it, from all its runs. Every
 * criterion counts, the untested ones too: a construction enters the range only through its whole specification.
 * Where several runs speak to one criterion the worst verdict stands.
 *
 * @throws InputError with the problems of constructions and specifications; those of a run are reported with it.
 */
export async function gate(paths: readonly string[]): Promise<GateResult> {
  const repository = repositoryOf(paths);
  const runs: ReadRun[] = [];
  const unreadable: { path: string; problems: InputError['problems'] }[] = [];
  const guarded = async <Value>(path: string, read: () => Value | Promise<Value>): Promise<Value | null> => {
    try {
      return await read();
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      unreadable.push({ path, problems: error.problems });
      return null;
    }
  };
  for (const path of repository.runs) {
    const documents = await guarded(path, () => documentsOf({ kind: 'run', path }, Readable.from([])));
    if (documents !== null) runs.push({ path, documents });
  }
  // A session speaks of several constructions: its logs are read once for each specification, not once for each of them.
  const analysed = new Map<string, Promise<ImpactResult | EnduranceResult | null>>();
  const analysis = (run: ReadRun, specification: Specification) => {
    const key = `${run.path}\n${nameOf(specification)}`;
    const known = analysed.get(key);
    if (known !== undefined) return known;
    const made = guarded(run.path, () => analyzeDocuments({ ...run.documents, specification }));
    analysed.set(key, made);
    return made;
  };
  const judged: GatedConstruction[] = [];
  const unspecified: Construction[] = [];
  for (const construction of repository.constructions) {
    const applying = repository.specifications.filter((specification) =>
      appliesTo(specification, construction),
    );
    if (applying.length === 0) unspecified.push(construction);
    const own = runs.filter(({ documents }) =>
      documents.constructions.some((tested) => nameOf(tested) === nameOf(construction)),
    );
    for (const specification of applying) {
      const results: { run: ReadRun; result: ImpactResult | EnduranceResult }[] = [];
      for (const run of own) {
        const result = await analysis(run, specification);
        if (result !== null) results.push({ run, result });
      }
      judged.push(hold(construction, specification, results));
    }
  }
  return {
    judged,
    unreadable: distinct(unreadable),
    unspecified: unspecified.map(({ id, revision, source }) => ({ id, revision, path: source.path })),
    verdict: overallOf(judged.map(({ verdict }) => verdict)),
  };
}

/** A specification applies where each key of its `appliesTo` is what the construction says. */
function appliesTo({ appliesTo: asked }: Specification, construction: Construction): boolean {
  const said: Readonly<Record<string, string | null | undefined>> = {
    ...construction.factors,
    id: construction.id,
    category: construction.category,
    size: construction.size,
  };
  return Object.entries(asked).every(([key, value]) => said[key] === value);
}

function hold(
  construction: Construction,
  specification: Specification,
  results: readonly { readonly run: ReadRun; readonly result: ImpactResult | EnduranceResult }[],
): GatedConstruction {
  const criteria = specification.criteria.map(({ id, external }): GatedCriterion => {
    const evidence = results.flatMap(({ run, result }) =>
      result.criteria
        .filter((judged) => judged.id === id && speaksFor(judged, construction))
        .map((judged) => ({ run: run.documents.run ?? run.path, path: run.path, judged })),
    );
    return {
      id,
      ...joined(
        evidence.map(({ judged }) => judged),
        external,
      ),
      evidence,
    };
  });
  return {
    construction: { id: construction.id, revision: construction.revision, path: construction.source.path },
    specification: { id: specification.id, version: specification.version, path: specification.source.path },
    criteria,
    verdict: overallOf(criteria.map(({ verdict }) => verdict)),
  };
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
  evidence: readonly JudgedCriterion[],
  external: string | null,
): { readonly verdict: Verdict; readonly why: string } {
  if (evidence.length === 0) {
    if (external !== null) return { verdict: 'external', why: `to be shown outside this lab (${external})` };
    return { verdict: 'not-tested', why: 'no run speaks to it' };
  }
  const verdict = overallOf(evidence.map((judged) => judged.verdict));
  return { verdict, why: evidence.find((judged) => judged.verdict === verdict)!.why };
}

/** A run is said once, however many specifications would have judged it. */
function distinct(
  unreadable: readonly { path: string; problems: InputError['problems'] }[],
): GateResult['unreadable'] {
  return [...new Map(unreadable.map((entry) => [entry.path, entry])).values()];
}
