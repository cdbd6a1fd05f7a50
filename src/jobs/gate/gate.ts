import type { Construction, Specification } from '../../documents/kinds.ts';
import { type InputError, ProblemList, problemLine } from '../../problem/problem.ts';
import type { GatedConstruction, GateResult } from '../../result/gate.ts';
import { overallOf } from '../../verdict/overall.ts';
import { criteriaNamed, type WhatIf, withLimit } from '../../verdict/what-if.ts';
import { type ChangedFiles, changedFiles } from './changed-files.ts';
import { checkDocuments } from './document-checks.ts';
import type { EvidenceSource } from './evidence-source.ts';
import { type Evidence, hold } from './hold.ts';
import { checkReleased } from './released.ts';
import { nameOf, type Repository, repositoryOf } from './repository.ts';
import { sourcesOf } from './sources.ts';

/** What is asked of a gate beside the paths. */
export interface GateQuestion {
  /** Of tirelab itself: stored results of another version are stale. */
  readonly version: string;
  /** The day by which waivers are looked at, such as 2026-03-16. */
  readonly asOf: string;
  /** Limits to try out. */
  readonly whatIf?: readonly WhatIf[];
  /** Judge only what changed since this commit, and what depends on it. */
  readonly since?: string | null;
  /** The commit in which released revisions must be as they are now. */
  readonly base?: string | null;
  readonly onProgress?: (done: number, all: number) => void;
}

/** A construction and a specification that applies to it. */
interface Pair {
  readonly construction: Construction;
  readonly specification: Specification;
}

/**
 * Judges every construction under some paths by every specification that applies to it, from all its runs. Every
 * criterion counts, the untested ones too: a construction enters the range only through its whole specification.
 * Where several runs speak to one criterion the worst verdict stands. Nothing is written.
 *
 * @throws InputError with the problems of constructions, specifications and waivers, and of runs that name what does
 * not exist, all of them; what else is wrong with a run is reported beside the others.
 */
export async function gate(paths: readonly string[], question: GateQuestion): Promise<GateResult> {
  const { version, asOf, whatIf = [], since = null, base = null } = question;
  const problems = new ProblemList(100);
  const repository = repositoryOf(paths, problems);
  const checks = checkDocuments(repository);
  for (const problem of checks.problems) problems.add(problem);
  if (base !== null) for (const problem of checkReleased(paths, base, repository)) problems.add(problem);
  const { sources, results, unreadable } = await sourcesOf(repository, version, problems);
  for (const problem of unmetQuestions(repository, whatIf)) problems.add(problem);
  if (!problems.isEmpty) addOthers(problems, unreadable);
  problems.throwIfAny();

  const { pairs, unspecified, withdrawn } = pairsOf(repository);
  const changes = since === null ? null : changedFiles(paths, since);
  const asked =
    changes === null ? pairs : pairs.filter((pair) => isTouched(pair, repository, sources, changes));
  const evidence = await evidenceFor(asked, sources, question.onProgress);
  const repeated = new Set(sources.flatMap(({ replaces }) => replaces ?? []));
  const judged = asked.map((pair): GatedConstruction => {
    const own = (evidence.get(pair.construction) ?? []).filter(
      ({ specification }) => specification === pair.specification,
    );
    return hold(pair, own, { waivers: repository.waivers, asOf, whatIf, repeated });
  });
  return {
    judged,
    unreadable,
    unspecified: unspecified.map(named),
    withdrawn: withdrawn.map(named),
    results,
    remarks: checks.remarks,
    asOf: isDated(judged, repository) ? asOf : null,
    whatIf: whatIf.map(({ text }) => text),
    since: since === null ? null : { reference: since, unchanged: pairs.length - asked.length },
    verdict:
      judged.length === 0 && pairs.length > 0 ? 'pass' : overallOf(judged.map(({ verdict }) => verdict)),
  };
}

