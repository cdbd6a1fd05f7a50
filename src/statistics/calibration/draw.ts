import { normal } from '../laws/normal.ts';
import type { RandomStream } from '../random/random-stream.ts';
import type { Experiment, Trials } from './experiment.ts';
import { lawTable, tailValue } from './law-table.ts';

/** How many values a random word has. */
const WORDS = 0x100000000;

/** Location and scale of a strength law on the fitted scale. */
export interface Strength {
  readonly location: number;
  readonly scale: number;
}

/**
 * Draws tests of an experiment on specimens of a known strength. With a share of the variance between specimens the
 * strength of a hit is Q(Φ(√share·u + √(1 − share)·v)), u normal for the specimen and v for the hit: each hit taken by
 * itself follows the law, whichever it is (a Gaussian copula; for the normal law two normal components).
 *
 * @param effects is filled with the u of each specimen (rises: with its uniform number)
 */
export function drawing(
  experiment: Experiment,
  { location, scale }: Strength,
): (stream: RandomStream, into: Trials, effects: Float64Array) => void {
  const { law, levels, share, reading } = experiment;
  const chance = levels.map((level) => law.cdf((level - location) / scale));
  // One word a hit is fine enough for a chance and half the price of a uniform number.
  const words = chance.map((p) => p * WORDS);
  const between = Math.sqrt(share);
  const within = Math.sqrt(1 - share);
  const { cdf } = lawTable(normal);
  const probit = share > 0 ? chance.map((p) => normal.quantile(p)) : chance;
  return (stream, into, effects) => {
    let known = 0;
    const effectOf = (specimen: number): number => {
      while (known <= specimen) effects[known++] = reading === 'rises' ? stream.uniform() : stream.normal();
      return effects[specimen]!;
    };
    if (reading === 'rises') experiment.walk((level, specimen) => effectOf(specimen) < chance[level]!, into);
    else if (share === 0) experiment.walk((level) => stream.word() < words[level]!, into);
    else {
      experiment.walk((level, specimen) => {
        const z = (probit[level]! - between * effectOf(specimen)) / within;
        return stream.word() < WORDS * Math.exp(tailValue(cdf, z));
      }, into);
    }
  };
}
