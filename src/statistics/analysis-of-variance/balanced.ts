import { compensatedSum, mean } from '../summary/moments.ts';
import { type FisherTest, fisherTest, type VarianceLine, varianceLine } from './one-way.ts';

/** A factor of a layout: the level at which each value was had (construction, rig position, day). */
export interface Factor {
  readonly name: string;
  readonly levels: readonly string[];
}

/** What a factor does in a balanced layout. */
export interface FactorEffect {
  readonly name: string;
  readonly line: VarianceLine;
  /** Null where no error is left to test against. */
  readonly test: FisherTest | null;
  readonly means: readonly { readonly level: string; readonly n: number; readonly mean: number }[];
}

/** Analysis of a balanced layout without interactions. */
export interface BalancedAnalysis {
  readonly factors: readonly FactorEffect[];
  readonly error: VarianceLine;
  readonly total: VarianceLine;
}

/**
 * Main effects of factors that are laid out orthogonally: randomised blocks, Latin squares, and any layout in which each level
 * of one factor meets every level of the others in the same proportions. The error is what the main effects leave, so an
 * interaction, where there is one, is in it.
 *
 * @throws RangeError for factors of another length than the values, or that are not orthogonal: a regression is then needed
 */
export function analyseBalanced(values: readonly number[], factors: readonly Factor[]): BalancedAnalysis {
  for (const factor of factors)
    if (factor.levels.length !== values.length)
      throw new RangeError(
        `factor ${factor.name} has ${factor.levels.length} levels for ${values.length} values`,
      );
  for (const [i, a] of factors.entries()) for (const b of factors.slice(i + 1)) checkOrthogonal(a, b);
  const grand = mean(values);
  const residual = values.map((value) => value - grand);
  const total = compensatedSum(residual.map((r) => r * r));
  let left = values.length - 1;
  const lines = factors.map(({ name, levels }) => {
    const known = [...new Set(levels)];
    const means = known.map((level) => {
      const own = values.filter((_, i) => levels[i] === level);
      return { level, n: own.length, mean: mean(own) };
    });
    const effect = new Map(means.map((one) => [one.level, one.mean - grand]));
    for (let i = 0; i < values.length; i++) residual[i]! -= effect.get(levels[i]!)!;
    left -= known.length - 1;
    const sum = compensatedSum(means.map((one) => one.n * (one.mean - grand) ** 2));
    return { name, means, line: varianceLine(sum, known.length - 1) };
  });
  const error = varianceLine(compensatedSum(residual.map((r) => r * r)), left);
  return {
    factors: lines.map((one) => ({ ...one, test: left > 0 ? fisherTest(one.line, error) : null })),
    error,
    total: varianceLine(total, values.length - 1),
  };
}

function checkOrthogonal(a: Factor, b: Factor): void {
  const count = (levels: readonly string[]) => {
    const counts = new Map<string, number>();
    for (const level of levels) counts.set(level, (counts.get(level) ?? 0) + 1);
    return counts;
  };
  const pair = (x: string, y: string) => JSON.stringify([x, y]);
  const cells = count(a.levels.map((level, i) => pair(level, b.levels[i]!)));
  for (const [x, n] of count(a.levels))
    for (const [y, m] of count(b.levels))
      if ((cells.get(pair(x, y)) ?? 0) * a.levels.length !== n * m)
        throw new RangeError(
          `${a.name} ${x} and ${b.name} ${y} do not meet in proportion; the layout is not balanced`,
        );
}
