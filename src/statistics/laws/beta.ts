import { incompleteBeta } from '../special/incomplete-beta.ts';
import { type ProbabilityLaw, solveTails, tailFunctions } from './probability-law.ts';

/** The beta law of shapes a and b on [0, 1], mean a/(a + b). */
export function betaLaw(a: number, b: number): ProbabilityLaw {
  const tails = (x: number) => incompleteBeta(a, b, Math.min(1, Math.max(0, x)));
  return {
    ...tailFunctions(tails),
    quantile: (p) => betaQuantile(a, b, p, 1 - p),
    quantileOfSf: (q) => betaQuantile(a, b, 1 - q, q),
  };
}

/**
 * Solved for the odds, so that x near 0 and 1 − x near 0 both keep their digits until the last step.
 *
 * @param p share below, q share above
 */
function betaQuantile(a: number, b: number, p: number, q: number): number {
  const odds = betaOddsQuantile(a, b, p, q);
  return odds === Infinity ? 1 : odds / (1 + odds);
}

/** x/(1 − x) at the quantile of the beta law that has p below and q = 1 − p above. */
export function betaOddsQuantile(a: number, b: number, p: number, q: number): number {
  const tails = (odds: number) => incompleteBeta(a, b, odds / (1 + odds), 1 / (1 + odds));
  return solveTails(tails, Math.exp, Math.log(a / b), p, q);
}
