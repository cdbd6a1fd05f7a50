import type { CovariateName } from '../../documents/kinds.ts';
import type { Drop } from '../../logs/drop.ts';
import type { Covariate } from '../../statistics/regression/design.ts';
import type { StrengthObservation } from '../observations.ts';

/** The construction of a specimen by its name, where the table of specimens says. */
export type ConstructionOf = (specimen: string) => string | null;

/** Units of the covariates that are numbers; the others are factors. */
const UNITS: Partial<Record<CovariateName, string>> = { pressure: 'bar', temperature: '°C', mass: 'kg' };

export function unitOfCovariate(name: string): string | null {
  return UNITS[name as CovariateName] ?? null;
}

/**
 * A covariate over the observations, or why it cannot be had: a value must be there for every one. A rise has the mean
 * of its hits.
 */
export function covariateOf(
  name: CovariateName,
  observations: readonly StrengthObservation[],
  constructionOf: ConstructionOf,
): Covariate | string {
  if (name === 'pressure' || name === 'temperature' || name === 'mass') {
    const values = observations.map(({ of }) => meanOf(of, name));
    const missing = values.filter((value) => value === null).length;
    if (missing === 0) return { name, kind: 'number', values: values as number[] };
    return `the log has no ${name} for ${missing} of ${values.length} observations; record it, or leave ${name} out`;
  }
  const values = observations.map(({ of, specimen }) =>
    name === 'construction' ? constructionOf(specimen) : factorOf(of[0]!, name),
  );
  const missing = values.filter((value) => value === null).length;
  if (missing === 0) return { name, kind: 'factor', values: values as string[] };
  const where = name === 'construction' ? 'table of specimens' : 'log';
  return `the ${where} has no ${name} for ${missing} of ${values.length} observations; state it, or leave ${name} out`;
}

function meanOf(drops: readonly Drop[], name: 'pressure' | 'temperature' | 'mass'): number | null {
  let sum = 0;
  for (const drop of drops) {
    const value = drop[name];
    if (value === null) return null;
    sum += value;
  }
  return sum / drops.length;
}

/** A session is one log file: a rig writes one for each. */
function factorOf(drop: Drop, name: 'rig' | 'session' | 'series' | 'operator'): string | null {
  if (name === 'session') return drop.file;
  return name === 'rig' ? (drop.details?.rig ?? null) : drop[name];
}
