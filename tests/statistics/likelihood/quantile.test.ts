import { expect, test } from 'vitest';
import { laws } from '../../../src/statistics/laws/laws.ts';
import { normalCritical } from '../../../src/statistics/likelihood/critical.ts';
import { type Fit, fitLocationScale } from '../../../src/statistics/likelihood/fit.ts';
import { gatherObservations } from '../../../src/statistics/likelihood/observation.ts';
import {
  estimateFailure,
  estimateQuantile,
  estimateScale,
} from '../../../src/statistics/likelihood/quantile.ts';
import { waldFailure, waldInterval, waldIntervalOnLog } from '../../../src/statistics/likelihood/wald.ts';
import { expectRelative } from '../../reference/likelihood/case.ts';

// A round fit, so that every number below can be had by hand.
const round: Fit = {
  kind: 'exists',
  location: 6,
  scale: 0.2,
  logLikelihood: -10,
  covariance: { location: 0.0025, cross: 0.0004, scale: 0.0016 },
  iterations: 1,
};

test('delta method on x and on ln x (by hand)', () => {
  const y = 6 + 0.2 * Math.log(-Math.log(0.9));
  const z = Math.log(-Math.log(0.9));
  const error = Math.sqrt(0.0025 + 2 * z * 0.0004 + z * z * 0.0016);
  const weibull = estimateQuantile(round, laws.weibull, 0.1);
  expectRelative(weibull.value, Math.exp(y), 1e-14);
  expectRelative(weibull.standardError, Math.exp(y) * error, 1e-13);
  const median = estimateQuantile(round, laws.normal, 0.5);
  expect(median).toEqual({ value: 6, standardError: 0.05 });
  expect(estimateScale(round)).toEqual({ value: 0.2, standardError: 0.04 });
});

test('the standard error of a quantile is what a small change of location and scale does to it', () => {
  const { covariance } = round;
  const h = 1e-6;
  const at = (dm: number, ds: number) =>
    estimateQuantile({ ...round, location: 6 + dm, scale: 0.2 + ds }, laws.lognormal, 0.9).value;
  const gm = (at(h, 0) - at(-h, 0)) / (2 * h);
  const gs = (at(0, h) - at(0, -h)) / (2 * h);
  const variance =
    gm * gm * covariance.location + 2 * gm * gs * covariance.cross + gs * gs * covariance.scale;
  expectRelative(estimateQuantile(round, laws.lognormal, 0.9).standardError, Math.sqrt(variance), 1e-8);
});

test('failure probability undoes the quantile, with its error by difference quotients', () => {
  const x = estimateQuantile(round, laws.weibull, 0.1).value;
  const found = estimateFailure(round, laws.weibull, x);
  expectRelative(found.failure, 0.1, 1e-12);
  expectRelative(found.reliability, 0.9, 1e-12);
  const { covariance } = round;
  const h = 1e-6;
  const at = (dm: number, ds: number) =>
    estimateFailure({ ...round, location: 6 + dm, scale: 0.2 + ds }, laws.weibull, x).failure;
  const gm = (at(h, 0) - at(-h, 0)) / (2 * h);
  const gs = (at(0, h) - at(0, -h)) / (2 * h);
  const variance =
    gm * gm * covariance.location + 2 * gm * gs * covariance.cross + gs * gs * covariance.scale;
  expectRelative(found.standardError, Math.sqrt(variance), 1e-7);
});

test('a law of positive values has failed nothing at 0', () => {
  expect(estimateFailure(round, laws.weibull, 0)).toMatchObject({
    failure: 0,
    reliability: 1,
    standardError: 0,
  });
});

test('Wald on the natural and on the log scale are two things; on z it stays within 0 and 1', () => {
  const z = normalCritical(0.95, 2);
  const median = estimateQuantile(round, laws.lognormal, 0.5);
  const natural = waldInterval(median, z);
  const log = waldIntervalOnLog(median, z);
  expectRelative(natural.lower, Math.exp(6) * (1 - z * 0.05), 1e-13);
  expectRelative(log.lower, Math.exp(6 - z * 0.05), 1e-13);
  expectRelative(log.upper, Math.exp(6 + z * 0.05), 1e-13);
  const far = waldFailure(round, laws.lognormal, Math.exp(6.9), z);
  expect(far.lower).toBeGreaterThan(0.9);
  expect(far.upper).toBeLessThanOrEqual(1);
});

test('a survivor of the fit type: the union tells estimates from reasons', () => {
  const none = fitLocationScale(gatherObservations([], 'identity'), laws.normal.standard);
  expect(none).toEqual({ kind: 'empty' });
});
