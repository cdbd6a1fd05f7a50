import type { Explanation } from '../result/explanation.ts';
import { jsonText } from './json-text.ts';
import { type Page, paragraph, sentence } from './text/page.ts';

/** The document of `explain --json`. */
export function explanationDocument(explanations: readonly Explanation[]): string {
  return jsonText({ schema: 'tirelab.explanations/1', explanations });
}

/** One code in full, or a line for each of several. */
export function explanationText(page: Page, explanations: readonly Explanation[]): string {
  const [only, ...others] = explanations;
  const lines =
    only !== undefined && others.length === 0
      ? inFull(page, only)
      : explanations.flatMap(({ code, severity, title }) =>
          paragraph(page, `${code}  ${title} (${severity})`, 0, 9),
        );
  return `${lines.join('\n')}\n`;
}

function inFull(page: Page, explanation: Explanation): string[] {
  const { code, title, severity, scope, heavier, effect, excuses, seen, from, unseen } = explanation;
  const rows: [string, string][] = [
    ['severity', `${severity} as a rule, of scope ${scope}`],
    ['effect', sentence(effect)],
  ];
  if (heavier !== null) {
    rows.push([
      'heavier',
      `${heavier.severity}, of scope ${heavier.scope}, where the protocol names it (heavier: [${code}])`,
    ]);
  }
  if (seen.length > 0) rows.push(['seen from', `${seen.join(', ')}: ${from ?? ''}`]);
  if (unseen !== null) rows.push(['not seen', unseen]);
  rows.push([
    'as a reason',
    excuses
      ? 'may be given for leaving out a drop (reason in the log or the amendments)'
      : 'may not be given for leaving out a drop: it speaks of a result or of a whole series',
  ]);
  return [
    ...paragraph(page, `${code}: ${title}`, 0).map((line) => page.ink.bold(line)),
    ...rows.flatMap(([label, text]) => {
      const [first = '', ...rest] = paragraph(page, text, 15);
      return [`  ${page.ink.dim(label.padEnd(13))}${first.trimStart()}`, ...rest];
    }),
  ];
}
