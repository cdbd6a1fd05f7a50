import type { ReportedDrum } from '../../result/report.ts';
import { named } from '../text/page.ts';
import { rangeText, share, valueText } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';
import { type Judged, nameOfRun } from './subject.ts';

/** A drum test as a subject of sentences: its headline is the distance that half of the tyres last. */
export interface DrumSubject extends Judged {
  readonly test: ReportedDrum;
}

export function drumSubject(test: ReportedDrum): DrumSubject {
  const { estimates, criteria, verdict } = test.result;
  const half = estimates.find(
    ({ quantity, probability, variant }) =>
      quantity === 'lifeQuantile' && probability === 0.5 && variant === undefined,
  );
  return { test, name: nameOfRun(test), criteria, verdict, first: half ?? estimates[0] ?? null };
}

/** The finding in one sentence. */
export function drumFinding({ name, first }: DrumSubject, language: Language): string {
  const { answer } = language.words;
  const what = name === null ? answer.theseTyres : answer.tyresOf(name);
  if (first === null) return answer.noEstimate({ what });
  const value = first.quantity === 'lifeQuantile' ? valueText(language, first, 1) : null;
  return value === null ? answer.noLife({ what }) : answer.lasts({ what, value });
}

/** The interval, and the numbers of tyres and failures behind it. */
export function drumUncertainty({ first, test }: DrumSubject, language: Language): string[] {
  const { answer, tyres, failures } = language.words;
  if (first === null) return [];
  const { sample, conformance } = test.result;
  const evidence = { tyres: tyres(sample.specimens), drops: failures(sample.failures) };
  const range = rangeText(language, first, 1);
  const known =
    range === null || first.interval === null
      ? answer.noInterval(evidence)
      : answer.interval({ ...evidence, level: share(language, first.interval.level), range });
  return [known, ...(conformance.status === 'invalid' ? [answer.broken] : [])];
}

/** What a reader may not take from a drum test. */
export function drumNotShown({ test, criteria }: DrumSubject, language: Language): string[] {
  const { notShown: words, list, tyres, failures } = language.words;
  const { sample } = test.result;
  const untouched = criteria.filter(({ verdict }) => verdict === 'not-tested').map(({ id }) => named(id));
  return [
    words.drum,
    words.batch,
    words.few({ failures: failures(sample.failures), tyres: tyres(sample.specimens) }),
    words.apparatus,
    ...(untouched.length > 0 ? [words.criteria(list(untouched, 5))] : []),
  ];
}

export function drumCautions({ test }: DrumSubject, { words: { cautions } }: Language): string[] {
  return [...(test.result.verdict === null ? [] : [cautions.accredited]), ...cautions.drumAlways];
}
