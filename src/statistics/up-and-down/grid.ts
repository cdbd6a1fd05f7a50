/** Levels a step apart on the scale where strength is taken as normal (x, or ln x for a step that is a ratio). */
export interface Grid {
  /** Level number 0: the start of the test. */
  readonly origin: number;
  /** d > 0; for a ratio r it is ln(1 + r). */
  readonly step: number;
}

/**
 * The number k of the level origin + k·step that y is, or null when y lies off the grid.
 *
 * @param tolerance as a share of the step; default 5 %, which lets rounded heights of a geometric series pass
 */
export function levelNumber(y: number, { origin, step }: Grid, tolerance = 0.05): number | null {
  const exact = (y - origin) / step;
  const nearest = Math.round(exact);
  return Math.abs(exact - nearest) <= tolerance ? nearest : null;
}

/** One drop of an up-and-down test by the number of its level. */
export interface LevelDrop {
  readonly level: number;
  readonly failed: boolean;
}
