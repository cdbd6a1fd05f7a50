import type { Criterion } from '../documents/kinds.ts';
import type { Sample } from '../impact/replay/replay.ts';
import type { Estimate } from '../result/estimate.ts';
import type { UncertaintyResult } from '../result/uncertainty.ts';
import { type EnergyScale, massUsed } from '../rig/energy.ts';
import { carryUncertainty, commonPart } from '../rig/uncertainty/carried.ts';
import type { DropSetting } from '../rig/uncertainty/drop-budget.ts';
import type { Evidence } from '../verdict/evidence.ts';
import type { ImpactTest } from './impact-test.ts';
import { plannedConditions } from './planned-conditions.ts';

/**
 * What the drops of a sample were made with; null where no budget of m·g·h can be drawn up: for kinetic energies, and for masses that
 * differ.
 */
export function settingOf(test: ImpactTest, scale: EnergyScale, sample: Sample): DropSetting | null {
  const drops = sample.drops.map(({ drop }) => drop);
  const [first] = drops;
  const { mass } = massUsed(scale, drops);
  if (first === undefined || mass === null || scale.definition === 'kinetic') return null;
  const { pressure } = plannedConditions(test, sample);
  return { mass, gravity: scale.gravityOf(first).value, pressure };
}

/** Evidence for a guard band that is a multiple of the uncertainty: what the rig adds to all drops alike is in it. */
export function withRig(
  { rule, guard }: Criterion,
  evidence: Evidence,
  { rig }: ImpactTest,
  setting: DropSetting | null,
): Evidence {
  const { estimate, standardError } = evidence;
  if (rule !== 'guard-band' || guard !== null || setting === null) return evidence;
  if (estimate === null || standardError === null) return evidence;
  const common = commonPart(rig?.uncertainty ?? [], setting, estimate);
  if (common === null) return evidence;
  return {
    ...evidence,
    standardError: Math.hypot(standardError, common.standardUncertainty),
    includesRig: true,
  };
}

/** The budget of the rig of a test and what it does to the estimates, or why there is none though the rig states one. */
export function carriedUncertainty(
  test: ImpactTest,
  scale: EnergyScale,
  analyzed: readonly { readonly sample: Sample; readonly estimates: readonly Estimate[] }[],
): { readonly result: UncertaintyResult | null; readonly notes: readonly string[] } {
  const sources = test.rig?.uncertainty ?? [];
  const [first] = analyzed;
  if (sources.length === 0 || first === undefined) return { result: null, notes: [] };
  const setting = settingOf(test, scale, first.sample);
  if (setting === null) {
    const why =
      scale.definition === 'kinetic' ? 'energies are kinetic' : 'the falling mass differs between drops';
    return {
      result: null,
      notes: [
        `the uncertainty of the rig is not carried: its budget is one of m·g·h at one mass, and ${why}`,
      ],
    };
  }
  const result = carryUncertainty(
    sources,
    setting,
    analyzed.flatMap(({ estimates }) => estimates),
  );
  return { result, notes: result?.notes ?? [] };
}
