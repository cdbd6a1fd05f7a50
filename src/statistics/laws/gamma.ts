import { incompleteGamma } from '../special/incomplete-gamma.ts';
import { type ProbabilityLaw, positiveLaw } from './probability-law.ts';

/** The gamma law of a shape and a scale, mean shape·scale. */
export function gammaLaw(shape: number, scale = 1): ProbabilityLaw {
  return positiveLaw((x) => incompleteGamma(shape, x / scale), shape * scale);
}

/** The chi-squared law of so many degrees of freedom: gamma of half of them, scale 2. */
export function chiSquaredLaw(degrees: number): ProbabilityLaw {
  return gammaLaw(0.5 * degrees, 2);
}
