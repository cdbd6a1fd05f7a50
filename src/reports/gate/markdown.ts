import { echo } from '../../problem/echo.ts';
import { problemLine } from '../../problem/problem.ts';
import type { GateResult } from '../../result/gate.ts';
import { verdictWord } from '../text/names.ts';
import { sentence } from '../text/page.ts';

/** The gate as a table for a merge page or a step's summary. */
export function gateMarkdown({ judged, unreadable, verdict }: GateResult): string {
  const rows = judged.flatMap(({ construction, specification, criteria }) =>
    criteria.map(({ id, verdict: own, why }) =>
      [
        `${construction.id}@${construction.revision}`,
        `${specification.id}@${specification.version}`,
        id,
        own === 'pass' ? 'pass' : `**${verdictWord(own)}**`,
        sentence(why),
      ].map((cell, i) => (i === 3 ? cell : cellOf(cell))),
    ),
  );
  const table = [
    '| construction | specification | criterion | verdict | why |',
    '|---|---|---|---|---|',
    ...rows.map((row) => `| ${row.join(' | ')} |`),
  ];
  const broken = unreadable.flatMap(({ problems }) =>
    problems.map((problem) => `- ${cellOf(problemLine(problem))}`),
  );
  return [
    `### tirelab gate: ${verdictWord(verdict)}`,
    '',
    ...(rows.length > 0 ? [...table, ''] : []),
    ...(broken.length > 0 ? ['Runs that could not be read:', '', ...broken, ''] : []),
  ].join('\n');
}

/** Foreign text in a cell: no markup, no link, no new cell. */
function cellOf(text: string): string {
  return echo(text, 400)
    .replace(/[\\`*_[\]()#!|~]/g, '\\$&')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;');
}
