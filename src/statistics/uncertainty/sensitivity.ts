/** A measurement as a function of its inputs. */
export type Model = (inputs: readonly number[]) => number;

/**
 * ∂f/∂xᵢ by central differences on five points, ± u/4 and ± u/2 about the estimate: exact for a model that is a product of
 * its inputs, and within the range where the uncertainty lies for any other (JCGM 100, 5.1.3 note 2, takes ± u).
 */
export function sensitivities(
  model: Model,
  values: readonly number[],
  uncertainties: readonly number[],
): number[] {
  return values.map((value, i) => {
    const step = 0.25 * (uncertainties[i]! || 1e-4 * Math.abs(value) || 1e-4);
    const at = (k: number) => model(values.with(i, value + k * step));
    return (8 * (at(1) - at(-1)) - (at(2) - at(-2))) / (12 * step);
  });
}

/**
 * The terms of second order in the variance of independent, symmetric inputs (JCGM 100, 5.1.2 note):
 * Σᵢ Σⱼ [½ fᵢⱼ² + fᵢ fᵢⱼⱼ] uᵢ² uⱼ². They matter where a sensitivity is near nought.
 */
export function secondOrderVariance(
  model: Model,
  values: readonly number[],
  uncertainties: readonly number[],
): number {
  const at = (i: number, a: number, j: number, b: number) => {
    const moved = [...values];
    moved[i]! += a;
    moved[j]! += b;
    return model(moved);
  };
  const active = uncertainties.flatMap((u, i) => (u > 0 ? [i] : []));
  let sum = 0;
  for (const i of active) {
    for (const j of active) {
      const [h, k] = [0.5 * uncertainties[i]!, 0.5 * uncertainties[j]!];
      const centre = model(values);
      // In units of the uncertainties, so that u² is 1 in each term; half steps, hence the powers of 2.
      const along = (a: number) => at(i, a, j, k) - 2 * at(i, a, j, 0) + at(i, a, j, -k);
      const mixed =
        i === j
          ? 4 * (at(i, h, j, 0) - 2 * centre + at(i, -h, j, 0))
          : at(i, h, j, k) - at(i, h, j, -k) - at(i, -h, j, k) + at(i, -h, j, -k);
      const first = at(i, h, j, 0) - at(i, -h, j, 0);
      const third =
        i === j ? 4 * (at(i, 2 * h, j, 0) - at(i, -2 * h, j, 0) - 2 * first) : 4 * (along(h) - along(-h));
      sum += 0.5 * mixed * mixed + first * third;
    }
  }
  return sum;
}
