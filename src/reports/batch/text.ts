import { percent } from '../../quantity/amount.ts';
import { counted } from '../../quantity/format.ts';
import type { BatchCount, BatchOutcome } from '../../result/batch.ts';
import type { Verdict } from '../../result/criterion.ts';
import { listed, quantityName, verdictWord } from '../text/names.ts';
import { estimateText, intervalText } from '../text/numbers.ts';
import {
  inVerdictColour,
  named,
  type Page,
  pageOf,
  paragraph,
  section,
  sentence,
  type TextOptions,
  versioned,
} from '../text/page.ts';
import { type Cell, table } from '../text/table.ts';
import { principalEstimates } from './entry.ts';

/** A run of a batch as one line of a table. */
export interface BatchRow {
  readonly file: string;
  readonly constructions: string;
  readonly tyres: string;
  /** Name of the headline quantity, and the level of its interval; null where there is none. */
  readonly quantity: string | null;
  readonly estimate: string;
  readonly interval: string;
  readonly verdict: Verdict | null;
  readonly standing: string;
}

/** The row of one run. */
export function batchRow({ file, result }: BatchOutcome): BatchRow {
  if (result === null) {
    const none = { constructions: '', tyres: '', quantity: null, estimate: '', interval: '' };
    return { file, ...none, verdict: null, standing: 'not read' };
  }
  const { constructions, sample, conformance, verdict } = result;
  const { headline } = principalEstimates(result);
  const level = headline?.interval ? `, ${percent(headline.interval.level)} interval` : '';
  return {
    file,
    constructions: listed(
      constructions.map(({ id, revision }) => versioned(id, revision)),
      2,
    ),
    tyres: String(sample.specimens),
    quantity: headline && `${quantityName(headline)}${level}`,
    estimate: headline === null ? 'none' : estimateText(headline),
    interval: headline === null ? '' : intervalText(headline),
    verdict,
    standing: verdict === null ? conformance.status : verdictWord(verdict),
  };
}

/** The table of a batch, in the order in which the runs were given, and how many ended how. */
export function batchText(
  rows: readonly BatchRow[],
  { runs, unreadable, endings }: BatchCount,
  options: TextOptions,
): string {
  const page = pageOf(options);
  const ended = Object.entries(endings).map(([ending, count]) => `${count} ${ending}`);
  const unread = unreadable === 0 ? [] : [`${unreadable} not read`];
  const quantities = [...new Set(rows.flatMap(({ quantity }) => quantity ?? []))];
  const lines = [
    ...paragraph(page, `${counted(runs, 'run')}: ${[...ended, ...unread].join(', ')}.`, 0),
    '',
    ...table(page, COLUMNS, rows.map(cellsOf(page))),
    ...section(
      page,
      'Estimates',
      quantities.flatMap((quantity) => paragraph(page, sentence(quantity))),
    ),
  ];
  return `${lines.join('\n')}\n`;
}

const COLUMNS = [
  { head: 'run', align: 'left', least: 14 },
  { head: 'construction', align: 'left', least: 8 },
  { head: 'tyres', align: 'right' },
  { head: 'estimate', align: 'right' },
  { head: 'interval', align: 'right', least: 10 },
  { head: '', align: 'left' },
] as const;

function cellsOf(page: Page): (row: BatchRow) => Cell[] {
  return ({ file, constructions, tyres, estimate, interval, verdict, standing }) => [
    named(file),
    constructions,
    tyres,
    estimate,
    interval,
    verdict === null ? standing : { text: standing, ink: (text) => inVerdictColour(page, verdict, text) },
  ];
}
