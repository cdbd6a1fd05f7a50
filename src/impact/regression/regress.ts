import type { ImpactProtocol, Regression } from '../../documents/kinds.ts';
import { significant } from '../../quantity/format.ts';
import type { RegressionResult } from '../../result/regression.ts';
import { laws } from '../../statistics/laws/laws.ts';
import type { Covariate } from '../../statistics/regression/design.ts';
import { fitRegression, type RegressionFit, type RegressionModel } from '../../statistics/regression/fit.ts';
import { ratioTest } from '../../statistics/regression/ratio-test.ts';
import { explainRefusal } from '../../statistics/regression/refusal.ts';
import type { StrengthObservation } from '../observations.ts';
import { type ConstructionOf, covariateOf, unitOfCovariate } from './covariates.ts';

/** A regression that was carried out: what is printed of it, and the fit that adjusted estimates come from. */
export interface Regressed {
  readonly result: RegressionResult;
  readonly fit: RegressionFit | null;
  /** What was fitted, numbers about their mean. */
  readonly model: RegressionModel;
  readonly covariates: readonly Covariate[];
}

type Terms = readonly (readonly string[])[];

/**
 * Effects of the protocol's covariates on the strength, on the same censored likelihood as the estimates. A covariate
 * is tested by leaving its term out of the model without interactions, an interaction by leaving it out of the whole.
 * One that is missing, constant or aliased makes the regression be refused, by its name.
 */
export function regress(
  { distribution, method }: ImpactProtocol,
  { covariates: names, interactions }: Regression,
  observations: readonly StrengthObservation[],
  constructionOf: ConstructionOf,
): Regressed {
  const law = laws[distribution];
  const unit = law.scale === 'log' ? '1' : 'J';
  const refused = (why: string): Regressed => ({
    result: { unit, effects: [], tests: [], why, notes: [] },
    fit: null,
    model: { observations, covariates: [], terms: [] },
    covariates: [],
  });
  const found = names.map((name) => covariateOf(name, observations, constructionOf));
  const missing = found.filter((one) => typeof one === 'string');
  if (missing.length > 0) return refused(missing.join('; '));
  const covariates = found as Covariate[];
  const mains = names.map((name) => [name]);
  const terms: Terms = [...mains, ...interactions];
  const modelOf = (of: Terms) => ({ observations, covariates: centred(covariates), terms: of });
  const fitOf = (of: Terms) => fitRegression(modelOf(of), law);
  const whole = fitOf(terms);
  if (whole.kind !== 'exists') return refused(explainRefusal(whole));
  const additive = interactions.length === 0 ? whole : fitOf(mains);
  const tests = terms.map((term) => {
    const isMain = term.length === 1;
    const larger = isMain ? additive : whole;
    const rest = (isMain ? mains : terms).filter((other) => other.join() !== term.join());
    const smaller = fitOf(rest);
    const name = term.join(' × ');
    if (larger.kind === 'exists' && smaller.kind === 'exists') {
      return { term: name, ...ratioTest(smaller, larger), why: null };
    }
    const obstacle = smaller.kind === 'exists' ? larger : smaller;
    const why = obstacle.kind === 'exists' ? null : explainRefusal(obstacle);
    return { term: name, statistic: null, degrees: null, p: null, why };
  });
  return {
    result: { unit, effects: effectsOf(whole), tests, why: null, notes: notesOf(covariates, method) },
    fit: whole,
    model: modelOf(terms),
    covariates,
  };
}

/** The regression that one sample can have: its tyres are of one construction. */
export function withinSample({ covariates, interactions, adjust }: Regression): Regression {
  return {
    covariates: covariates.filter((name) => name !== 'construction'),
    interactions: interactions.filter((pair) => !pair.includes('construction')),
    adjust,
  };
}

/** Numbers about their mean, so that an effect beside an interaction is that at the mean. */
export function centred(covariates: readonly Covariate[]): Covariate[] {
  return covariates.map((covariate) => {
    if (covariate.kind === 'factor') return covariate;
    const mean = meanOf(covariate.values);
    // A constant stays one: rounding must not turn it into a covariate.
    const isConstant = covariate.values.every((value) => value === covariate.values[0]);
    return isConstant ? covariate : { ...covariate, values: covariate.values.map((value) => value - mean) };
  });
}

export function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function effectsOf({ effects }: RegressionFit): RegressionResult['effects'] {
  return effects
    .filter(({ term }) => term !== 'intercept')
    .map(({ name, term, value, standardError }) => {
      const units = term.split(' × ').map(unitOfCovariate);
      const per = units.filter((unit) => unit !== null).join('·');
      return { name, term, value, standardError, per: per === '' ? null : per };
    });
}

function notesOf(covariates: readonly Covariate[], method: ImpactProtocol['method']): string[] {
  const notes = covariates.map((covariate) => {
    if (covariate.kind === 'factor') return `${covariate.name}: differences from ${covariate.values[0]}`;
    const unit = unitOfCovariate(covariate.name) ?? '';
    return `${covariate.name}: effect per ${unit}, mean ${significant(meanOf(covariate.values), 4)} ${unit}`;
  });
  const rises = method === 'rising-height' ? ['each rise stands with the mean of its hits'] : [];
  return [...notes, ...rises];
}
