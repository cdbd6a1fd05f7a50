import { compensatedSum, mean, sumOfSquares } from './moments.ts';

/**
 * The correlation of each value with the one `lag` before it: Σ (xᵢ − m)(xᵢ₋ₗ − m)/Σ (xᵢ − m)², m the mean of all. A control
 * chart takes it to be nought.
 */
export function autocorrelation(values: readonly number[], lag = 1): number {
  const centre = mean(values);
  const products = values.slice(lag).map((value, i) => (value - centre) * (values[i]! - centre));
  return compensatedSum(products) / sumOfSquares(values);
}
