import type { Input } from './analysis.ts';

/** A line of an analysis of variance; F and p are null for the last ones. */
export interface AnovaLine {
  readonly source: string;
  readonly sumOfSquares: number;
  readonly degrees: number;
  readonly meanSquare: number;
  readonly f: number | null;
  readonly p: number | null;
}

/** A variance component as it comes out, negative ones too; the interval is null where none is to be had. */
export interface Component {
  readonly of:
    | 'repeatability'
    | 'operator'
    | 'interaction'
    | 'reproducibility'
    | 'gauge'
    | 'part'
    | 'between'
    | 'total';
  readonly variance: number;
  /** Root; 0 where the variance came out negative. */
  readonly deviation: number;
  /** Of the deviation. */
  readonly interval: { readonly level: number; readonly lower: number; readonly upper: number } | null;
  /** Of the total deviation; these do not add up to 1. Null where it is no part of one. */
  readonly share: number | null;
}

export interface GaugeStudyResult {
  readonly kind: 'gauge';
  readonly unit: string | null;
  readonly parts: number;
  readonly operators: number;
  readonly trials: number;
  readonly anova: readonly AnovaLine[];
  /** Whether the interaction was pooled into repeatability, and why. */
  readonly pooled: boolean;
  readonly why: string;
  readonly components: readonly Component[];
  /** √2·part/gauge, not truncated. */
  readonly distinctCategories: number;
  /** The same by averages and ranges, as standard deviations. */
  readonly averageRange: {
    readonly meanRange: number;
    readonly repeatability: number;
    readonly reproducibility: number;
    readonly gauge: number;
    readonly part: number;
    readonly total: number;
  };
}

/** A test at two levels: beyond 5 % a straggler, beyond 1 % an outlier. */
export interface OutlierFinding {
  readonly test: 'Cochran' | 'Grubbs';
  readonly laboratory: string;
  readonly statistic: number;
  readonly critical5: number;
  readonly critical1: number;
  readonly finding: 'none' | 'straggler' | 'outlier';
}

export interface LevelPrecision {
  readonly level: string | null;
  readonly laboratories: readonly {
    readonly laboratory: string;
    readonly results: number;
    readonly mean: number;
    readonly deviation: number | null;
    /** Mandel's statistics. */
    readonly h: number;
    readonly k: number | null;
  }[];
  readonly mean: number;
  readonly components: readonly Component[];
  /** Limits r and R: two results differ by more in 5 % of cases. */
  readonly repeatabilityLimit: number;
  readonly reproducibilityLimit: number;
  readonly tests: readonly OutlierFinding[];
}

export interface InterlaboratoryResult {
  readonly kind: 'laboratories';
  readonly unit: string | null;
  readonly levels: readonly LevelPrecision[];
}

export interface ReadersResult {
  readonly kind: 'readers';
  readonly specimens: number;
  readonly readings: readonly string[];
  /** Rows: first reader; columns: second. */
  readonly table: readonly (readonly number[])[];
  readonly observed: number;
  readonly expected: number;
  readonly kappa: number | null;
  readonly standardError: number | null;
  readonly interval: { readonly level: number; readonly lower: number; readonly upper: number } | null;
  readonly why: string | null;
}

/** `tirelab repeatability`: how well a reading can be repeated, by others too. */
export interface RepeatabilityResult {
  readonly inputs: readonly Input[];
  readonly notes: readonly string[];
  readonly study: GaugeStudyResult | InterlaboratoryResult | ReadersResult;
}
