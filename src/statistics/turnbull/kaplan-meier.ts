/** One life: reached `time`, where it ended (`failed`) or was taken off unfailed. */
export interface Life {
  readonly time: number;
  readonly failed: boolean;
}

/** The survival curve just after a time with failures. */
export interface SurvivalStep {
  readonly time: number;
  readonly atRisk: number;
  readonly failures: number;
  readonly survival: number;
  /** Greenwood's standard error; null once the survival is 0. */
  readonly standardError: number | null;
}

/**
 * The product-limit estimate (Kaplan and Meier 1958) S(t) = Π (1 − d/n), with Greenwood's variance S² Σ d/(n(n − d)).
 * One taken off at the time of a failure counts as at risk there. A step for each time with failures.
 */
export function kaplanMeier(lives: readonly Life[]): SurvivalStep[] {
  const sorted = [...lives].sort((a, b) => a.time - b.time);
  const steps: SurvivalStep[] = [];
  let survival = 1;
  let sum = 0;
  for (let i = 0; i < sorted.length; ) {
    const { time } = sorted[i]!;
    const atRisk = sorted.length - i;
    let failures = 0;
    for (; i < sorted.length && sorted[i]!.time === time; i++) if (sorted[i]!.failed) failures++;
    if (failures === 0) continue;
    survival *= 1 - failures / atRisk;
    sum += failures / (atRisk * (atRisk - failures));
    const standardError = atRisk === failures ? null : survival * Math.sqrt(sum);
    steps.push({ time, atRisk, failures, survival, standardError });
  }
  return steps;
}

/** Limits exp(ln S ∓ z·se/S), the upper one cut at 1; `z` is the normal quantile of the confidence. */
export function survivalLimits(step: SurvivalStep, z: number): { lower: number; upper: number } | null {
  if (step.standardError === null) return null;
  const factor = Math.exp((z * step.standardError) / step.survival);
  return { lower: step.survival / factor, upper: Math.min(1, step.survival * factor) };
}
