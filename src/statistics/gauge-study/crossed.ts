import {
  type FisherTest,
  fisherTest,
  type VarianceLine,
  varianceLine,
} from '../analysis-of-variance/one-way.ts';
import { compensatedSum, mean, sumOfSquares } from '../summary/moments.ts';

/** Readings of every part by every operator, several times: `readings[part][operator][trial]`. */
export type CrossedReadings = readonly (readonly (readonly number[])[])[];

/** Variances of a gauge study, negative ones as they come out. */
export interface GaugeComponents {
  /** From trial to trial. */
  readonly repeatability: number;
  readonly operator: number;
  /** Null where the interaction was pooled into repeatability. */
  readonly interaction: number | null;
  readonly part: number;
}

/** A gauge study by analysis of variance. */
export interface GaugeAnalysis {
  readonly parts: number;
  readonly operators: number;
  readonly trials: number;
  readonly part: VarianceLine;
  readonly operator: VarianceLine;
  readonly interaction: VarianceLine;
  readonly repeatability: VarianceLine;
  readonly total: number;
  readonly tests: {
    readonly interaction: FisherTest | null;
    /** Against the interaction. */
    readonly part: FisherTest | null;
    readonly operator: FisherTest | null;
  };
  /** Interaction pooled into repeatability, as is usual where it is not significant. */
  readonly pooled: GaugeComponents & { readonly line: VarianceLine };
  readonly kept: GaugeComponents;
}

/**
 * Analysis of variance of parts × operators × trials, all effects random: with the interaction kept, components from
 * MS_parts − MS_interaction and so on; with it pooled, repeatability from both sums of squares together.
 *
 * @throws RangeError for a study that is not full, or with fewer than two parts, operators or trials
 */
export function analyseGauge(readings: CrossedReadings): GaugeAnalysis {
  const parts = readings.length;
  const operators = readings[0]?.length ?? 0;
  const trials = readings[0]?.[0]?.length ?? 0;
  if (parts < 2 || operators < 2 || trials < 2)
    throw new RangeError('a gauge study needs two parts, two operators and two trials or more');
  for (const [p, ofPart] of readings.entries())
    for (let o = 0; o < operators; o++)
      if (ofPart.length !== operators || ofPart[o]!.length !== trials)
        throw new RangeError(`part ${p + 1} was not read ${trials} times by each of ${operators} operators`);
  const grand = mean(readings.flat(2));
  const cell = readings.map((ofPart) => ofPart.map(mean));
  const partMean = readings.map((ofPart) => mean(ofPart.flat()));
  const operatorMean = readings[0]!.map((_, o) => mean(readings.flatMap((ofPart) => ofPart[o]!)));
  const squares = (values: readonly number[]) => compensatedSum(values.map((v) => v * v));
  const part = varianceLine(operators * trials * squares(partMean.map((m) => m - grand)), parts - 1);
  const operator = varianceLine(parts * trials * squares(operatorMean.map((m) => m - grand)), operators - 1);
  const interaction = varianceLine(
    trials *
      squares(cell.flatMap((row, p) => row.map((m, o) => m - partMean[p]! - operatorMean[o]! + grand))),
    (parts - 1) * (operators - 1),
  );
  const repeatability = varianceLine(
    compensatedSum(readings.flat().map(sumOfSquares)),
    parts * operators * (trials - 1),
  );
  const line = varianceLine(
    interaction.sumOfSquares + repeatability.sumOfSquares,
    interaction.degrees + repeatability.degrees,
  );
  return {
    parts,
    operators,
    trials,
    part,
    operator,
    interaction,
    repeatability,
    total: sumOfSquares(readings.flat(2)),
    tests: {
      interaction: fisherTest(interaction, repeatability),
      part: fisherTest(part, interaction),
      operator: fisherTest(operator, interaction),
    },
    pooled: {
      line,
      repeatability: line.meanSquare,
      operator: (operator.meanSquare - line.meanSquare) / (parts * trials),
      interaction: null,
      part: (part.meanSquare - line.meanSquare) / (operators * trials),
    },
    kept: {
      repeatability: repeatability.meanSquare,
      interaction: (interaction.meanSquare - repeatability.meanSquare) / trials,
      operator: (operator.meanSquare - interaction.meanSquare) / (parts * trials),
      part: (part.meanSquare - interaction.meanSquare) / (operators * trials),
    },
  };
}
