import type { EstimatorName } from '../../documents/kinds.ts';
import type { Goodness } from '../../result/goodness.ts';
import { compareLaws } from '../../statistics/goodness/compare-laws.ts';
import { groupedFit } from '../../statistics/goodness/grouped-fit.ts';
import { lawCaveat } from '../../statistics/goodness/law-caveat.ts';
import type { LawName } from '../../statistics/law.ts';
import { fitLocationScale } from '../../statistics/likelihood/fit.ts';
import { gatherObservations } from '../../statistics/likelihood/observation.ts';
import { noEstimateSentence } from '../estimates/no-estimate.ts';
import type { LevelEvidence } from './evidence.ts';

const LAWS: readonly LawName[] = ['normal', 'lognormal', 'logistic', 'weibull'];

/**
 * How the laws compare on these drops, and how the protocol's law fits level by level: with the word how little so many
 * drops tell. Null where it is not asked for.
 */
export function goodnessOfFit(evidence: LevelEvidence, asked: readonly EstimatorName[]): Goodness | null {
  const { protocol, law, responses } = evidence;
  if (!asked.includes('goodness-of-fit') && !protocol.estimators.includes('goodness-of-fit')) return null;
  const { observations, drops } = evidence.observations;
  const { fits, without } = compareLaws(observations, LAWS);
  const fit = fitLocationScale(gatherObservations(observations, law.scale), law.standard);
  const grouped =
    fit.kind === 'exists' && protocol.method !== 'rising-height'
      ? groupedFit(responses, (y) => law.standard.cdf((y - fit.location) / fit.scale))
      : null;
  const why =
    protocol.method === 'rising-height'
      ? 'rises are no groups of drops at a level'
      : fit.kind === 'exists'
        ? (grouped?.why ?? null)
        : noEstimateSentence(fit, 'J');
  return {
    laws: fits.map(({ law: distribution, logLikelihood, aic, weight }) => ({
      distribution,
      logLikelihood,
      aic,
      weight,
    })),
    without: without.map(({ law: distribution, why: reason }) => ({
      distribution,
      why: reason === 'not-positive' ? 'it has no level at or below nought' : noEstimateSentence(reason, 'J'),
    })),
    grouped: grouped?.value == null ? null : { distribution: protocol.distribution, ...grouped.value },
    why,
    caveat: lawCaveat(drops),
  };
}
