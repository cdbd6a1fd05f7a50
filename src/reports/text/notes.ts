import type { ImpactResult } from '../../result/analysis.ts';
import { type Page, paragraph, sentence } from './page.ts';

/** Notes beyond this many are counted only; the JSON has them all. */
const MOST = 8;

/** What was met on the way and is no departure from the protocol. */
export function notes(page: Page, result: Pick<ImpactResult, 'notes'>): string[] {
  const found = result.notes.filter((note) => note.trim() !== '');
  const rest = found.length - MOST;
  return [
    ...found.slice(0, MOST).flatMap((note) => paragraph(page, `- ${sentence(note)}`, 2, 4)),
    ...(rest > 0 ? paragraph(page, `- and ${rest} more; --json lists them`, 2, 4) : []),
  ];
}
