import type { Estimate } from './estimate.ts';

/**
 * A result for someone outside the house, such as a supplier: what was found, without what makes up the construction.
 * It has what is listed here and nothing else of the result.
 */
export interface ExportedResult {
  /** How the item is called outside. */
  readonly item: string;
  /** Of the full result, by which the house finds it again. */
  readonly source: { readonly sha256: string };
  readonly kind: string;
  readonly protocol: {
    readonly id: string;
    readonly version: string;
    readonly method: string | null;
  };
  readonly energy: { readonly definition: string; readonly gravity: number | null } | null;
  readonly conformance: {
    readonly status: string;
    /** Of the whole run, by code. */
    readonly deviations: readonly {
      readonly code: string;
      readonly severity: string;
      readonly scope: string;
      readonly count: number;
    }[];
  };
  readonly sample: {
    readonly specimens: number;
    readonly drops: number;
    readonly validDrops: number;
    readonly failures: number;
  };
  readonly estimates: readonly ExportedEstimate[];
  /** Null where they were not to go out. */
  readonly criteria: readonly ExportedCriterion[] | null;
  readonly verdict: string | null;
}

export type ExportedEstimate = Pick<
  Estimate,
  'quantity' | 'method' | 'unit' | 'value' | 'standardError' | 'interval' | 'specimens' | 'drops'
> & {
  readonly distribution?: string;
  readonly probability?: number;
  readonly at?: number;
  readonly variant?: string;
};

export interface ExportedCriterion {
  readonly quantity: string;
  readonly probability?: number;
  readonly at?: number;
  readonly limit: {
    readonly atLeast?: number;
    readonly atMost?: number;
    readonly within?: { readonly lower: number | null; readonly upper: number | null };
    readonly unit: string;
  };
  readonly verdict: string;
}
