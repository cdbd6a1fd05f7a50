import type { JudgedCriterion } from '../../result/criterion.ts';
import { named, versioned } from '../text/page.ts';
import { rangeText, share, valueText } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';
import type { Judged, Subject } from './subject.ts';

/** The finding in one sentence, for whoever reads no further. */
export function findingOf({ name, first }: Subject, language: Language): string {
  const { answer } = language.words;
  const what = name === null ? answer.theseTyres : answer.tyresOf(name);
  if (first === null) return answer.noEstimate({ what });
  const value = valueText(language, first, 1);
  return value === null ? answer.noValue({ what }) : answer.half({ what, value });
}

/** How well it is known: the interval, and the numbers behind it. */
export function uncertaintyOf({ first, test }: Subject, language: Language): string[] {
  const { answer, tyres, drops } = language.words;
  if (first === null) return [];
  const evidence = { tyres: tyres(first.specimens), drops: drops(first.drops) };
  const range = rangeText(language, first, 1);
  const { interval } = first;
  const known =
    range === null || interval === null
      ? answer.noInterval(evidence)
      : answer.interval({ ...evidence, level: share(language, interval.level), range });
  const bound = test.result.protocol.method === 'rising-height' ? [answer.onlyHere] : [];
  const broken = test.result.conformance.status === 'invalid' ? [answer.broken] : [];
  return [known, ...bound, ...broken];
}

/** The verdict in a sentence; null without a specification. */
export function judgementOf({ test, criteria, verdict }: Judged, language: Language): string | null {
  const { answer, list, verdict: word, criteria: words } = language.words;
  const by = test.result.specification;
  if (verdict === null || by === null) return null;
  const specification = versioned(by.id, by.version);
  const head = words.overall(word[verdict]);
  const ids = (wanted: readonly JudgedCriterion['verdict'][]) =>
    list(criteria.filter((own) => own.counted && wanted.includes(own.verdict)).map(({ id }) => named(id)));
  const said =
    verdict === 'pass' || verdict === 'waived'
      ? answer.pass({ specification, judged: ids(['pass', 'waived']) })
      : verdict === 'fail'
        ? answer.fail({ specification, failed: ids(['fail']) })
        : answer.open({ specification, open: ids(['inconclusive', 'not-tested', 'invalid', 'external']) });
  return `${head}. ${said}`;
}

/** What is left open, what would settle it, and who decides, as far as the run says. */
export function nextSteps({ test, criteria }: Judged, language: Language): string[] {
  const { answer, list, tyres } = language.words;
  const ids = (verdict: JudgedCriterion['verdict']) =>
    criteria.filter((own) => own.verdict === verdict).map(({ id }) => named(id));
  const undecided = criteria
    .filter(({ verdict, counted }) => verdict === 'inconclusive' && counted)
    .slice(0, 4)
    .map(({ id, more }) =>
      more?.specimens
        ? answer.more({ id: named(id), tyres: tyres(more.specimens) })
        : answer.noMore(named(id)),
    );
  const say = (names: string[], sentence: (ids: string) => string) =>
    names.length === 0 ? [] : [sentence(list(names, 5))];
  const steps = [
    ...say(ids('fail'), answer.failed),
    ...undecided,
    ...say(ids('not-tested'), answer.notTested),
    ...say(ids('external'), answer.external),
  ];
  const { decision } = test.request;
  return [
    ...(steps.length > 0 ? steps : [criteria.length === 0 ? answer.noSpecification : answer.settled]),
    decision === null ? answer.nobody : answer.decides(decision),
  ];
}

/** What a reader may not take from this. */
export function notShown({ test, first, criteria }: Subject, language: Language): string[] {
  const { notShown: words, list, tyres, drops } = language.words;
  const untouched = criteria.filter(({ verdict }) => verdict === 'not-tested').map(({ id }) => named(id));
  const { excluded } = test.result.conformance;
  return [
    words.road,
    words.batch,
    ...(first !== null && first.specimens < 100 ? [words.low({ tyres: tyres(first.specimens) })] : []),
    ...(test.result.uncertainty === undefined ? [words.apparatus] : []),
    ...(untouched.length > 0 ? [words.criteria(list(untouched, 5))] : []),
    ...(excluded > 0 ? [words.excluded(drops(excluded))] : []),
  ];
}

/** What weakens these numbers, then what holds of all. */
export function cautionsOf({ test, first }: Subject, language: Language): string[] {
  const { cautions, drops, tyres } = language.words;
  const { method } = test.result.protocol;
  const found: string[] = [];
  if (method === 'rising-height') found.push(cautions.rising);
  else if (first !== null && first.drops > first.specimens) {
    const isCalibrated = first.interval?.method === 'calibrated';
    const repeats = isCalibrated ? cautions.repeatsCalibrated : cautions.repeats;
    found.push(repeats({ drops: drops(first.drops), tyres: tyres(first.specimens) }));
  }
  const isProfile = first?.interval?.method === 'profile-likelihood';
  if (isProfile && method === 'up-and-down' && first.drops <= 60) found.push(cautions.narrow);
  if (test.result.verdict !== null) found.push(cautions.accredited);
  return [...found, ...cautions.always];
}
