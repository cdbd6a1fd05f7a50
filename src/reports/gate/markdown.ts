import { echo } from '../../problem/echo.ts';
import { problemLine } from '../../problem/problem.ts';
import type { GatedCriterion, GateResult } from '../../result/gate.ts';
import { verdictWord } from '../text/names.ts';
import { sentence } from '../text/page.ts';
import { headline, reasonsOf, resultsSentence, sinceSentence, whatIfSentence } from './words.ts';

/** The gate as a table for a merge page or a step's summary. */
export function gateMarkdown(result: GateResult): string {
  const { judged, unreadable, remarks, verdict } = result;
  const rows = judged.flatMap(({ construction, specification, criteria }) =>
    criteria.map((criterion) =>
      [
        `${construction.id}@${construction.revision}`,
        `${specification.id}@${specification.version}`,
        criterion.id,
        verdictCell(criterion),
        sentence(reasonsOf(criterion)),
      ].map((cell, i) => (i === 3 ? cell : cellOf(cell))),
    ),
  );
  const table = [
    '| construction | specification | criterion | verdict | why |',
    '|---|---|---|---|---|',
    ...rows.map((row) => `| ${row.join(' | ')} |`),
  ];
  const said = [
    headline(result),
    sinceSentence(result),
    whatIfSentence(result),
    resultsSentence(result),
  ].flatMap((text) => (text === null ? [] : [cellOf(text), '']));
  const doubts = remarks.map((remark) => `- ${cellOf(problemLine(remark))}`);
  const broken = unreadable.flatMap(({ problems }) =>
    problems.map((problem) => `- ${cellOf(problemLine(problem))}`),
  );
  return [
    `### tirelab gate: ${verdictWord(verdict)}`,
    '',
    ...said,
    ...(rows.length > 0 ? [...table, ''] : []),
    ...(broken.length > 0 ? ['Runs that could not be read:', '', ...broken, ''] : []),
    ...(doubts.length > 0 ? ['Worth a look:', '', ...doubts, ''] : []),
  ].join('\n');
}

function verdictCell({ verdict, before }: GatedCriterion): string {
  const word = verdict === 'pass' ? 'pass' : `**${verdictWord(verdict)}**`;
  return before === undefined || before === verdict ? word : `${verdictWord(before)} → ${word}`;
}

/** Foreign text in a cell: no markup, no link, no new cell. */
function cellOf(text: string): string {
  return echo(text, 400)
    .replace(/[\\`*_[\]()#!|~]/g, '\\$&')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;');
}
