import { chartConstants } from '../control-chart/constants.ts';

/**
 * d2*: √(E(R̄²)) of the mean of g ranges of m standard normal values, √(d2² + d3²/g) (Duncan 1955; Patnaik 1950): R̄/d2* has
 * the right mean square for an estimate of a standard deviation. Beyond 15 ranges d2 itself is taken, as the tables of the manuals
 * end there.
 */
export function expectedRange(size: number, ranges: number): number {
  const { d2, d3 } = chartConstants(size);
  return ranges > 15 ? d2 : Math.sqrt(d2 * d2 + (d3 * d3) / ranges);
}
