import type { Problem } from '../problem/problem.ts';
import type { ImpactResult } from './analysis.ts';
import type { EnduranceResult } from './endurance.ts';

/** What became of one run of a batch: its result, or what is wrong with its files. */
export type BatchOutcome =
  | { readonly file: string; readonly result: ImpactResult | EnduranceResult; readonly problems: null }
  | { readonly file: string; readonly result: null; readonly problems: readonly Problem[] };

/** How many runs of a batch ended how. */
export interface BatchCount {
  readonly runs: number;
  readonly unreadable: number;
  /** By the verdict; those without a specification by how the protocol was kept. */
  readonly endings: Readonly<Record<string, number>>;
}