/** Where nothing is judged, what would be told beside the verdicts is told as well: a person mends all in one go. */
function addOthers(problems: ProblemList, unreadable: GateResult['unreadable']): void {
  const told = new Set(problems.all().map(problemLine));
  for (const problem of unreadable.flatMap((entry) => entry.problems)) {
    if (!told.has(problemLine(problem))) problems.add(problem);
    told.add(problemLine(problem));
  }
}

function pairsOf({ constructions, specifications }: Repository) {
  const pairs: Pair[] = [];
  const unspecified: Construction[] = [];
  const withdrawn: Construction[] = [];
  for (const construction of constructions) {
    if (construction.status === 'withdrawn') {
      withdrawn.push(construction);
      continue;
    }
    const applying = specifications.filter((specification) => appliesTo(specification, construction));
    if (applying.length === 0) unspecified.push(construction);
    pairs.push(...applying.map((specification) => ({ construction, specification })));
  }
  return { pairs, unspecified, withdrawn };
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

/** Whether anything that the verdict rests on has changed: documents, waivers, runs and all that they name. */
function isTouched(
  { construction, specification }: Pair,
  { waivers }: Repository,
  sources: readonly EvidenceSource[],
  changes: ChangedFiles,
): boolean {
  const [tested, judgedBy] = [nameOf(construction), nameOf(specification)];
  return changes.touch([
    construction.source.path,
    specification.source.path,
    ...waivers.flatMap((waiver) =>
      waiver.construction === tested && waiver.specification === judgedBy ? [waiver.source.path] : [],
    ),
    ...sources.flatMap(({ constructions, files }) => (constructions.has(tested) ? files : [])),
  ]);
}

/** Takes the evidence run by run, so that the logs of one are forgotten before the next is read. */
async function evidenceFor(
  pairs: readonly Pair[],
  sources: readonly EvidenceSource[],
  onProgress: GateQuestion['onProgress'],
): Promise<Map<Construction, Evidence[]>> {
  const pairsOfName = new Map<string, Pair[]>();
  for (const pair of pairs) {
    const name = nameOf(pair.construction);
    pairsOfName.set(name, [...(pairsOfName.get(name) ?? []), pair]);
  }
  const evidence = new Map<Construction, Evidence[]>();
  for (const [i, source] of sources.entries()) {
    onProgress?.(i, sources.length);
    const own = [...source.constructions].flatMap((name) => pairsOfName.get(name) ?? []);
    if (own.length === 0) continue;
    const judged = await source.judge([...new Set(own.map(({ specification }) => specification))]);
    for (const { construction, specification } of own) {
      const judgement = judged?.get(nameOf(specification));
      if (judgement === undefined) continue;
      const { run, path } = source;
      const entry = { specification, run, path, ...judgement };
      evidence.set(construction, [...(evidence.get(construction) ?? []), entry]);
    }
  }
  onProgress?.(sources.length, sources.length);
  return evidence;
}

/** Limits to try out of which no criterion is, or that are of another dimension. */
function unmetQuestions({ specifications }: Repository, whatIf: readonly WhatIf[]): InputError['problems'] {
  return whatIf.flatMap((question) => {
    const refuse = (message: string) => ({
      file: '--what-if',
      line: null,
      column: null,
      code: 'what-if',
      message,
    });
    const criteria = criteriaNamed(specifications, question);
    if (criteria.length === 0) {
      const ids = [...new Set(specifications.flatMap((one) => one.criteria.map(({ id }) => id)))];
      return [refuse(`found the criterion "${question.criterion}", expected one of ${ids.join(', ')}`)];
    }
    return criteria.flatMap((criterion) => {
      const moved = withLimit(criterion, question);
      return moved.ok ? [] : [refuse(moved.why)];
    });
  });
}

/** Whether the day had a say: a waiver was looked at. */
function isDated(judged: readonly GatedConstruction[], { waivers }: Repository): boolean {
  const names = new Set(judged.map(({ construction }) => `${construction.id}@${construction.revision}`));
  return waivers.some(({ construction }) => names.has(construction));
}

function named({ id, revision, source }: Construction) {
  return { id, revision, path: source.path };
}
