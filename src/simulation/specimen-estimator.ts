import { normal } from '../statistics/laws/normal.ts';
import { fromScale, type Sample, toScale } from '../statistics/likelihood/observation.ts';
import { fitSpecimenEffect } from '../statistics/specimen-effect/fit.ts';
import type { Hit } from '../statistics/specimen-effect/history.ts';
import { specimenQuantileInterval } from '../statistics/specimen-effect/profile.ts';
import type { Estimator, SimulatedTest } from './estimator.ts';

/**
 * The median of a single hit on a fresh tyre by the fit with a specimen effect, and the spread of such hits. Some
 * milliseconds a test, so that it is given where it is asked for; its interval ten times that.
 *
 * @param damage share of its strength that each earlier hit is taken to cost
 */
export function specimenEstimators(confidence: number, scale: Sample['scale'], damage: number): Estimator[] {
  const options = { scale, confidence, damage };
  let last: { readonly truth: SimulatedTest['truth']; readonly fit: ReturnType<typeof fitOf> } | null = null;

  function fitOf(test: SimulatedTest) {
    const histories = historiesOf(test);
    const fit = fitSpecimenEffect(histories, options);
    return { histories, fit: 'location' in fit ? fit : null };
  }

  /** Each test has a truth of its own: the object is the test's name. */
  function fitted(test: SimulatedTest) {
    if (last?.truth !== test.truth) last = { truth: test.truth, fit: fitOf(test) };
    return last.fit;
  }

  return [
    {
      quantity: 'medianFailureEnergy',
      method: 'specimen-effect',
      unit: 'J',
      intervals: [{ level: confidence, sides: 2, method: 'profile-likelihood' }],
      errorOf(test, [interval]) {
        const { histories, fit } = fitted(test);
        if (interval) {
          const found = fit && specimenQuantileInterval(histories, options, 0.5);
          const y = toScale(test.truth.median, scale);
          if (found === null || 'kind' in found) interval.absent += 1;
          else {
            if (found.lower <= y && y <= found.upper) interval.held += 1;
            if (!Number.isFinite(found.lower) || !Number.isFinite(found.upper)) interval.unbounded += 1;
          }
        }
        return fit === null ? Number.NaN : fromScale(fit.location, scale) - test.truth.median;
      },
    },
    {
      quantity: 'failureEnergyQuantile',
      probability: 0.1,
      method: 'specimen-effect',
      unit: 'J',
      intervals: [],
      errorOf(test) {
        const { fit } = fitted(test);
        if (fit === null) return Number.NaN;
        const value = fit.location + normal.quantile(0.1) * fit.totalSpread;
        return fromScale(value, scale) - test.truth.quantile(0.1);
      },
    },
  ];
}

function historiesOf({ trials, levels }: SimulatedTest): Hit[][] {
  const histories: Hit[][] = [];
  for (let i = 0; i < trials.size; i++) {
    const specimen = trials.specimen[i]!;
    histories[specimen] ??= [];
    const history = histories[specimen];
    history.push({
      level: levels.energy[trials.level[i]!]!,
      failed: trials.failed[i] === 1,
      earlier: history.length,
    });
  }
  return histories;
}
