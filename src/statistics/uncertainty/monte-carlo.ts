import { type RandomStream, randomStream } from '../random/random-stream.ts';
import { summarise } from '../summary/moments.ts';
import type { Model } from './sensitivity.ts';

/** What is known of an input, as a law to draw from (JCGM 101, table 1). */
export type InputLaw =
  | { readonly kind: 'normal'; readonly mean: number; readonly standardUncertainty: number }
  /** Mean and standard error of n readings: degrees n − 1. */
  | {
      readonly kind: 'student';
      readonly mean: number;
      readonly standardUncertainty: number;
      readonly degrees: number;
    }
  | { readonly kind: 'rectangular'; readonly lower: number; readonly upper: number }
  | { readonly kind: 'triangular'; readonly lower: number; readonly upper: number }
  | { readonly kind: 'arcsine'; readonly lower: number; readonly upper: number };

/** What the drawn values of the result say. */
export interface Propagation {
  readonly trials: number;
  readonly mean: number;
  readonly standardUncertainty: number;
  /** As much probability below as above. */
  readonly symmetric: { readonly lower: number; readonly upper: number };
  /** The narrowest interval; where the density is flat its ends move from run to run while its width does not. */
  readonly shortest: { readonly lower: number; readonly upper: number };
}

/**
 * Propagates distributions by drawing (JCGM 101, clause 7): so many independent draws of all inputs through the model.
 *
 * @param trials 10⁶ for two digits of a 95 % interval (JCGM 101, 7.2.3)
 * @param seed the same seed gives the same numbers
 */
export function propagateByDrawing(
  model: Model,
  laws: readonly InputLaw[],
  { trials, seed, level }: { readonly trials: number; readonly seed: number; readonly level: number },
): Propagation {
  const inside = Math.round(level * trials);
  if (!(inside > 0 && inside < trials)) throw new RangeError(`${trials} trials give no ${level} interval`);
  const stream = randomStream(seed);
  const draws = laws.map((law) => drawFrom(law, stream));
  const inputs = new Array<number>(laws.length).fill(0);
  const results = new Float64Array(trials);
  for (let trial = 0; trial < trials; trial++) {
    for (let i = 0; i < draws.length; i++) inputs[i] = draws[i]!();
    results[trial] = model(inputs);
  }
  results.sort();
  const { mean, standardDeviation } = summarise(Array.from(results));
  const interval = (start: number) => ({ lower: results[start]!, upper: results[start + inside]! });
  let narrowest = 0;
  for (let start = 1; start + inside < trials; start++) {
    const wider = results[narrowest + inside]! - results[narrowest]!;
    if (results[start + inside]! - results[start]! < wider) narrowest = start;
  }
  return {
    trials,
    mean,
    standardUncertainty: standardDeviation!,
    symmetric: interval(Math.floor((trials - inside) / 2)),
    shortest: interval(narrowest),
  };
}

function drawFrom(law: InputLaw, stream: RandomStream): () => number {
  switch (law.kind) {
    case 'normal':
      return () => law.mean + law.standardUncertainty * stream.normal();
    case 'student': {
      // Bailey (1994), "Polar generation of random variates with the t-distribution", Math. Comp. 62, 779–781.
      const { mean, standardUncertainty, degrees } = law;
      return () => {
        const radius = Math.sqrt(degrees * Math.expm1((-2 / degrees) * Math.log(stream.uniform())));
        return mean + standardUncertainty * radius * Math.cos(2 * Math.PI * stream.uniform());
      };
    }
    case 'rectangular':
      return () => law.lower + (law.upper - law.lower) * stream.uniform();
    case 'triangular':
      return () => law.lower + 0.5 * (law.upper - law.lower) * (stream.uniform() + stream.uniform());
    case 'arcsine': {
      const middle = 0.5 * (law.lower + law.upper);
      const half = 0.5 * (law.upper - law.lower);
      return () => middle + half * Math.sin(2 * Math.PI * stream.uniform());
    }
  }
}
