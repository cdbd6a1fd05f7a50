import type { MeasuredComparison } from '../../result/measured-comparison.ts';
import { csvRow } from '../csv-cell.ts';
import { jsonLine, jsonText } from '../json-text.ts';
import type { TextOptions } from '../text/page.ts';

type MeasuredReporter = (result: MeasuredComparison, options: TextOptions) => string;

/** The reporters of comparisons by measured quantities, by the name that `--format` gives them. */
export const measuredReporters: Readonly<Record<string, () => Promise<MeasuredReporter>>> = {
  text: async () => (await import('./text.ts')).measuredText,
  json: async () => measuredDocument,
  ndjson: async () => measuredLines,
  csv: async () => measuredCsv,
};

function measuredDocument(result: MeasuredComparison, { version }: TextOptions): string {
  const status = result.refused.length > 0 ? 'refused' : 'done';
  return jsonText({
    schema: 'tirelab.measured-comparison/1',
    tool: { name: 'tirelab', version },
    status,
    ...result,
  });
}

/** A line for each pair; one with the reasons where the comparison is refused. */
function measuredLines({ samples, pairs, refused, quantity, unit }: MeasuredComparison): string {
  const schema = 'tirelab.measured-pair/1';
  if (refused.length > 0) return `${jsonLine({ schema, status: 'refused', refused })}\n`;
  const label = (place: number) => samples[place]!.label;
  return pairs
    .map(({ first, second, ...pair }) => {
      const head = { schema, status: 'done', quantity, unit, first: label(first), second: label(second) };
      return `${jsonLine({ ...head, ...pair })}\n`;
    })
    .join('');
}

const HEAD = [
  ...['first', 'second', 'quantity', 'unit', 'first mean', 'second mean', 'test'],
  ...['difference', 'lower', 'upper', 'p', 'holm', 'told apart', 'smallest difference', 'ratio'],
];

/** One row for each pair and test. */
function measuredCsv({ samples, pairs, quantity, unit }: MeasuredComparison): string {
  const rows = pairs.flatMap(
    ({ first, second, separate, common, paired, holm, toldApart, smallestDifference, ratio }) =>
      [
        ['welch', separate] as const,
        ['common spread, Tukey limits', common] as const,
        ['paired', paired] as const,
      ].flatMap(([test, found]) =>
        found === null
          ? []
          : csvRow([
              samples[first]!.label,
              samples[second]!.label,
              quantity,
              unit,
              samples[first]!.mean,
              samples[second]!.mean,
              test,
              found.value,
              found.lower,
              found.upper,
              found.p,
              holm,
              toldApart === null ? null : toldApart ? 'yes' : 'no',
              smallestDifference,
              ratio?.value ?? null,
            ]),
      ),
  );
  return `${[csvRow(HEAD), ...rows].join('\n')}\n`;
}
