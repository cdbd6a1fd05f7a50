import type { ComparisonResult } from '../../result/comparison.ts';
import { jsonLine } from '../json-text.ts';

/** A line for each pair, with the labels of its sides; one with the reasons where the comparison is refused. */
export function comparisonLines({ samples, pairs, refused, unit }: ComparisonResult): string {
  const schema = 'tirelab.comparison-pair/1';
  const label = (place: number) => samples[place]!.label;
  if (refused.length > 0) return `${jsonLine({ schema, status: 'refused', refused })}\n`;
  return pairs
    .map(({ first, second, ...pair }) => {
      const line = { schema, status: 'done', first: label(first), second: label(second), unit, ...pair };
      return `${jsonLine(line)}\n`;
    })
    .join('');
}
