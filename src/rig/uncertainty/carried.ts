import { UNCERTAIN_INPUTS, type UncertaintySource } from '../../documents/uncertainty-source.ts';
import type { Estimate, Interval } from '../../result/estimate.ts';
import type { CarriedUncertainty, UncertaintyLine, UncertaintyResult } from '../../result/uncertainty.ts';
import { grouped } from '../../statistics/summary/grouped.ts';
import { type Combined, expand } from '../../statistics/uncertainty/effective-degrees.ts';
import { withCommonPart } from '../../statistics/uncertainty/with-statistics.ts';
import { drawnCheck } from './drawn-check.ts';
import { type DropSetting, dropBudget, sourcesInUse } from './drop-budget.ts';

const LEVEL = 0.95;
const CARRIED: ReadonlySet<string> = new Set(['medianFailureEnergy', 'failureEnergyQuantile']);

/**
 * The part of a rig's uncertainty that is common to all drops, for an energy in J: what a mean over many drops does not lessen. Null where
 * the rig states none.
 */
export function commonPart(
  sources: readonly UncertaintySource[],
  setting: DropSetting,
  energy: number,
): Combined | null {
  const { used } = sourcesInUse(sources, setting);
  const common = used.filter(({ scope }) => scope === 'common');
  return common.length === 0 || !(energy > 0) ? null : dropBudget(common, setting, energy).common;
}

/** What a budget says of one drop. */
export type DropUncertainty = Pick<UncertaintyResult, 'at' | 'lines' | 'common' | 'drop' | 'whole' | 'check'>;

/**
 * The budget of one drop of an energy in J, with its check by drawing; null where the rig states nothing that applies.
 *
 * @returns what is to be kept in mind in `notes`
 */
export function budgetAt(
  sources: readonly UncertaintySource[],
  setting: DropSetting,
  energy: number,
): { readonly budget: DropUncertainty | null; readonly notes: readonly string[] } {
  const { used, notes } = sourcesInUse(sources, setting);
  if (used.length === 0) return { budget: null, notes };
  const found = dropBudget(used, setting, energy);
  const check = drawnCheck(used, setting, energy);
  const { mass, gravity, pressure } = setting;
  return {
    budget: {
      at: { energy, height: (1000 * energy) / (mass * gravity), mass, gravity, pressure },
      lines: linesOf(used, found.lines),
      common: finite(found.common),
      drop: finite(found.scatter),
      whole: finite(found.whole),
      check,
    },
    notes: [
      ...notes,
      ...(check.agrees
        ? []
        : ['drawing the inputs gives another interval than the law of propagation: state the drawn one']),
    ],
  };
}

/**
 * The budget of a rig at the median of a test, and the estimates in J with the common part beside their standard errors. Scatter from drop
 * to drop lies in the spread of the outcomes already and is not added.
 *
 * @param estimates with standard errors, in J; others are passed over
 * @returns null where the rig states no uncertainty or there is no median
 */
export function carryUncertainty(
  sources: readonly UncertaintySource[],
  setting: DropSetting,
  estimates: readonly Estimate[],
): UncertaintyResult | null {
  const median = estimates.find(
    ({ quantity, value }) => quantity === 'medianFailureEnergy' && value !== null,
  );
  if (!median || !(median.value! > 0)) return null;
  const { budget, notes } = budgetAt(sources, setting, median.value!);
  if (budget === null) return null;
  return {
    ...budget,
    estimates: headlines(estimates).flatMap((estimate) => carried(sources, setting, estimate) ?? []),
    notes,
  };
}

/** The first entry of each quantity in J by the likelihood; the half-way quantile is the median again. */
function headlines(estimates: readonly Estimate[]): Estimate[] {
  const own = estimates.filter(
    ({ quantity, unit, variant, method, probability }) =>
      CARRIED.has(quantity) &&
      unit === 'J' &&
      variant === undefined &&
      method === 'censored-likelihood' &&
      probability !== 0.5,
  );
  return grouped(own, ({ quantity, probability, sample }) => `${quantity} ${probability} ${sample}`).map(
    ([, [first]]) => first!,
  );
}

/** Each half in quadrature with the expanded common part: exact for normal laws. */
function widened({ level, lower, upper }: Interval, value: number, common: Combined) {
  const { expandedUncertainty } = expand(common, level);
  return {
    level,
    lower: lower === null ? null : value - Math.hypot(value - lower, expandedUncertainty),
    upper: upper === null ? null : value + Math.hypot(upper - value, expandedUncertainty),
  };
}

function carried(
  sources: readonly UncertaintySource[],
  setting: DropSetting,
  { quantity, probability, sample, value, standardError, interval }: Estimate,
): CarriedUncertainty | null {
  if (value === null || standardError === null || !(value > 0)) return null;
  const common = commonPart(sources, setting, value);
  if (common === null) return null;
  const statistical = { value, standardError, degrees: Number.POSITIVE_INFINITY };
  const relative = { ...common, standardUncertainty: common.standardUncertainty / value };
  const combined = withCommonPart(statistical, relative);
  const { factor, expandedUncertainty } = expand(combined, LEVEL);
  return {
    quantity,
    ...(probability === undefined ? {} : { probability }),
    ...(sample === undefined ? {} : { sample }),
    unit: 'J',
    value,
    standardError,
    common: common.standardUncertainty,
    combined: combined.standardUncertainty,
    degrees: finiteOrNull(combined.degrees),
    level: LEVEL,
    factor,
    expanded: expandedUncertainty,
    interval: interval && widened(interval, value, common),
  };
}

/** In the order of the file; lengths in mm, as the file has them. */
function linesOf(
  sources: readonly UncertaintySource[],
  lines: ReturnType<typeof dropBudget>['lines'],
): UncertaintyLine[] {
  const left = [...lines];
  return sources.map(({ of, source, scope, standardUncertainty, degrees }) => {
    const name = of === 'loss' ? 'efficiency' : of;
    const at = left.findIndex((line) => line.input === name && line.name === source);
    const [{ sensitivity, contribution }] = left.splice(at, 1) as [(typeof left)[number]];
    return {
      of,
      source,
      scope,
      unit: UNCERTAIN_INPUTS[of],
      standardUncertainty,
      degrees: finiteOrNull(degrees),
      sensitivity: of === 'height' ? sensitivity * 1e-3 : of === 'loss' ? -sensitivity : sensitivity,
      contribution: Math.abs(contribution),
    };
  });
}

function finite({ standardUncertainty, degrees }: Combined) {
  return { standardUncertainty, degrees: finiteOrNull(degrees) };
}

function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
