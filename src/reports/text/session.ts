import { counted } from '../../quantity/format.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import { verdictWord } from './names.ts';
import { inVerdictColour, named, type Page, paragraph, sentence } from './page.ts';
import { table } from './table.ts';

/** Samples and amendments beyond this many are counted only; the JSON has them all. */
const MOST = 20;

/** The samples of a session with several constructions or rigs, and how each stands. */
export function samples(page: Page, { samples: all }: ImpactResult): string[] {
  const rows = all.slice(0, MOST).map((sample) => [
    named(sample.name),
    sample.role,
    `${sample.specimens}`,
    `${sample.drops}`,
    `${sample.failures} of ${sample.validDrops}`,
    sample.verdict === null
      ? '—'
      : {
          text: verdictWord(sample.verdict),
          ink: (text: string) => inVerdictColour(page, sample.verdict!, text),
        },
  ]);
  if (rows.length === 0) return [];
  const columns = [
    { head: 'sample', align: 'left', least: 12 },
    { head: 'role', align: 'left' },
    { head: 'tyres', align: 'right' },
    { head: 'drops', align: 'right' },
    { head: 'failed', align: 'right' },
    { head: 'verdict', align: 'left' },
  ] as const;
  return [
    ...table(page, columns, rows),
    ...(all.length > MOST ? paragraph(page, `and ${all.length - MOST} more; --json lists them`) : []),
    '',
    ...paragraph(page, 'Each sample is estimated by itself; nothing is pooled over constructions or rigs.'),
  ];
}

/** What was amended since the log was written: both states, why, and on whose word. */
export function amendments(page: Page, { amendments: all }: ImpactResult): string[] {
  const shown = all.slice(0, MOST).flatMap((entry) => {
    const was = entry.old === '' ? 'empty' : named(entry.old);
    const is = entry.new === '' ? 'empty' : named(entry.new);
    const place = `${named(entry.log)}:${entry.logLine}, tyre ${named(entry.specimen)}`;
    const text = `${place}: ${named(entry.what)} ${was}, now ${is} (${named(entry.reason)}, ${named(entry.by)}, ${named(entry.on)})`;
    return paragraph(page, `- ${text}`, 2, 4);
  });
  const rest = all.length - MOST;
  return [
    ...shown,
    ...(rest > 0
      ? paragraph(page, `- and ${counted(rest, 'more entry', 'more entries')}; --json lists them`, 2, 4)
      : []),
  ];
}

/** Why the numbers wait; nothing as a rule. */
export function provisional(page: Page, { provisional: reasons }: ImpactResult): string[] {
  if (reasons.length === 0) return [];
  const shown = reasons.slice(0, 3);
  const more = reasons.length > shown.length ? ` and ${reasons.length - shown.length} more` : '';
  const text = `Provisional, no verdict until settled: ${shown.join('; ')}${more}`;
  return paragraph(page, sentence(text), 0).map((line) => page.ink.yellow(line));
}

/** Which run this one repeats, and which tyres were tested in place of others; nothing as a rule. */
export function retest(page: Page, { replaces, retests = [] }: ImpactResult): string[] {
  const run =
    replaces &&
    `Repeats run ${named(replaces.run)} (${named(replaces.path)}) for ${named(replaces.reason)}, approved by ${named(replaces.approver)}; both are kept.`;
  const specimens = retests.slice(0, MOST).flatMap(({ specimen, replaces: other, reason, approver }) => {
    const text = `- ${named(specimen)} in place of ${named(other)} for ${reason}, approved by ${named(approver)}; both are kept, ${named(other)} is left out`;
    return paragraph(page, text, 2, 4);
  });
  const rest = retests.length - MOST;
  return [
    ...(run === null ? [] : paragraph(page, run)),
    ...specimens,
    ...(rest > 0 ? paragraph(page, `- and ${counted(rest, 'more tyre')}; --json lists them`, 2, 4) : []),
  ];
}
