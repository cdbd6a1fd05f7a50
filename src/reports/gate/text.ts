import { problemLine } from '../../problem/problem.ts';
import type { GatedCriterion, GateResult } from '../../result/gate.ts';
import { listed, verdictWord } from '../text/names.ts';
import {
  inVerdictColour,
  named,
  type Page,
  pageOf,
  paragraph,
  section,
  sentence,
  type TextOptions,
} from '../text/page.ts';
import { table } from '../text/table.ts';
import { headline, reasonsOf, resultsSentence, sinceSentence, turnedBy, whatIfSentence } from './words.ts';

/** The gate for people: one row a criterion, then why what did not pass did not, then what could not be read. */
export function gateText(result: GateResult, options: TextOptions): string {
  const page = pageOf(options);
  const { judged, unreadable, unspecified, withdrawn, results, remarks, verdict } = result;
  const rows = judged.flatMap(({ construction, specification, criteria }) =>
    criteria.map((criterion, i) => [
      i === 0 ? `${construction.id}@${construction.revision}` : '',
      i === 0 ? `${specification.id}@${specification.version}` : '',
      criterion.id,
      String(criterion.evidence.length),
      {
        text: verdictWord(criterion.verdict),
        ink: (text: string) => inVerdictColour(page, criterion.verdict, text),
      },
    ]),
  );
  const columns = [
    { head: 'construction', align: 'left', least: 12 },
    { head: 'specification', align: 'left', least: 12 },
    { head: 'criterion', align: 'left', least: 10 },
    { head: 'runs', align: 'right' },
    { head: 'verdict', align: 'left' },
  ] as const;
  const open = judged.flatMap(({ construction, criteria }) =>
    [...groupedByReason(criteria)].flatMap(([reason, ids]) =>
      paragraph(page, `${named(construction.id)} ${listed(ids, 8)}: ${sentence(reason)}`, 2, 4),
    ),
  );
  const turned = turnedBy(result).flatMap(({ construction, criterion, before }) =>
    paragraph(
      page,
      `${named(construction.id)} ${named(criterion.id)}: ${verdictWord(before)} → ${verdictWord(criterion.verdict)}`,
      2,
      4,
    ),
  );
  const broken = unreadable.flatMap(({ problems }) =>
    problems.flatMap((problem) => paragraph(page, problemLine(problem), 2, 4)),
  );
  const namesOf = (all: GateResult['unspecified']) =>
    all.length === 0
      ? []
      : paragraph(page, all.map(({ id, revision }) => `${named(id)}@${named(revision)}`).join(', '));
  const said = [sinceSentence(result), whatIfSentence(result)].flatMap((text) =>
    text === null ? [] : paragraph(page, text, 0),
  );
  const lines = [
    ...paragraph(page, headline(result), 0).map((line) => inVerdictColour(page, verdict, line)),
    ...said,
    ...section(page, 'Turned by the limit tried out', turned),
    ...section(page, 'Criteria', rows.length > 0 ? table(page, columns, rows) : []),
    ...section(page, 'Why', open),
    ...section(page, 'Runs that could not be read', broken),
    ...section(page, 'Stored results', storedLines(page, result, results)),
    ...section(
      page,
      'Worth a look',
      remarks.flatMap((remark) => paragraph(page, problemLine(remark), 2, 4)),
    ),
    ...section(page, 'No specification applies to', namesOf(unspecified)),
    ...section(page, 'Withdrawn, not judged', namesOf(withdrawn)),
  ];
  return `${lines.join('\n')}\n`;
}

/** More of them are counted, not listed. */
const MOST_LISTED = 12;

/** Where the stored results lie: the stale ones with why, then the others, as far as there is room. */
function storedLines(page: Page, result: GateResult, results: GateResult['results']): string[] {
  const all = resultsSentence(result);
  if (all === null) return [];
  const stale = results.filter(({ state }) => state === 'stale');
  const inOrder = [...stale, ...results.filter(({ state }) => state === 'current')];
  const lines = inOrder
    .slice(0, Math.max(MOST_LISTED, stale.length))
    .flatMap(({ path, why }) =>
      paragraph(page, why === null ? `${path}: current` : `${path}: stale, ${why}`, 2, 4),
    );
  const rest = inOrder.length - Math.max(MOST_LISTED, stale.length);
  return [
    ...paragraph(page, all),
    ...lines,
    ...(rest > 0 ? paragraph(page, `and ${rest} more, current`) : []),
  ];
}

/** What did not pass, by its reason: one sentence for all criteria to which no run speaks. */
function groupedByReason(criteria: readonly GatedCriterion[]): Map<string, string[]> {
  const groups = new Map<string, string[]>();
  for (const criterion of criteria) {
    if (criterion.verdict === 'pass') continue;
    const reason = reasonsOf(criterion);
    groups.set(reason, [...(groups.get(reason) ?? []), named(criterion.id)]);
  }
  return groups;
}
