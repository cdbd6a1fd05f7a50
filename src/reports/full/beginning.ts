import type { ReportedRun, ReportedTest } from '../../result/report.ts';
import { findingOf, judgementOf, nextSteps, notShown, uncertaintyOf } from '../content/answer.ts';
import { criteriaTable } from '../content/criteria-table.ts';
import { testedOn } from '../content/identity.ts';
import { provisional } from '../content/provisional.ts';
import { subjectsOf } from '../content/subject.ts';
import { type Block, heading, list, paragraph } from '../document/blocks.ts';
import { named, versioned } from '../text/page.ts';
import type { Language } from '../words/language.ts';
import type { Section } from './section.ts';

/** More criteria than this are counted only. */
const MOST_CRITERIA = 100;

/** Question and answer: first what was found, how sure, and how it was judged. */
export function answer(test: ReportedTest, language: Language): Section {
  const { headings, items } = language.words;
  const { question } = test.request;
  const blocks = subjectsOf([test]).flatMap((subject): Block[] => {
    const judged = judgementOf(subject, language);
    return [
      paragraph(findingOf(subject, language), 'lead'),
      paragraph(uncertaintyOf(subject, language).join(' ')),
      ...(judged === null || subject.verdict === null
        ? []
        : [{ kind: 'verdict', verdict: subject.verdict, text: judged } as const]),
      ...criteriaTable(subject.criteria, MOST_CRITERIA, language),
      heading(headings.next, 3),
      ...list(nextSteps(subject, language)),
      heading(headings.notShown, 3),
      ...list(notShown(subject, language)),
    ];
  });
  return {
    heading: headings.answer,
    blocks: [
      { kind: 'terms', rows: [{ term: items.question, text: question }] },
      ...provisional(test, language),
      ...blocks,
    ],
  };
}

/** Who asked, who answers for it, and which documents hold. */
export function identification(test: ReportedRun, language: Language, version: string): Section {
  const { headings, items, texts } = language.words;
  const { request, result, title } = test;
  const { run, protocol, rig, specification } = result;
  const term = (name: string, text: string | null) => ({ term: name, text });
  return {
    heading: headings.identification,
    blocks: [
      {
        kind: 'terms',
        rows: [
          term(items.report, request.report),
          term(items.issued, request.issued),
          term(items.laboratory, request.laboratory),
          term(items.place, request.place),
          term(items.customer, request.customer),
          term(items.authorised, request.authorised),
          term(items.received, request.received),
          term(items.tested, testedOn(test)),
          term(items.replaces, request.replaces ?? texts.noReplacement),
          term(items.run, [run, title].filter((part) => part !== null).join(' — ') || null),
          term(
            items.protocol,
            versioned(protocol.id, protocol.version) +
              (protocol.title === null ? '' : ` — ${named(protocol.title)}`),
          ),
          term(items.rig, rig && versioned(rig.id, rig.config)),
          term(items.specification, specification && versioned(specification.id, specification.version)),
          term(items.tool, `tirelab ${version}`),
        ],
      },
      paragraph(texts.resultsRelate),
      paragraph(texts.reproduce),
      paragraph(texts.external),
      paragraph(texts.fromCustomer),
    ],
  };
}
