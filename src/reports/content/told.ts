import { isDrum, type Photo, type ReportedDrum, type ReportedRun } from '../../result/report.ts';
import type { Figure } from '../charts/figure.ts';
import type { Block } from '../document/blocks.ts';
import type { Language } from '../words/language.ts';
import { findingOf, notShown, uncertaintyOf } from './answer.ts';
import { drumFinding, drumNotShown, drumSubject, drumUncertainty } from './drum-answer.ts';
import { drumChief } from './drum-pictures.ts';
import { gramsBesideJoules } from './grams.ts';
import { chief } from './pictures.ts';
import { type Judged, type Subject, subjectsOf } from './subject.ts';

/** What one page tells of one subject, whether it was dropped on or run on the drum. */
export interface Told {
  readonly judged: Judged;
  /** Set for drop tests, whose subjects can be drawn beside each other. */
  readonly subject: Subject | null;
  readonly finding: string;
  readonly uncertainty: readonly string[];
  readonly notShown: readonly string[];
  /** Numbers of tyres, and of drops or failures. */
  readonly evidence: string;
  readonly photos: readonly Photo[];
  readonly grams: readonly Block[];
  readonly picture: (id: string) => Figure | null;
}

/**
 * @param short cuts a name to the room that a page has for it.
 */
export function toldOf(
  tests: readonly ReportedRun[],
  short: (name: string) => string,
  language: Language,
): Told[] {
  return tests.flatMap((test) =>
    isDrum(test)
      ? [drumTold(test, short, language)]
      : subjectsOf([test]).map((subject) => dropTold(shortened(subject, short), language)),
  );
}

function dropTold(subject: Subject, language: Language): Told {
  const { tyres, drops } = language.words;
  const { first, test } = subject;
  return {
    judged: subject,
    subject,
    finding: findingOf(subject, language),
    uncertainty: uncertaintyOf(subject, language),
    notShown: notShown(subject, language),
    evidence: first === null ? '—' : `${tyres(first.specimens)}, ${drops(first.drops)}`,
    photos: test.photos,
    grams: gramsBesideJoules([subject], language),
    picture: (id) => chief(subject, id, language),
  };
}

function drumTold(test: ReportedDrum, short: (name: string) => string, language: Language): Told {
  const { tyres, failures } = language.words;
  const { sample } = test.result;
  const subject = shortened(drumSubject(test), short);
  return {
    judged: subject,
    subject: null,
    finding: drumFinding(subject, language),
    uncertainty: drumUncertainty(subject, language),
    notShown: drumNotShown(subject, language),
    evidence: `${tyres(sample.specimens)}, ${failures(sample.failures)}`,
    photos: test.photos,
    grams: [],
    picture: (id) => drumChief(test, id, language),
  };
}

function shortened<Of extends Judged>(judged: Of, short: (name: string) => string): Of {
  return {
    ...judged,
    name: judged.name === null ? null : short(judged.name),
    criteria: judged.criteria.map((criterion) => ({ ...criterion, id: short(criterion.id) })),
  };
}
