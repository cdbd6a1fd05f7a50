import { describe, expect, test } from 'vitest';
import type { LawName } from '../../../src/statistics/law.ts';
import { type Law, laws } from '../../../src/statistics/laws/laws.ts';
import { prepareProfile } from '../../../src/statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../../../src/statistics/likelihood/critical.ts';
import { type Fit, fitLocationScale } from '../../../src/statistics/likelihood/fit.ts';
import { gatherObservations } from '../../../src/statistics/likelihood/observation.ts';
import { profileFailure, profileQuantile } from '../../../src/statistics/likelihood/profile.ts';
import { profileScale } from '../../../src/statistics/likelihood/profile-scale.ts';
import { estimateFailure, estimateQuantile } from '../../../src/statistics/likelihood/quantile.ts';
import { expectRelative } from '../../reference/likelihood/case.ts';
import fits from '../../reference/likelihood/fits.json' with { type: 'json' };

interface ReferenceFit {
  location: number;
  scale: number;
  logLikelihood: number;
  covariance: number[];
  quantiles: { probability: number; value: number; standardError: number; profile: number[] }[];
  scaleProfile: number[];
  failure: { at: number; value: number; profile: number[] };
  glm?: { location: number; scale: number };
}

const ESTIMATES = 1e-8;
const ERRORS = 1e-6;
const critical = likelihoodRatioCritical(fits.level, 2);

const cases = Object.entries(fits.sets).flatMap(([set, { lower, upper, count, fits: byLaw }]) =>
  Object.entries(byLaw as Record<string, ReferenceFit>).map(([name, reference]) => {
    const observations = count.map((n, i) => ({
      lower: lower[i] ?? -Infinity,
      upper: upper[i] ?? Infinity,
      count: n,
    }));
    const law: Law = laws[name as LawName];
    return [
      `${set}, ${name}`,
      { law, sample: gatherObservations(observations, law.scale), reference },
    ] as const;
  }),
);

describe.each(cases)(
  'against R survreg, glm and a likelihood in R (computed): %s',
  (_, { law, sample, reference }) => {
    const fit = fitLocationScale(sample, law.standard) as Fit;
    const basis = prepareProfile(sample, law.standard);

    test('location, scale, log-likelihood', () => {
      expect(fit.kind).toBe('exists');
      expectRelative(fit.location, reference.location, ESTIMATES);
      expectRelative(fit.scale, reference.scale, ESTIMATES);
      expectRelative(fit.logLikelihood, reference.logLikelihood, ESTIMATES);
      if (reference.glm) {
        expectRelative(fit.location, reference.glm.location, ESTIMATES);
        expectRelative(fit.scale, reference.glm.scale, ESTIMATES);
      }
    });

    test('covariance of location and scale, quantiles with their standard errors', () => {
      const { location, cross, scale } = fit.covariance;
      expectRelative(location, reference.covariance[0]!, ERRORS);
      expectRelative(cross, reference.covariance[1]!, ERRORS);
      expectRelative(scale, reference.covariance[2]!, ERRORS);
      for (const { probability, value, standardError } of reference.quantiles) {
        const found = estimateQuantile(fit, law, probability);
        expectRelative(found.value, value, ESTIMATES);
        expectRelative(found.standardError, standardError, ERRORS);
      }
      expectRelative(
        estimateFailure(fit, law, reference.failure.at).failure,
        reference.failure.value,
        ESTIMATES,
      );
    });

    test('profile limits of quantiles, scale and failure probability', () => {
      for (const { probability, profile } of reference.quantiles) {
        const { lower, upper } = profileQuantile(basis, probability, critical);
        expectRelative(lower.value, profile[0]!, ERRORS);
        expectRelative(upper.value, profile[1]!, ERRORS);
      }
      const scale = profileScale(basis, critical);
      expectRelative(scale.lower.value, reference.scaleProfile[0]!, ERRORS);
      expectRelative(scale.upper.value, reference.scaleProfile[1]!, ERRORS);
      const { failure, reliability } = profileFailure(basis, reference.failure.at, critical);
      expectRelative(failure.lower.value, reference.failure.profile[0]!, ERRORS);
      expectRelative(failure.upper.value, reference.failure.profile[1]!, ERRORS);
      expectRelative(reliability.lower.value, 1 - reference.failure.profile[1]!, ERRORS);
      expectRelative(reliability.upper.value, 1 - reference.failure.profile[0]!, ERRORS);
    });
  },
);
