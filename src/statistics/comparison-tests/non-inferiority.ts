import { welchTest } from './student.ts';

/** A new construction against a reference, as a ratio of geometric means. */
export interface RatioToReference {
  readonly ratio: number;
  readonly lower: number;
  readonly upper: number;
  /** Whether the one-sided lower bound stays above 1 − margin. */
  readonly notInferior: boolean;
}

/**
 * Non-inferiority by a ratio: Welch's interval on the logarithms. A one-sided level of 0.95 is the two-sided interval at 0.90.
 *
 * @param margin share that may be lost, such as 0.05
 * @param level one-sided
 */
export function ratioToReference(
  values: readonly number[],
  reference: readonly number[],
  margin: number,
  level: number,
): RatioToReference {
  for (const value of [...values, ...reference])
    if (!(value > 0)) throw new RangeError(`a ratio needs positive values, found ${value}`);
  if (!(margin >= 0 && margin < 1)) throw new RangeError(`margin ${margin} is not a share below 1`);
  const { difference, lower, upper } = welchTest(
    values.map(Math.log),
    reference.map(Math.log),
    2 * level - 1,
  );
  const [low, high] = [Math.exp(lower), Math.exp(upper)];
  return { ratio: Math.exp(difference), lower: low, upper: high, notInferior: low > 1 - margin };
}
