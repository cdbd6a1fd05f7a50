import type { ReportedRun } from '../../result/report.ts';
import { testedOn } from '../content/identity.ts';
import type { Cell } from '../document/blocks.ts';
import type { Language } from '../words/language.ts';
import type { Section } from './section.ts';

/** Each item that ISO/IEC 17025:2017, 7.8 asks of a test report: where it stands, or that it is missing. */
export function checklist(test: ReportedRun, hasConditions: boolean, language: Language): Section {
  const { headings, items, checklist: words } = language.words;
  const { request, result, constructions } = test;
  const at = (heading: string) => items.inSection(heading);
  const stated = (text: string | null, heading: string) => (text === null ? null : at(heading));
  const identity = headings.identification;
  const rows: [string, string | null][] = [
    [words.title, headings.report],
    [words.laboratory, stated(request.laboratory, identity)],
    [words.place, stated(request.place ?? request.laboratory, identity)],
    [words.identification, stated(request.report ?? result.run, identity)],
    [words.customer, stated(request.customer, identity)],
    [words.method, at(headings.method)],
    [words.item, constructions.length === 0 ? null : at(headings.items)],
    [words.received, stated(request.received, identity)],
    [words.tested, stated(testedOn(test), identity)],
    [words.issued, stated(request.issued, identity)],
    [words.sampling, null],
    [words.relates, at(identity)],
    [words.results, at(headings.results)],
    [words.departures, at(headings.deviations)],
    [words.authorised, stated(request.authorised, identity)],
    [words.external, at(identity)],
    [words.environment, hasConditions ? at(headings.conditions) : null],
    [words.conformity, result.specification === null ? null : at(headings.conformity)],
    [words.agreed, request.rule === null || request.agreed === null ? null : at(headings.conformity)],
    [words.uncertainty, at(headings.uncertainty)],
    [words.opinions, at(headings.cautions)],
    [words.replaced, at(identity)],
  ];
  return {
    heading: headings.checklist,
    blocks: [
      {
        kind: 'table',
        caption: headings.checklist,
        columns: [{ head: items.item }, { head: items.stands }],
        rows: rows.map(([item, where]): Cell[] => [
          { text: item },
          where === null ? { text: items.missing, isMissing: true } : { text: where },
        ]),
      },
    ],
  };
}
