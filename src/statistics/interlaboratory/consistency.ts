import { mean, variance } from '../summary/moments.ts';

/** How a laboratory compares with the others (Mandel's h and k, ISO 5725-2, 7.3.1). */
export interface Consistency {
  /** (own mean − mean of the means)/standard deviation of the means */
  readonly h: number;
  /** Own standard deviation over the root mean square of all; null for a single result. */
  readonly k: number | null;
}

/** Mandel's statistics of each laboratory, in the order given. */
export function laboratoryConsistency(laboratories: readonly (readonly number[])[]): Consistency[] {
  const means = laboratories.map(mean);
  const centre = mean(means);
  const spread = Math.sqrt(variance(means));
  const variances = laboratories.map((results) => (results.length < 2 ? null : variance(results)));
  const pooled = mean(variances.filter((one) => one !== null));
  return means.map((own, i) => ({
    h: (own - centre) / spread,
    k: variances[i] === null ? null : Math.sqrt(variances[i]! / pooled),
  }));
}
