import { problemLine } from '../../problem/problem.ts';
import { counted } from '../../quantity/format.ts';
import type { GateResult } from '../../result/gate.ts';
import { verdictWord } from '../text/names.ts';
import {
  inVerdictColour,
  named,
  pageOf,
  paragraph,
  section,
  sentence,
  type TextOptions,
} from '../text/page.ts';
import { table } from '../text/table.ts';

/** The gate for people: one row a criterion, then why what did not pass did not, then what could not be read. */
export function gateText(result: GateResult, options: TextOptions): string {
  const page = pageOf(options);
  const { judged, unreadable, unspecified, verdict } = result;
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
    criteria
      .filter((criterion) => criterion.verdict !== 'pass')
      .flatMap(({ id, why }) =>
        paragraph(page, `${named(construction.id)} ${named(id)}: ${sentence(why)}`, 2, 4),
      ),
  );
  const broken = unreadable.flatMap(({ problems }) =>
    problems.flatMap((problem) => paragraph(page, problemLine(problem), 2, 4)),
  );
  const without = unspecified.map(({ id, revision }) => `${named(id)}@${named(revision)}`).join(', ');
  const size = `${counted(judged.length, 'construction')} judged`;
  const lines = [
    ...paragraph(page, `${size}: ${verdictWord(verdict)}.`, 0).map((line) =>
      inVerdictColour(page, verdict, line),
    ),
    ...section(page, 'Criteria', rows.length > 0 ? table(page, columns, rows) : []),
    ...section(page, 'Why', open),
    ...section(page, 'Runs that could not be read', broken),
    ...section(page, 'No specification applies to', without === '' ? [] : paragraph(page, without)),
  ];
  return `${lines.join('\n')}\n`;
}
