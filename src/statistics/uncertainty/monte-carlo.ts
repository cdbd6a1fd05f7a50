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

/** How the result is drawn: how often, and from which stream of random numbers. */
export interface Drawing {
  /** 10⁶ for two digits of a 95 % interval (JCGM 101, 7.2.3). */
  readonly trials: number;
  /** The same seed gives the same numbers. */
  readonly seed: number;
}

/** Values of the result from independent draws of all inputs (JCGM 101, clause 7), ascending. */
export function drawResults(
  model: Model,
  laws: readonly InputLaw[],
  { trials, seed }: Drawing,
): Float64Array {
  const stream = randomStream(seed);
  const draws = laws.map((law) => drawFrom(law, stream));
  const inputs = new Array<number>(laws.length).fill(0);
  const results = new Float64Array(trials);
  for (let trial = 0; trial < trials; trial++) {
    for (let i = 0; i < draws.length; i++) inputs[i] = draws[i]!();
    results[trial] = model(inputs);
  }
  return results.sort();
}

/**
 * The interval with as much probability below as above (JCGM 101, 7.7).
 *
 * @param results ascending
 * @throws RangeError where there are too few results for the level
 */
export function symmetricInterval(results: Float64Array, level: number): Propagation['symmetric'] {
  const inside = insideOf(results, level);
  return intervalFrom(results, Math.floor((results.length - inside) / 2), inside);
}

/**
 * Propagates distributions by drawing: all that the drawn results say.
 *
 * @throws RangeError where there are too few trials for the level
 */
export function propagateByDrawing(
  model: Model,
  laws: readonly InputLaw[],
  { level, ...drawing }: Drawing & { readonly level: number },
): Propagation {
  const results = drawResults(model, laws, drawing);
  const inside = insideOf(results, level);
  const { mean, standardDeviation } = summarise(Array.from(results));
  let narrowest = 0;
  for (let start = 1; start + inside < results.length; start++) {
    const wider = results[narrowest + inside]! - results[narrowest]!;
    if (results[start + inside]! - results[start]! < wider) narrowest = start;
  }
  return {
    trials: results.length,
    mean,
    standardUncertainty: standardDeviation!,
    symmetric: symmetricInterval(results, level),
    shortest: intervalFrom(results, narrowest, inside),
  };
}

/** How many results further up an interval of the level ends. */
function insideOf({ length }: Float64Array, level: number): number {
  const inside = Math.round(level * length);
  if (!(inside > 0 && inside < length)) throw new RangeError(`${length} trials give no ${level} interval`);
  return inside;
}

function intervalFrom(results: Float64Array, start: number, inside: number) {
  return { lower: results[start]!, upper: results[start + inside]! };
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
