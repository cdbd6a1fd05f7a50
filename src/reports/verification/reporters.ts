import { counted } from '../../quantity/format.ts';
import type { Verification } from '../../result/verification.ts';
import { jsonText } from '../json-text.ts';
import { named, pageOf, paragraph, section, type TextOptions } from '../text/page.ts';

export type VerificationReporter = (verification: Verification, options: TextOptions) => string;

/** Whether a stored result follows from its inputs, in words or as `tirelab.verification/1`. */
export const verificationReporters = {
  text: verificationText,
  json: (verification, { version }) =>
    jsonText({ schema: 'tirelab.verification/1', tool: { name: 'tirelab', version }, ...verification }),
} as const satisfies Readonly<Record<string, VerificationReporter>>;

export type VerificationFormat = keyof typeof verificationReporters;

/** More differences than these are counted, not listed. */
const MOST = 12;

function verificationText(
  { result, follows, changed, differences }: Verification,
  options: TextOptions,
): string {
  const page = pageOf(options);
  const verdict = follows
    ? `${named(result)} follows from its inputs.`
    : `${named(result)} does not follow from its inputs: ${counted(changed.length, 'input')} changed, ${counted(differences.length, 'difference')}.`;
  const listed = differences
    .slice(0, MOST)
    .flatMap(({ at, stored, recomputed }) =>
      paragraph(page, `${at}: stored ${stored}, recomputed ${recomputed}`, 2, 4),
    );
  const rest = differences.length - MOST;
  return `${[
    ...paragraph(page, verdict, 0),
    ...section(
      page,
      'Inputs that changed',
      changed.flatMap(({ role, path }) => paragraph(page, `${role} ${named(path)}`)),
    ),
    ...section(page, 'Differences', rest > 0 ? [...listed, ...paragraph(page, `and ${rest} more`)] : listed),
  ].join('\n')}\n`;
}
