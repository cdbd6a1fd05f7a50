import type { Rig } from '../documents/kinds.ts';
import type { Drop } from '../logs/drop.ts';
import type { ImpactResult, RigEnergy } from '../result/analysis.ts';
import { rigName } from '../rig/configuration.ts';
import { type EnergyScale, massUsed } from '../rig/energy.ts';

/** What the drops of each rig and configuration go by, where a test has several: gravity, mass, heights in reach. */
export function energiesOfRigs(
  scale: EnergyScale,
  drops: readonly Drop[],
  rigOf: (drop: Drop) => Rig | null,
): { readonly rigs?: readonly RigEnergy[] } {
  const byRig = new Map<string, { rig: Rig; drops: Drop[] }>();
  for (const drop of drops) {
    const rig = rigOf(drop);
    const name = rigName(rig);
    if (name === null) continue;
    const same = byRig.get(name);
    if (same === undefined) byRig.set(name, { rig: rig!, drops: [drop] });
    else same.drops.push(drop);
  }
  if (byRig.size < 2) return {};
  const rigs = [...byRig].map(([name, { rig, drops: own }]): RigEnergy => {
    const gravity = scale.gravityOf(own[0]!);
    return {
      rig: name,
      gravity: gravity.value,
      gravityFrom: gravity.from,
      ...massUsed(scale, own),
      limits: rig.limits,
    };
  });
  return { rigs };
}

/** The run's rig in the configuration of its first drop; as its file has it where none is of it. */
export function mainRig(
  rigOf: (drop: Drop) => Rig | null,
  drops: readonly Drop[],
  rig: Rig | null,
): ImpactResult['rig'] {
  if (rig === null) return null;
  const first = drops.find((drop) => rigOf(drop)?.id === rig.id);
  const { id, config } = (first && rigOf(first)) ?? rig;
  return { id, config };
}
