import { counted } from '../../quantity/format.ts';
import type { ArchiveVerification } from '../../result/archive.ts';
import { jsonText } from '../json-text.ts';
import { named, type Page, pageOf, paragraph, section, type TextOptions } from '../text/page.ts';
import { table } from '../text/table.ts';

export type ArchiveReporter = (verification: ArchiveVerification, options: TextOptions) => string;

/** Whether an archive is whole, in words or as `tirelab.archive-verification/1`. */
export const archiveReporters = {
  text: archiveText,
  json: (verification, { version }) =>
    jsonText({
      schema: 'tirelab.archive-verification/1',
      tool: { name: 'tirelab', version },
      ...verification,
    }),
} as const satisfies Readonly<Record<string, ArchiveReporter>>;

/** A person looks at so many; the rest is in the JSON. */
const MOST = 50;

function archiveText(verification: ArchiveVerification, options: TextOptions): string {
  const { manifest, whole, files, missing, changed, asOf, until, ended, parts } = verification;
  const page = pageOf(options);
  const state = whole
    ? `${named(manifest)} is whole: ${counted(files, 'file')} with their hashes.`
    : `${named(manifest)} is not whole: ${counted(missing.length, 'file')} missing, ${counted(changed.length, 'file')} changed.`;
  const kept = ended
    ? `On ${asOf} the files need be kept no longer: their last day was ${until}.`
    : `The files must be kept until ${until}.`;
  return `${[
    ...paragraph(page, state, 0),
    ...paragraph(page, kept, 0),
    ...section(page, 'Missing', filesOf(page, missing)),
    ...section(page, 'Changed', filesOf(page, changed)),
    ...section(page, 'Kept parts', partsOf(page, parts)),
  ].join('\n')}\n`;
}

function filesOf(page: Page, files: ArchiveVerification['missing']): string[] {
  return files.slice(0, MOST).flatMap(({ role, path }) => paragraph(page, `${role} ${path}`, 2, 4));
}

function partsOf(page: Page, parts: ArchiveVerification['parts']): string[] {
  if (parts.length === 0) return [];
  const columns = [
    { head: 'specimen', align: 'left', least: 10 },
    { head: 'part', align: 'left', least: 8 },
    { head: 'place', align: 'left', least: 10 },
    { head: 'kept until', align: 'left' },
    { head: '', align: 'left' },
  ] as const;
  const rows = parts
    .slice(0, MOST)
    .map(({ specimen, part, place, until, ended }) => [
      named(specimen),
      named(part),
      named(place),
      until,
      ended ? 'may go' : '',
    ]);
  const rest = parts.length - MOST;
  return [...table(page, columns, rows), ...(rest > 0 ? paragraph(page, `and ${rest} more`) : [])];
}
