import type { ComparisonResult } from '../../result/comparison.ts';
import { csvRow } from '../csv-cell.ts';

const HEAD =
  'first,second,probability,spreads,first [J],second [J],ratio,ratio lower,ratio upper,difference [J],difference lower [J],difference upper [J],p,holm,smallest ratio';

/** One row for each pair, share failed and model of the spreads; the header alone where the comparison is refused. */
export function comparisonCsv({ samples, pairs }: ComparisonResult): string {
  const rows = pairs.flatMap(({ first, second, differences, holm, smallestRatio }) =>
    differences.map(({ probability, spreads, energies, ratio, difference, p }) =>
      csvRow([
        samples[first]!.label,
        samples[second]!.label,
        probability,
        spreads,
        ...energies,
        ...[ratio, difference].flatMap(({ value, lower, upper }) => [value, lower, upper]),
        p,
        holm,
        smallestRatio,
      ]),
    ),
  );
  return `${[HEAD, ...rows].join('\n')}\n`;
}
