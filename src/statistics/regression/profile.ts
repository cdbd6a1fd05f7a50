import type { StandardLaw } from '../laws/standard-law.ts';
import { fromScale } from '../likelihood/observation.ts';
import { findOutward } from '../likelihood/outward.ts';
import { emptyTerm, sumTerms } from '../likelihood/term.ts';
import type { Limits } from '../likelihood/wald.ts';
import { type Cell, gatherCells } from './cells.ts';
import type { Setting } from './design.ts';
import type { RegressionFit, RegressionModel } from './fit.ts';
import { maximise, type Peak } from './newton.ts';
import { predictQuantile } from './predict.ts';

/**
 * Profile-likelihood interval of the level at which the share `probability` fails under a setting of the covariates, on
 * the scale of x; an end is null where the interval is unbounded.
 *
 * With the columns of the design measured from the setting, laws that are held to pass through (q, probability) have
 * z = z_p + b·(y − q) − Σ x·δ, with b = 1/scale and δ the effects times b: the log-likelihood is concave in (b, δ), b ≥ 0.
 * The interval is unbounded upward exactly when a failure probability that does not depend on the level, of at most
 * `probability` at the setting, is not rejected; downward likewise.
 *
 * @param fit of the model, with one scale for all
 * @param critical of the likelihood ratio: likelihoodRatioCritical(level, sides); for a one-sided bound read one end
 * @throws RangeError for scales by group, or a setting that the fit does not know
 */
export function profilePrediction(
  { observations }: RegressionModel,
  fit: RegressionFit,
  probability: number,
  setting: Setting,
  critical: number,
): Limits {
  if (fit.scales.length > 1)
    throw new RangeError('the profile of a prediction is for one scale, not several');
  const { design, law } = fit;
  const here = design.rowAt(setting);
  const rows = design.rows.map((row) => row.map((x, j) => (j === 0 ? x : x - here[j]!)));
  const cells = gatherCells(
    observations,
    rows,
    rows.map(() => 0),
    law.scale,
  );
  const jacobian = cells.reduce((sum, { sample }) => sum + sample.logJacobian, 0);
  const supremum = fit.logLikelihood - jacobian;
  const z = law.standard.quantile(probability);
  const { fitted, standardErrorOfFitted } = predictQuantile(fit, probability, setting);
  const value = heldProfile(cells, law.standard, z, 1 / fit.scales[0]!.value);
  const excess = (q: number) => Math.sqrt(Math.max(0, 2 * (supremum - value(q)))) - Math.sqrt(critical);
  const flat = flatLimits(cells, law.standard, z);
  const end = (side: -1 | 1, limit: number): number | null => {
    if (2 * (supremum - limit) <= critical) return null;
    const q = findOutward(excess, fitted, side * standardErrorOfFitted);
    return q === null ? null : fromScale(q, law.scale);
  };
  return { lower: end(-1, flat.below), upper: end(1, flat.above) };
}

/** The highest log-likelihood over b and δ with the quantile held at q. */
function heldProfile(cells: readonly Cell[], law: StandardLaw, z: number, steepness: number) {
  const effects = cells[0]!.row.length - 1;
  let last: Float64Array = Float64Array.from({ length: effects + 1 }, (_, j) => (j === 0 ? steepness : 0));
  const level = atLevels(cells, law, z);
  const flat = level.isFlatPossible ? flatMaximum(cells, law, z, 1) : null;
  return (q: number): number => {
    if (flat !== null) {
      // Concave: where b = 0 rises no more with b, it is best.
      const peak = emptyPeak(effects + 1);
      level.evaluate(q, Float64Array.of(0, ...flat.point), peak);
      if (peak.gradient[0]! <= 0) return flat.value;
    }
    const found = maximise((point, into) => {
      if (point[0]! > 0) level.evaluate(q, point, into);
      else into.value = -Infinity;
    }, last);
    last = found.point;
    return found.value;
  };
}

/** The log-likelihood over (b, δ) with the levels measured from q. */
function atLevels(cells: readonly Cell[], law: StandardLaw, z: number) {
  const term = emptyTerm();
  const isFlatPossible = cells.every(({ sample }) =>
    sample.lower.every((low, i) => low === -Infinity || sample.upper[i] === Infinity),
  );
  const evaluate = (q: number, point: Float64Array, into: Peak): void => {
    const size = point.length;
    clear(into);
    const { gradient, hessian } = into;
    for (const { row, sample } of cells) {
      sumTerms(sample, law, q, z - sumOf(row, point, 1), point[0]!, term);
      into.value += term.value;
      gradient[0]! += term.steepness;
      hessian[0]! += term.steepness2;
      for (let j = 1; j < size; j++) {
        const x = -row[j]!;
        gradient[j]! += x * term.predictor;
        hessian[j]! += x * term.cross;
        hessian[j * size]! += x * term.cross;
        for (let k = 1; k < size; k++) hessian[j * size + k]! -= x * row[k]! * term.predictor2;
      }
    }
  };
  return { isFlatPossible, evaluate };
}

/** What the profile tends to as q runs to ±∞: probabilities that do not depend on the level. */
function flatLimits(cells: readonly Cell[], law: StandardLaw, z: number): { above: number; below: number } {
  if (!atLevels(cells, law, z).isFlatPossible) return { above: -Infinity, below: -Infinity };
  const free = flatMaximum(cells, law, z, 0);
  const held = flatMaximum(cells, law, z, 1);
  // The first coordinate is taken off z: above nought the share failed at the setting is below the one asked for.
  const isBelow = free.point[0]! >= 0;
  return { above: isBelow ? free.value : held.value, below: isBelow ? held.value : free.value };
}

/** The same at b = 0. @param from 0: with the intercept; 1: with the share at the setting held. */
function flatMaximum(cells: readonly Cell[], law: StandardLaw, z: number, from: 0 | 1) {
  const size = cells[0]!.row.length - from;
  const term = emptyTerm();
  return maximise((point, into) => {
    clear(into);
    const { gradient, hessian } = into;
    for (const { row, sample } of cells) {
      sumTerms(sample, law, 0, z - sumOf(row.subarray(from), point, 0), 0, term);
      into.value += term.value;
      for (let j = 0; j < size; j++) {
        gradient[j]! -= row[j + from]! * term.predictor;
        for (let k = 0; k < size; k++)
          hessian[j * size + k]! += row[j + from]! * row[k + from]! * term.predictor2;
      }
    }
  }, new Float64Array(size));
}

/** Σ row·point from a place on. */
function sumOf(row: Float64Array, point: Float64Array, from: number): number {
  let sum = 0;
  for (let j = from; j < point.length; j++) sum += row[j]! * point[j]!;
  return sum;
}

function emptyPeak(size: number): Peak {
  return { value: 0, gradient: new Float64Array(size), hessian: new Float64Array(size * size) };
}

function clear(peak: Peak): void {
  peak.value = 0;
  peak.gradient.fill(0);
  peak.hessian.fill(0);
}
