import type { Sample } from '../impact/replay/replay.ts';
import { percent } from '../quantity/amount.ts';
import { rigName } from '../rig/configuration.ts';
import type { EnergyScale } from '../rig/energy.ts';
import { commonPart } from '../rig/uncertainty/carried.ts';
import { mean } from '../statistics/summary/moments.ts';
import type { ImpactTest } from './impact-test.ts';
import { settingOf } from './rig-uncertainty.ts';

/** One side of a comparison, with how its energies were made. */
interface Side {
  readonly label: string;
  readonly test: ImpactTest;
  readonly scale: EnergyScale;
  readonly sample: Sample;
}

/**
 * What the uncertainty of the rigs does to a comparison, in words: what is common to both sides of one rig cancels from their ratio, that
 * of two rigs stays. Empty where no rig states any.
 */
export function rigNotes(sides: readonly Side[]): string[] {
  const shares = sides.map(({ test, scale, sample }) => {
    const setting = settingOf(test, scale, sample);
    const energies = sample.drops.flatMap(({ drop }) => scale.of(drop) ?? []);
    if (setting === null || energies.length === 0) return null;
    const energy = mean(energies);
    const common = commonPart(test.rig?.uncertainty ?? [], setting, energy);
    return common && common.standardUncertainty / energy;
  });
  if (shares.every((share) => share === null)) return [];
  const rigs = new Set(sides.map(({ test }) => rigName(test.rig)));
  const say = (share: number) => percent(Number((100 * share).toPrecision(2)) / 100);
  if (rigs.size === 1) {
    const largest = Math.max(...shares.map((share) => share ?? 0));
    return [
      `the uncertainty of the rig (${say(largest)} of an energy) is common to all sides: it cancels from a ratio, and of a difference that share of the difference is left`,
    ];
  }
  const each = sides.map(({ label }, i) => `${label} ${shares[i] == null ? 'not stated' : say(shares[i])}`);
  return [
    `the sides were measured on different rigs, whose uncertainties (${each.join(', ')}) do not cancel: the intervals are those of the drops alone`,
  ];
}
