import type { Law } from '../laws/laws.ts';
import type { Observation } from '../likelihood/observation.ts';
import { gatherCells } from './cells.ts';
import { buildDesign, type Covariate, type Design, levelsOf } from './design.ts';
import { maximiseLocationScale } from './location-scale.ts';
import { type Orthogonal, orthogonalise, solveTriangle } from './orthogonal.ts';
import type { RegressionRefusal } from './refusal.ts';
import { judgeSeparation, type Separation } from './separation.ts';

/** What is regressed on what. */
export interface RegressionModel {
  readonly observations: readonly Observation[];
  /** Each with one value an observation. */
  readonly covariates: readonly Covariate[];
  /** What moves the location: covariates by name, or several for their interaction. The intercept is always there. */
  readonly terms: readonly (readonly string[])[];
  /** A factor whose levels have a scale each; one common scale without. It should be a term too. */
  readonly scaleBy?: string;
}

/** An effect on the location, on the fitted scale: for a factor the difference from its reference. */
export interface Effect {
  readonly name: string;
  readonly term: string;
  readonly value: number;
  readonly standardError: number;
}

/** The scale of a group; `group` is null where all share it. */
export interface GroupScale {
  readonly group: string | null;
  readonly value: number;
  readonly standardErrorOfLog: number;
}

/** A maximum-likelihood regression on the fitted scale (x, or ln x for lognormal and Weibull). */
export interface RegressionFit {
  readonly kind: 'exists';
  readonly law: Law;
  readonly design: Design;
  readonly effects: readonly Effect[];
  readonly scales: readonly GroupScale[];
  /** Inverse observed information of the effects, then the log scales; row by row. */
  readonly covariance: Float64Array;
  /** On the original scale of x. */
  readonly logLikelihood: number;
  readonly iterations: number;
}

/**
 * Fits effects of covariates on the location of the censored location–scale likelihood by Newton's method with the
 * observed information. Probit and logit regression are the case of failures and survivals only.
 *
 * Constant and aliased covariates are refused by name; whether a finite estimate exists is decided from the data, never
 * from convergence. With scales by group each group is judged by itself, which refuses a little more than it must: a
 * group whose own data are separated might still be held by effects that it shares.
 *
 * @throws RangeError for a model that is no model (see `buildDesign`) or an observation that is none
 */
export function fitRegression(model: RegressionModel, law: Law): RegressionFit | RegressionRefusal {
  const { observations, covariates, terms, scaleBy } = model;
  if (observations.length === 0) return { kind: 'empty' };
  const design = buildDesign(covariates, terms, observations.length);
  const used = new Set(terms.flat());
  const constant = covariates.find((c) => used.has(c.name) && new Set<string | number>(c.values).size < 2);
  if (constant !== undefined) return { kind: 'constant', covariate: constant.name };
  const basis = orthogonalise(design.rows);
  if (basis.kind === 'dependent')
    return { kind: 'aliased', column: design.columns[basis.column]!, with: namesOf(basis.on, design) };
  const { names, of } = groupsOf(covariates, scaleBy, observations.length);
  const refusal = judge(model, law, design, basis, names, of);
  if (refusal !== null) return refusal;
  const cells = gatherCells(observations, basis.rows, of, law.scale);
  const { point, value, covariance, iterations } = maximiseLocationScale(cells, law.standard, names.length);
  const logJacobian = cells.reduce((sum, cell) => sum + cell.sample.logJacobian, 0);
  const back = inOriginalColumns(basis, names.length, covariance);
  const width = design.columns.length;
  const size = width + names.length;
  const values = solveTriangle(basis.triangle, point.subarray(0, width));
  return {
    kind: 'exists',
    law,
    design,
    effects: design.columns.map((name, j) => ({
      name,
      term: design.terms[j]!,
      value: values[j]!,
      standardError: Math.sqrt(back[j * size + j]!),
    })),
    scales: names.map((group, g) => ({
      group,
      value: Math.exp(point[width + g]!),
      standardErrorOfLog: Math.sqrt(back[(width + g) * (size + 1)]!),
    })),
    covariance: back,
    logLikelihood: value + logJacobian,
    iterations,
  };
}

