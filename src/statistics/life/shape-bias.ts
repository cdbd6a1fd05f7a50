import { laws } from '../laws/laws.ts';
import { fitLocationScale } from '../likelihood/fit.ts';
import { gatherObservations } from '../likelihood/observation.ts';
import { randomStream } from '../random/random-stream.ts';

/**
 * Ross's factor (n − 2)/(n − 0.68), by which the likelihood's Weibull shape from n complete lives is to be multiplied to be right on
 * average (Ross 1994; within 0.004 of simulation from n = 4). The shape is too high in small samples: too little scatter.
 *
 * @throws RangeError below 3
 */
export function shapeBiasFactor(n: number): number {
  if (!(n >= 3)) throw new RangeError(`no factor for ${n} lives`);
  return (n - 2) / (n - 0.68);
}

/** How the estimated shape compares with the true one. */
export interface ShapeBias {
  readonly mean: number;
  readonly median: number;
  /** Monte Carlo error of the mean. */
  readonly error: number;
}

/**
 * The same by simulation, for any plan: the ratio of estimated to true shape does not depend on shape or life where samples are
 * complete or stop at a set number of failures.
 *
 * @param failures of the n, at which the test stops
 */
export function simulateShapeBias(n: number, failures: number, samples: number, seed: number): ShapeBias {
  const ratios: number[] = [];
  for (let i = 0; i < samples; i++) {
    const random = randomStream(seed, i);
    const lives = Array.from({ length: n }, () => -Math.log(random.uniform())).sort((a, b) => a - b);
    const stop = lives[failures - 1]!;
    const observations = lives.map((life, k) =>
      k < failures ? { lower: life, upper: life, count: 1 } : { lower: stop, upper: Infinity, count: 1 },
    );
    const fit = fitLocationScale(gatherObservations(observations, 'log'), laws.weibull.standard);
    if (fit.kind === 'exists') ratios.push(1 / fit.scale);
  }
  ratios.sort((a, b) => a - b);
  const mean = ratios.reduce((a, b) => a + b, 0) / ratios.length;
  const squares = ratios.reduce((sum, ratio) => sum + (ratio - mean) ** 2, 0);
  return {
    mean,
    median: 0.5 * (ratios[Math.floor((ratios.length - 1) / 2)]! + ratios[Math.floor(ratios.length / 2)]!),
    error: Math.sqrt(squares / (ratios.length - 1) / ratios.length),
  };
}
