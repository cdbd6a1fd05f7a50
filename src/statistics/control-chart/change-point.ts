import { mean } from '../summary/moments.ts';

/** A step in the level: where it most likely lies, and where it may lie. */
export interface StepChange {
  /** Place of the first point after the step, from 0. */
  readonly start: number;
  /** Mean of the points from there on. */
  readonly level: number;
  /** First and last place that the data do not speak against. */
  readonly from: number;
  readonly to: number;
}

/**
 * The most likely start of a step away from a known level, given a signal at the last point: the place that makes
 * (T − t)·(mean after t − level)² largest (Samuel, Pignatiello & Calvin 1998, Quality Engineering 10, 521–527). The places
 * that may be it have a log-likelihood within `drop` of the largest.
 *
 * @param values points up to and including the one that signalled
 * @param level the level before the step, such as the centre of the base period
 * @param sigma standard deviation of a point
 * @param drop of the log-likelihood; 2 takes in the true place in 85 % of steps of one sigma, 92 % of two (bench/control-charts.md)
 */
export function stepChange(values: readonly number[], level: number, sigma: number, drop = 2): StepChange {
  if (values.length === 0 || !(sigma > 0)) throw new RangeError('a step needs points and a spread');
  const gains = values.map((_, start) => {
    const after = values.slice(start);
    return (0.5 * after.length * (mean(after) - level) ** 2) / (sigma * sigma);
  });
  const best = Math.max(...gains);
  const start = gains.indexOf(best);
  const likely = gains.flatMap((gain, i) => (gain >= best - drop ? [i] : []));
  return { start, level: mean(values.slice(start)), from: likely[0]!, to: likely.at(-1)! };
}
