import type { JudgedCriterion, Verdict } from '../../result/criterion.ts';
import type { Estimate } from '../../result/estimate.ts';
import type { ReportedRun, ReportedSample, ReportedTest } from '../../result/report.ts';
import { named, versioned } from '../text/page.ts';

/** What a judgement is told of: whatever was tested. */
export interface Judged {
  readonly test: ReportedRun;
  /** Of the construction, else of the run; null where neither has one. */
  readonly name: string | null;
  readonly criteria: readonly JudgedCriterion[];
  /** The headline. */
  readonly first: Estimate | null;
  readonly verdict: Verdict | null;
}

/** What one sentence of a report speaks of: the tyres of one strength in one test, with what was found of them. */
export interface Subject extends Judged {
  readonly test: ReportedTest;
  readonly sample: ReportedSample;
  readonly estimates: readonly Estimate[];
}

/** The subjects of tests, in their order: one a test, or one a sample where a test has several. */
export function subjectsOf(tests: readonly ReportedTest[]): Subject[] {
  return tests.flatMap((test) => test.samples.map((sample) => subjectOf(test, sample)));
}

function subjectOf(test: ReportedTest, sample: ReportedSample): Subject {
  const { result } = test;
  const isOwn = (entry: { readonly sample?: string }) =>
    sample.name === null || entry.sample === undefined || entry.sample === sample.name;
  const estimates = result.estimates.filter(isOwn);
  const summary = result.samples.find(({ name }) => name === sample.name);
  return {
    test,
    sample,
    name: nameOf(test, sample),
    estimates,
    criteria: result.criteria.filter(isOwn),
    first: estimates.find(({ variant }) => variant === undefined) ?? null,
    verdict: summary === undefined ? result.verdict : summary.verdict,
  };
}

function nameOf(test: ReportedTest, { name, construction }: ReportedSample): string | null {
  return name === null ? nameOfRun(test) : named(construction ?? name);
}

/** The constructions of a run, else the run. */
export function nameOfRun({ result, constructions }: ReportedRun): string | null {
  if (constructions.length > 0) {
    return constructions
      .slice(0, 3)
      .map(({ id, revision }) => versioned(id, revision))
      .join(', ');
  }
  return result.run === null ? null : named(result.run);
}

/** Grams of the tyres that were hit: how many were weighed, least, median and most; null where none was. */
export function massesOf({ sample }: Subject): {
  readonly n: number;
  readonly least: number;
  readonly median: number;
  readonly most: number;
} | null {
  const masses = sample.tyres.flatMap(({ mass }) => mass ?? []).sort((a, b) => a - b);
  const [least] = masses;
  if (least === undefined) return null;
  const middle = masses.length >> 1;
  const median = masses.length % 2 === 1 ? masses[middle]! : (masses[middle - 1]! + masses[middle]!) / 2;
  return { n: masses.length, least, median, most: masses.at(-1)! };
}
