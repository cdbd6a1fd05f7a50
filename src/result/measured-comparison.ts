import type { Problem } from '../problem/problem.ts';
import type { Input } from './analysis.ts';
import type { ComparedFactor, NonInferiority } from './comparison.ts';

/** Tyres of one construction on which a quantity was measured. */
export interface MeasuredSample {
  readonly label: string;
  readonly run: string | null;
  readonly path: string;
  readonly construction: { readonly id: string; readonly revision: string };
  readonly n: number;
  readonly mean: number;
  /** Null of a single value. */
  readonly standardDeviation: number | null;
}

/** A difference of means, second less first, by Student's law. */
export interface MeasuredDifference {
  readonly value: number;
  readonly lower: number;
  readonly upper: number;
  readonly t: number;
  readonly degrees: number;
  readonly p: number;
}

export interface MeasuredPair {
  readonly first: number;
  readonly second: number;
  /** Welch's: a spread each. */
  readonly separate: MeasuredDifference | null;
  /** One spread over all constructions, with Tukey's limits, which hold for all pairs together, and adjusted p. */
  readonly common:
    | (Omit<MeasuredDifference, 't' | 'degrees'> & {
        readonly holm: number;
        readonly bonferroni: number;
        readonly tukey: number;
      })
    | null;
  /** Of the logarithms: ratio of geometric means; null where a value is not above 0. */
  readonly ratio: { readonly value: number; readonly lower: number; readonly upper: number } | null;
  /** Of tyres that share a pair; null where none were named. */
  readonly paired: (MeasuredDifference & { readonly pairs: number }) | null;
  /** Signs of the pairs' differences drawn by lot, by counting all patterns. */
  readonly randomisation: { readonly pOneSided: number; readonly pTwoSided: number } | null;
  /** Of the paired test where there is one, else of Welch's; by Holm over all pairs. */
  readonly holm: number | null;
  readonly toldApart: boolean | null;
  /** A difference that would be found four times in five, spreads taken as equal. */
  readonly smallestDifference: number | null;
  readonly nonInferiority: NonInferiority | null;
  readonly why: string | null;
}

/** A line of an analysis of variance with its test. */
export interface VarianceEffect {
  readonly name: string;
  /** Null of a spread each. */
  readonly sumOfSquares: number | null;
  readonly degrees: number;
  readonly f: number | null;
  readonly p: number | null;
}

/** Constructions against each other by what was measured on their tyres. */
export interface MeasuredComparison {
  readonly quantity: string;
  /** As the column has it; null where it has none. */
  readonly unit: string | null;
  readonly confidence: number;
  readonly inputs: readonly Input[];
  readonly samples: readonly MeasuredSample[];
  readonly factors: readonly ComparedFactor[];
  readonly refused: readonly string[];
  readonly notes: readonly string[];
  readonly unread: readonly { readonly path: string; readonly problems: readonly Problem[] }[];
  readonly pairs: readonly MeasuredPair[];
  /** All constructions at once: one spread, and a spread each (Welch). */
  readonly overall: readonly (VarianceEffect & {
    readonly spreads: 'common' | 'separate';
    readonly below: number;
  })[];
  /** Constructions and blocks, laid out in balance; empty where no blocks were named. */
  readonly blocked: readonly VarianceEffect[];
  readonly ranking: readonly number[];
  readonly groups: readonly (readonly number[])[];
}
