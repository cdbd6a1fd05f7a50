import type { StrengthObservation } from '../impact/observations.ts';
import type { ComparedSample } from '../result/comparison.ts';
import type { BoundedQuantile } from '../statistics/calibration/contrast.ts';
import type { Observation } from '../statistics/likelihood/observation.ts';
import type { Fact } from './facts.ts';
import type { TyreSources } from './tyre-facts.ts';

/** What one specimen says of a strength (J) or a life (km). */
export interface Look extends Observation {
  readonly specimen: string;
}

/** A quantile of one side with limits of its own; null where there are none of that kind. */
export type LimitsOf = (share: number, level: number, sides: 1 | 2) => BoundedQuantile | null;

/** Limits for single hits on fresh tyres. */
export interface SingleHits {
  readonly limits: LimitsOf;
  /** Why the data do not tell the spread between tyres from that of hits, which the limits then cover; null where they do. */
  readonly untold: string | null;
}

/** One of the samples that are compared, ready: its looks, and what is recorded of it. */
export interface Side {
  readonly sample: ComparedSample;
  readonly declared: readonly string[];
  readonly consequences: readonly string[];
  readonly looks: readonly Look[];
  /** The drops behind each look, where covariates may be read from; null of drum tests. */
  readonly observations: readonly StrengthObservation[] | null;
  readonly facts: readonly Fact[];
  readonly tyres: TyreSources;
  /** Limits by simulation of the test as it was made; null where it cannot be repeated. */
  readonly calibrated: LimitsOf | null;
  /** Single hits on fresh tyres, from the model with a specimen effect; a reason where there is none. */
  readonly single: SingleHits | string;
  /** Why its evidence may not be compared; null as a rule. */
  readonly refused: string | null;
}

/** The values of one fact of a side that may be told from the construction or not. */
export function membersOf({ facts }: Side, name: string): readonly string[] | null {
  const fact = facts.find((one) => one.name === name);
  if (fact === undefined || fact.shown === null) return null;
  return fact.members ?? [fact.shown];
}
