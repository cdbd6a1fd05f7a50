import { type Combined, combine } from './effective-degrees.ts';
import { type Model, sensitivities } from './sensitivity.ts';

/**
 * What a component does from measurement to measurement: `common` is the same in all (a calibration, the weighed mass), and a
 * mean over many does not lessen it; `scatter` is drawn anew each time, and lies in the observed spread already.
 */
export type Scope = 'common' | 'scatter';

/** One source of uncertainty of an input. */
export interface Component {
  readonly name: string;
  readonly standardUncertainty: number;
  /** Infinity where it is taken as known. */
  readonly degrees: number;
  readonly scope: Scope;
}

/** An input of a measurement with the sources of its uncertainty, in its own unit. */
export interface BudgetInput {
  readonly name: string;
  readonly value: number;
  readonly components: readonly Component[];
}

/** The correlation of two inputs, by name. */
export interface Correlation {
  readonly between: readonly [string, string];
  readonly coefficient: number;
}

/** A line of the budget: what one component does to the result. */
export interface BudgetLine extends Component {
  readonly input: string;
  readonly sensitivity: number;
  /** Sensitivity times standard uncertainty, with the sign of the sensitivity, in the unit of the result. */
  readonly contribution: number;
}

/** A result with its uncertainty, the parts kept apart. */
export interface Budget {
  readonly value: number;
  readonly lines: readonly BudgetLine[];
  readonly common: Combined;
  readonly scatter: Combined;
  /** Both together: that of one measurement. Its degrees are not defined for correlated inputs of finite degrees. */
  readonly whole: Combined;
}

/**
 * The law of propagation of uncertainty (JCGM 100, equations 10 and 16): u² = Σ cᵢ²uᵢ² + 2 Σ cᵢcⱼuᵢuⱼrᵢⱼ, and the effective
 * degrees of freedom. Correlated inputs count as common.
 *
 * @throws RangeError for an uncertainty that is not positive, degrees below 1 or missing, a correlation outside [−1, 1] or
 *   of an input that is not there, and a model without a value
 */
export function drawUpBudget(
  model: Model,
  inputs: readonly BudgetInput[],
  correlations: readonly Correlation[] = [],
): Budget {
  for (const input of inputs) check(input);
  const values = inputs.map((input) => input.value);
  const uncertainties = inputs.map(({ components }) =>
    Math.hypot(...components.map((component) => component.standardUncertainty)),
  );
  const value = model(values);
  const slopes = sensitivities(model, values, uncertainties);
  if (!Number.isFinite(value) || !slopes.every(Number.isFinite))
    throw new RangeError('the model has no value at its inputs, or none beside them');
  const lines = inputs.flatMap(({ name, components }, i) =>
    components.map((component) => ({
      ...component,
      input: name,
      sensitivity: slopes[i]!,
      contribution: slopes[i]! * component.standardUncertainty,
    })),
  );
  const size = new Map(inputs.map(({ name }, i) => [name, slopes[i]! * uncertainties[i]!]));
  let covariance = 0;
  for (const { between, coefficient } of correlations) {
    const [a, b] = between.map((name) => size.get(name));
    if (a === undefined || b === undefined || between[0] === between[1])
      throw new RangeError(`a correlation needs two inputs of the budget, found ${between.join(' and ')}`);
    if (!(Math.abs(coefficient) <= 1)) throw new RangeError(`correlation ${coefficient} is outside [−1, 1]`);
    covariance += 2 * a * b * coefficient;
  }
  const correlated = new Set(correlations.flatMap(({ between }) => between));
  const loose = lines.some((line) => correlated.has(line.input) && line.degrees !== Infinity);
  const of = (scope?: Scope): Combined => {
    const parts = lines.filter((line) => scope === undefined || line.scope === scope);
    const { standardUncertainty, degrees } = combine(
      parts.map((part) => ({ contribution: Math.abs(part.contribution), degrees: part.degrees })),
    );
    if (covariance === 0 || scope === 'scatter') return { standardUncertainty, degrees };
    const variance = standardUncertainty ** 2 + covariance;
    return { standardUncertainty: Math.sqrt(Math.max(0, variance)), degrees: loose ? Number.NaN : degrees };
  };
  return { value, lines, common: of('common'), scatter: of('scatter'), whole: of() };
}

function check({ name, components }: BudgetInput): void {
  for (const { name: source, standardUncertainty, degrees } of components) {
    const where = `${name}, ${source}`;
    if (!(standardUncertainty > 0 && standardUncertainty < Infinity))
      throw new RangeError(`${where}: a standard uncertainty must be above 0, found ${standardUncertainty}`);
    if (!(degrees >= 1))
      throw new RangeError(`${where}: degrees of freedom must be 1 or more (or infinite), found ${degrees}`);
  }
}
