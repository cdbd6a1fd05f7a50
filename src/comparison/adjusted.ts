import { covariateOf } from '../impact/regression/covariates.ts';
import { centred } from '../impact/regression/regress.ts';
import { registerCell } from '../logs/register.ts';
import type { AdjustedComparison } from '../result/comparison.ts';
import type { LawName } from '../statistics/law.ts';
import { laws } from '../statistics/laws/laws.ts';
import { normal } from '../statistics/laws/normal.ts';
import type { Covariate } from '../statistics/regression/design.ts';
import { fitRegression, type RegressionFit } from '../statistics/regression/fit.ts';
import { ratioTest } from '../statistics/regression/ratio-test.ts';
import { explainRefusal } from '../statistics/regression/refusal.ts';
import { dayOf } from './facts.ts';
import type { Side } from './side.ts';

/** Names that a drop itself answers; any other is a column of the table of specimens. */
const OF_DROPS = ['pressure', 'temperature', 'mass', 'rig', 'session', 'series', 'operator'] as const;
type OfDrops = (typeof OF_DROPS)[number];

/**
 * The constructions against the first on one likelihood, covariates allowed for: numbers (pressure, temperature, mass)
 * by a slope, blocks (day, operator, session, rig, or any column of the table of specimens) by a level each. The test
 * leaves the construction out; limits are Wald's. Refused, by name, where a covariate is missing, constant or aliased.
 */
export function compareAdjusted(
  sides: readonly Side[],
  names: readonly string[],
  lawName: LawName,
  confidence: number,
): AdjustedComparison {
  const law = laws[lawName];
  const isLog = law.scale === 'log';
  const base = { covariates: names, unit: isLog ? '1' : sides[0]!.observations === null ? 'km' : 'J' };
  const refused = (why: string): AdjustedComparison => ({ ...base, differences: [], test: null, why });
  const found = names.map((name) => covariate(name, sides));
  const missing = found.filter((one) => typeof one === 'string');
  if (missing.length > 0) return refused(missing.join('; '));
  const labels = sides.flatMap(({ sample, looks }) => looks.map(() => sample.label));
  const construction: Covariate = { name: 'construction', kind: 'factor', values: labels };
  const covariates = centred([construction, ...(found as Covariate[])]);
  const fitOf = (terms: readonly string[]) =>
    fitRegression(
      { observations: sides.flatMap(({ looks }) => looks), covariates, terms: terms.map((term) => [term]) },
      law,
    );
  const whole = fitOf(['construction', ...names]);
  if (whole.kind !== 'exists') return refused(explainRefusal(whole));
  const without = fitOf(names);
  return {
    ...base,
    differences: differencesOf(whole, sides, confidence, isLog),
    test: without.kind === 'exists' ? ratioTest(without, whole) : null,
    why: null,
  };
}

function differencesOf(
  { effects }: RegressionFit,
  sides: readonly Side[],
  confidence: number,
  isLog: boolean,
): AdjustedComparison['differences'] {
  const z = normal.quantile(0.5 + confidence / 2);
  const own = effects.filter(({ term }) => term === 'construction');
  return own.map(({ value, standardError }, i) => ({
    label: sides[i + 1]!.sample.label,
    value,
    standardError,
    lower: value - z * standardError,
    upper: value + z * standardError,
    ratio: isLog ? Math.exp(value) : null,
  }));
}

function covariate(name: string, sides: readonly Side[]): Covariate | string {
  if ((OF_DROPS as readonly string[]).includes(name)) {
    const observations = sides.flatMap((side) => side.observations ?? []);
    if (sides.some((side) => side.observations === null))
      return `drum tests have no ${name} of each tyre; leave it out`;
    return covariateOf(name as OfDrops, observations, () => null);
  }
  if (name === 'day')
    return factor(name, sides, (side) => side.observations?.map(({ of }) => dayOf(of[0]?.time ?? null)));
  return factor(name, sides, ({ looks, tyres }) => {
    const rows = new Map(tyres.specimens.map((row) => [row?.specimen, row]));
    return looks.map(({ specimen }) => {
      const row = rows.get(specimen);
      return row ? registerCell(row, name.toLowerCase()) : null;
    });
  });
}

function factor(
  name: string,
  sides: readonly Side[],
  of: (side: Side) => readonly (string | null)[] | undefined,
): Covariate | string {
  const values = sides.flatMap((side) => of(side) ?? side.looks.map(() => null));
  const missing = values.filter((value) => value === null || value === '').length;
  if (missing === 0) return { name, kind: 'factor', values: values as string[] };
  return `${name} is not recorded for ${missing} of ${values.length} observations; record it, or leave ${name} out`;
}
