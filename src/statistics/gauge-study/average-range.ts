import { mean } from '../summary/moments.ts';
import type { CrossedReadings } from './crossed.ts';
import { expectedRange } from './expected-range.ts';

/** A gauge study by averages and ranges, as standard deviations. */
export interface AverageRange {
  /** Mean range of the trials. */
  readonly meanRange: number;
  /** Range of the operators' averages. */
  readonly operatorRange: number;
  /** Range of the parts' averages. */
  readonly partRange: number;
  readonly repeatability: number;
  readonly reproducibility: number;
  readonly gauge: number;
  readonly part: number;
  readonly total: number;
}

/**
 * The average and range method of the measurement systems analysis manuals: repeatability R̄·K₁, reproducibility
 * √((X̄_diff·K₂)² − EV²/(parts·trials)), part R_p·K₃, with K = 1/d2*. It takes no account of an interaction; a negative root is 0.
 *
 * @param factors `printed` rounds K₁ to K₃ to the four decimals of the manuals, `exact` does not
 */
export function averageRange(
  readings: CrossedReadings,
  factors: 'printed' | 'exact' = 'exact',
): AverageRange {
  const parts = readings.length;
  const operators = readings[0]!.length;
  const trials = readings[0]![0]!.length;
  const exact = factorsOf(parts, operators, trials);
  const rounded = (factor: number) => (factors === 'exact' ? factor : Number(factor.toFixed(4)));
  const k = {
    trials: rounded(exact.trials),
    operators: rounded(exact.operators),
    parts: rounded(exact.parts),
  };
  const span = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
  const meanRange = mean(readings.flat().map(span));
  const operatorRange = span(readings[0]!.map((_, o) => mean(readings.flatMap((part) => part[o]!))));
  const partRange = span(readings.map((part) => mean(part.flat())));
  const repeatability = meanRange * k.trials;
  const square = (operatorRange * k.operators) ** 2 - repeatability ** 2 / (parts * trials);
  const reproducibility = Math.sqrt(Math.max(0, square));
  const gauge = Math.hypot(repeatability, reproducibility);
  const part = partRange * k.parts;
  return {
    meanRange,
    operatorRange,
    partRange,
    repeatability,
    reproducibility,
    gauge,
    part,
    total: Math.hypot(gauge, part),
  };
}

function factorsOf(parts: number, operators: number, trials: number) {
  return {
    trials: 1 / expectedRange(trials, parts * operators),
    operators: 1 / expectedRange(operators, 1),
    parts: 1 / expectedRange(parts, 1),
  };
}
