import type { Observation } from '../likelihood/observation.ts';

/** A life that ended by a cause, or was taken off unfailed (cause null). */
export interface CausedLife {
  /** Within (lower, upper]; equal ends are a life read exactly, an infinite upper end a suspension. */
  readonly lower: number;
  readonly upper: number;
  readonly cause: string | null;
}

/**
 * Observations for one cause: a life that ended by another one is a suspension at its lower end, since up to there this cause had
 * not struck. Each cause is then fitted by itself; it holds where causes strike independently, which the data cannot show.
 */
export function observationsOfCause(lives: readonly CausedLife[], cause: string): Observation[] {
  return lives.map(({ lower, upper, cause: own }) =>
    own === cause ? { lower, upper, count: 1 } : { lower, upper: Infinity, count: 1 },
  );
}

/** A step of the share that has failed by one cause by then. */
export interface IncidenceStep {
  readonly time: number;
  readonly incidence: number;
}

/**
 * The share failed by a cause by each time while the other causes act too (Aalen & Johansen 1978): Σ S(t⁻)·d_cause/n over exact times.
 * 1 − Kaplan–Meier of the cause alone says more than that, for it imagines the other causes gone.
 */
export function cumulativeIncidence(
  lives: readonly { readonly time: number; readonly cause: string | null }[],
  cause: string,
): IncidenceStep[] {
  const times = [...new Set(lives.filter((life) => life.cause !== null).map((life) => life.time))].sort(
    (a, b) => a - b,
  );
  let survival = 1;
  let incidence = 0;
  const steps: IncidenceStep[] = [];
  for (const time of times) {
    const atRisk = lives.filter((life) => life.time >= time).length;
    const ended = lives.filter((life) => life.time === time && life.cause !== null);
    const own = ended.filter((life) => life.cause === cause).length;
    incidence += (survival * own) / atRisk;
    if (own > 0) steps.push({ time, incidence });
    survival *= 1 - ended.length / atRisk;
  }
  return steps;
}

/** Reliability against independent causes together: the product. */
export function reliabilityAgainstAll(reliabilities: readonly number[]): number {
  return reliabilities.reduce((a, b) => a * b, 1);
}
