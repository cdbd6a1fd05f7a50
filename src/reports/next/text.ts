import { fixed } from '../../quantity/amount.ts';
import { counted, height, kilograms } from '../../quantity/format.ts';
import type { NextResult } from '../../result/next.ts';
import { estimateText, intervalText } from '../text/numbers.ts';
import { clean, type Page, pageOf, paragraph, section, sentence, type TextOptions } from '../text/page.ts';
import { cautionList, SAFETY } from '../text/safety.ts';

/** The advice for the person at the rig: what to set first, then why, then how the test stands. */
export function nextText(result: NextResult, options: TextOptions): string {
  const page = pageOf(options);
  const lines = [
    ...paragraph(page, headline(result), 0).map((line) => page.ink.bold(line)),
    ...(result.decision === 'height' ? paragraph(page, result.why, 0) : []),
    '',
    ...paragraph(page, madeText(result)),
    ...paragraph(page, remainingText(result)),
    ...paragraph(page, estimateLine(result)),
    ...section(page, 'After the crash', recovery(page, result)),
    ...section(
      page,
      'Notes',
      result.notes.flatMap((note) => paragraph(page, `- ${note}`, 2, 4)),
    ),
    ...section(page, 'Cautions', cautionList(page, SAFETY.nextDrop)),
  ];
  return `${lines.join('\n')}\n`;
}

/** One advice on one line, for `--follow`. */
export function followLine(result: NextResult, options: TextOptions): string {
  const page = pageOf(options);
  const { drops } = result.made;
  const why = result.decision === 'height' ? ` ${result.why}` : '';
  return `${clean(page, `${drops}  ${headline(result)}${why}`, 400)}\n`;
}

function headline(result: NextResult): string {
  if (result.decision !== 'height') return result.why;
  const { height: set, mass, energy, impactSpeed, specimen } = result;
  const what = [
    height(set!),
    ...(mass === null ? [] : [kilograms(mass)]),
    ...(energy === null ? [] : [`${fixed(energy, 2)} J`]),
    `${fixed(impactSpeed!, 2)} m/s`,
  ];
  return `Next drop: ${what.join(', ')}, ${SPECIMEN[specimen ?? 'any']}.`;
}

const SPECIMEN = {
  new: 'on a new tyre',
  same: 'on the same tyre',
  any: 'on a new tyre or a free site of the last one',
} as const;

function madeText({ made }: NextResult): string {
  const { drops, failures, specimens } = made;
  if (drops === 0) return 'Made so far: nothing.';
  return `Made so far: ${counted(drops, 'valid drop')} on ${counted(specimens, 'tyre')}, ${failures} failed.`;
}

function remainingText({ decision, remaining, remainingWhy }: NextResult): string {
  if (decision === 'stop') return 'Still to come: nothing.';
  if (remaining !== null) return `Still to come: at most ${counted(remaining, 'valid drop')}.`;
  return sentence(`Still to come: no limit can be named; ${remainingWhy}`);
}

function estimateLine({ estimate }: NextResult): string {
  if (estimate === null) return 'Median so far: none.';
  const range = estimate.interval === null ? '' : `, interval ${intervalText(estimate)}`;
  if (estimate.value !== null) return `Median so far: ${estimateText(estimate)}${range}.`;
  return sentence(`Median so far: no single value${range} (${estimate.why ?? 'no best fit'})`);
}

function recovery(page: Page, { recovery: found }: NextResult): string[] {
  if (found === null) return [];
  return [
    ...found.lost.flatMap((line) => paragraph(page, `- ${line}`, 2, 4)),
    ...paragraph(page, `${counted(found.usable, 'drop')} can still be used. ${found.advice}`),
  ];
}