function groupsOf(covariates: readonly Covariate[], scaleBy: string | undefined, size: number) {
  if (scaleBy === undefined) return { names: [null], of: new Array<number>(size).fill(0) };
  const factor = covariates.find((c) => c.name === scaleBy);
  if (factor?.kind !== 'factor') throw new RangeError(`scales go by a factor; ${scaleBy} is none`);
  const names = levelsOf(factor).filter((level) => factor.values.includes(level));
  return { names, of: factor.values.map((level) => names.indexOf(level)) };
}

/** Judges all observations with one scale or, where each group has its own, each group with what varies within it. */
function judge(
  { observations }: RegressionModel,
  law: Law,
  design: Design,
  basis: Orthogonal,
  names: readonly (string | null)[],
  of: readonly number[],
): RegressionRefusal | null {
  for (const [g, group] of names.entries()) {
    const members = of.flatMap((h, i) => (h === g ? [i] : []));
    const own =
      names.length === 1 ? { basis, kept: design.columns.map((_, j) => j) } : withinGroup(design, members);
    const cells = gatherCells(
      members.map((i) => observations[i]!),
      own.basis.rows,
      members.map(() => 0),
      law.scale,
    );
    const refusal = named(judgeSeparation(cells, law.standard), own.basis, own.kept, design);
    if (refusal !== null) return group === null ? refusal : { kind: 'group', group, refusal };
  }
  return null;
}

/** The columns that are independent within a group. */
function withinGroup(design: Design, members: readonly number[]): { basis: Orthogonal; kept: number[] } {
  let kept = design.columns.map((_, j) => j);
  for (;;) {
    const basis = orthogonalise(members.map((i) => Float64Array.from(kept, (j) => design.rows[i]![j]!)));
    if (basis.kind === 'independent') return { basis, kept };
    const { column } = basis;
    kept = kept.filter((_, k) => k !== column);
  }
}

function named(
  separation: Separation,
  basis: Orthogonal,
  kept: readonly number[],
  design: Design,
): RegressionRefusal | null {
  switch (separation.kind) {
    case 'exists':
      return null;
    case 'level-aliased':
      return {
        kind: 'level-aliased',
        with: namesOf(
          kept.filter((j) => j > 0),
          design,
        ),
      };
    case 'separated': {
      const effects = solveTriangle(basis.triangle, separation.effects);
      const sizes = effects.map((e, k) => Math.abs(e) * Math.abs(basis.triangle[k]![k]!));
      const largest = Math.max(Math.abs(separation.steepness), ...sizes);
      const columns = kept.filter((j, k) => j > 0 && sizes[k]! > 1e-7 * largest);
      return {
        kind: 'separated',
        columns: namesOf(columns, design),
        spread: separation.steepness > 1e-7 * largest,
      };
    }
    default:
      return separation;
  }
}

function namesOf(columns: readonly number[], design: Design): string[] {
  return columns.filter((j) => j > 0 || columns.length === 1).map((j) => design.columns[j]!);
}

/** Covariance of (β, ln scale) with β = R⁻¹γ, from that of (γ, ln scale). */
function inOriginalColumns(basis: Orthogonal, groups: number, covariance: Float64Array): Float64Array {
  const width = basis.triangle.length;
  const size = width + groups;
  const half = new Float64Array(size * size);
  const whole = new Float64Array(size * size);
  const apply = (from: Float64Array, to: Float64Array) => {
    for (let k = 0; k < size; k++) {
      const column = Float64Array.from({ length: size }, (_, i) => from[i * size + k]!);
      const solved = solveTriangle(basis.triangle, column.subarray(0, width));
      // Written transposed, so that the second pass treats the other side.
      for (let i = 0; i < size; i++) to[k * size + i] = i < width ? solved[i]! : column[i]!;
    }
  };
  apply(covariance, half);
  apply(half, whole);
  return whole;
}
