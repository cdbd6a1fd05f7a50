import type { ReportedRun } from '../../result/report.ts';
import { type Block, records } from '../document/blocks.ts';
import type { Language } from '../words/language.ts';

/** Why the numbers wait, where they do: nothing as a rule. */
export function provisional({ result }: ReportedRun, language: Language, most = 20): Block[] {
  const reasons = result.kind === 'impact' ? result.provisional : [];
  if (reasons.length === 0) return [];
  return [
    { kind: 'verdict', verdict: 'invalid', text: language.words.session.provisional },
    ...records(reasons.slice(0, most), language),
  ];
}
