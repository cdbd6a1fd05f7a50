import type { ComparisonResult } from '../../result/comparison.ts';
import { csvRow } from '../csv-cell.ts';

const HEAD = [
  ...['first', 'second', 'unit', 'probability', 'spreads', 'interval', 'first value', 'second value'],
  ...['ratio', 'ratio lower', 'ratio upper', 'difference', 'difference lower', 'difference upper'],
  ...['p', 'holm', 'told apart', 'smallest ratio', 'margin verdict'],
];

/** One row for each pair, share failed and model of the spreads; the header alone where the comparison is refused. */
export function comparisonCsv({ samples, pairs, unit }: ComparisonResult): string {
  const rows = pairs.flatMap(
    ({ first, second, differences, holm, toldApart, smallestRatio, nonInferiority }) =>
      differences.map(({ probability, spreads, interval, values, ratio, difference, p }) =>
        csvRow([
          samples[first]!.label,
          samples[second]!.label,
          unit,
          probability,
          spreads,
          interval,
          ...values,
          ...[ratio, difference].flatMap(({ value, lower, upper }) => [value, lower, upper]),
          p,
          holm,
          toldApart === null ? null : toldApart ? 'yes' : 'no',
          smallestRatio,
          nonInferiority?.verdict ?? null,
        ]),
      ),
  );
  return `${[csvRow(HEAD), ...rows].join('\n')}\n`;
}
