import type { LawName } from '../statistics/law.ts';

/** How laws of strength compare on one test, and how the protocol's fits level by level. */
export interface Goodness {
  /** The best first; weights are Akaike's, among those that have a fit. */
  readonly laws: readonly {
    readonly distribution: LawName;
    readonly logLikelihood: number;
    readonly aic: number;
    readonly weight: number;
  }[];
  readonly without: readonly { readonly distribution: LawName; readonly why: string }[];
  /** Deviance and Pearson's sum over the levels; probabilities null where too few drops stand at a level. */
  readonly grouped: {
    readonly distribution: LawName;
    readonly deviance: number;
    readonly pearson: number;
    readonly degrees: number;
    readonly pDeviance: number | null;
    readonly pPearson: number | null;
    readonly why: string | null;
  } | null;
  /** Why there is no sum over the levels. */
  readonly why: string | null;
  /** How little so many drops tell of the law. */
  readonly caveat: string;
}
