/**
 * What is known of the spread and the lower limits that the count of an up-and-down test gives.
 *
 * The count's s is too small in small samples; n/(n − 3) mends most of it where the step is about one spread (measured:
 * mean s/σ 0.78, 0.81, 0.87, 0.92 at 15, 20, 30, 50 drops), not at half a spread. Svensson and Lorén, from memory.
 *
 * @param drops all valid drops, above 3
 */
export function spreadBiasFactor(drops: number): number {
  if (!(drops > 3)) throw new RangeError(`the factor n/(n − 3) needs more than 3 drops, found ${drops}`);
  return drops / (drops - 3);
}

/**
 * The degrees of freedom that the spread of an up-and-down test is worth, about n/7.7 against the n − 1 of values read
 * singly: from the asymptotic variance of s at a step of one spread (SEN-07, SEN-13 of the reference cases).
 */
export function effectiveDegrees(drops: number): number {
  return drops / 7.7;
}

/** How often the limit m − k·s, k for n − 1 degrees of freedom at 95 % confidence, really held. */
export interface MeasuredCoverage {
  readonly drops: number;
  /** Step in true spreads. */
  readonly step: number;
  /** Share of tests in which the limit for the 10 % point lay below it: with s as counted, and with n/(n − 3)·s. */
  readonly plain: number;
  readonly mended: number;
}

/**
 * 200 000 simulated tests a line, the start one spread off at random; Monte Carlo error 0.001. Computed, no printed
 * source: tests/reference/sen-13.
 */
export const MEASURED_COVERAGE: readonly MeasuredCoverage[] = [
  { drops: 15, step: 0.5, plain: 0.468, mended: 0.591 },
  { drops: 15, step: 1, plain: 0.668, mended: 0.834 },
  { drops: 15, step: 1.5, plain: 0.881, mended: 0.983 },
  { drops: 20, step: 0.5, plain: 0.513, mended: 0.617 },
  { drops: 20, step: 1, plain: 0.655, mended: 0.791 },
  { drops: 20, step: 1.5, plain: 0.867, mended: 0.965 },
  { drops: 30, step: 0.5, plain: 0.559, mended: 0.64 },
  { drops: 30, step: 1, plain: 0.662, mended: 0.756 },
  { drops: 30, step: 1.5, plain: 0.841, mended: 0.931 },
  { drops: 50, step: 0.5, plain: 0.605, mended: 0.665 },
  { drops: 50, step: 1, plain: 0.687, mended: 0.752 },
  { drops: 50, step: 1.5, plain: 0.806, mended: 0.88 },
  { drops: 100, step: 0.5, plain: 0.648, mended: 0.688 },
  { drops: 100, step: 1, plain: 0.716, mended: 0.761 },
  { drops: 100, step: 1.5, plain: 0.777, mended: 0.825 },
];

/**
 * The sentence that must stand beside a printed limit m − k·s of an up-and-down test. It takes the measured line of the
 * nearest number of drops, at the steps of half to one and a half spreads, since the true spread is not known.
 *
 * @param mended whether s was multiplied by n/(n − 3)
 */
export function classicalLimitCaveat(drops: number, mended: boolean): string {
  const distance = (c: MeasuredCoverage) => Math.abs(Math.log(c.drops / drops));
  const nearest = MEASURED_COVERAGE.reduce((a, b) => (distance(b) < distance(a) ? b : a)).drops;
  const held = MEASURED_COVERAGE.filter((c) => c.drops === nearest).map((c) => {
    return Math.round(100 * (mended ? c.mended : c.plain));
  });
  return (
    `nominally 95 %, but it held in ${held[0]}, ${held[1]} and ${held[2]} of 100 simulated tests of ${nearest} drops ` +
    'with steps of 0.5, 1 and 1.5 spreads (10 % point): the spread of an up-and-down test is known like one with ' +
    `about ${Number(effectiveDegrees(drops).toPrecision(2))} degrees of freedom, not ${drops - 1}`
  );
}
