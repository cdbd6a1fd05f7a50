import { incompleteBeta } from '../special/incomplete-beta.ts';
import { type ProbabilityLaw, positiveLaw } from './probability-law.ts';

/** Fisher's F: the ratio of two mean squares of `above` and `below` degrees of freedom. */
export function fisherLaw(above: number, below: number): ProbabilityLaw {
  const tails = (f: number) => {
    if (f === Infinity) return incompleteBeta(0.5 * above, 0.5 * below, 1, 0);
    const sum = below + above * f;
    return incompleteBeta(0.5 * above, 0.5 * below, (above * f) / sum, below / sum);
  };
  return positiveLaw(tails, 1);
}
