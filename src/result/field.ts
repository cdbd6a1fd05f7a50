import type { Input } from './analysis.ts';

/** Events per 1,000 km with exact limits. */
export interface FieldRate {
  readonly cause: string;
  readonly flats: number;
  readonly rate: number;
  readonly lower: number;
  readonly upper: number;
}

/** Whether riders scatter more than chance has it. */
export interface FieldDispersion {
  readonly riders: number;
  /** About 1 where riders are alike. */
  readonly ratio: number;
  readonly p: number;
  /** Limits that allow for the riders' differing, per 1,000 km. */
  readonly lower: number;
  readonly upper: number;
  readonly why: string;
}

/** One construction in the field. */
export interface FieldConstruction {
  readonly construction: string;
  /** km */
  readonly distance: number;
  readonly riders: number;
  readonly rates: readonly FieldRate[];
  /** Of the cause compared; null where there are too few riders or no flats. */
  readonly dispersion: FieldDispersion | null;
}

/** Two constructions by the cause compared: first over second. */
export interface FieldRatio {
  readonly first: string;
  readonly second: string;
  readonly ratio: number | null;
  readonly lower: number;
  readonly upper: number | null;
  readonly p: number;
  /** By Holm over all pairs. */
  readonly holm: number;
  readonly why: string | null;
}

/** A circumstance that may differ between constructions and stand for them. */
export interface FieldCircumstance {
  readonly circumstance: 'riders' | 'position' | 'terrain' | 'bike' | 'season' | 'pressure';
  readonly standing: 'alike' | 'confounded' | 'not-recorded';
  readonly why: string;
}

/** Field against laboratory. */
export interface FieldAgreement {
  readonly constructions: readonly {
    readonly construction: string;
    readonly energy: number;
    readonly rate: number;
  }[];
  /** Kendall's tau of energy and fewness of flats: 1 is full agreement. Null for fewer than 2, or where nothing varies. */
  readonly tau: number | null;
  /** Chance of as much agreement or more where lab and field have nothing to do with one another. */
  readonly chance: number | null;
  readonly method: 'exact' | 'large-sample' | null;
  /** 1/n!: that of full agreement. */
  readonly chanceOfFullAgreement: number | null;
  readonly regression: {
    /** Flats per 1,000 km for a J. */
    readonly slope: number;
    readonly lower: number;
    readonly upper: number;
    readonly level: number;
  } | null;
  readonly why: string;
}

/** `tirelab field`: flats in the field, and whether they agree with the laboratory. */
export interface FieldResult {
  readonly inputs: readonly Input[];
  readonly level: number;
  /** The cause that is compared. */
  readonly cause: string;
  readonly riders: number;
  readonly constructions: readonly FieldConstruction[];
  readonly ratios: readonly FieldRatio[];
  readonly circumstances: readonly FieldCircumstance[];
  readonly agreement: FieldAgreement | null;
  readonly notes: readonly string[];
}
