import type { Rig } from '../documents/kinds.ts';
import type { Drop } from '../logs/drop.ts';
import type { MassCorrection } from '../result/mass-correction.ts';
import { rigName } from './configuration.ts';
import type { EnergyScale } from './energy.ts';

/** The share up to which another mass is an error of the stated one, not another rig. Common practice, no source. */
const SMALL = 0.01;
/** Of a weighing against itself. */
const SAME = 1e-9;

/**
 * The drops whose energy goes by another falling mass than the one that was stated for their rig: proven in the rig's
 * file, or weighed for the drop and noted in the log. Differences beyond 1 % are departures (DROP-11) and no
 * corrections.
 */
export function massCorrections(
  drops: readonly Drop[],
  { statedMassOf }: Pick<EnergyScale, 'statedMassOf'>,
  rigOf: (drop: Drop) => Rig | null,
): MassCorrection[] {
  const found = new Map<string, MassCorrection>();
  for (const drop of drops) {
    const rig = rigOf(drop);
    const mass = statedMassOf(drop);
    if (mass === null) continue;
    const proof = drop.mass === null && mass.from === 'rig' ? (rig?.provenMass ?? null) : null;
    const stated = proof === null ? mass.value : rig!.mass!.value;
    const used = drop.mass ?? mass.value;
    const share = used / stated - 1;
    if (Math.abs(share) <= SAME || Math.abs(share) > SMALL + SAME) continue;
    const from = proof === null ? 'log' : 'rig';
    const key = JSON.stringify([rigName(rig), from, drop.file]);
    const before = found.get(key);
    const { file, line } = drop;
    found.set(key, {
      rig: rigName(rig),
      from,
      stated,
      used: {
        least: Math.min(used, before?.used.least ?? used),
        most: Math.max(used, before?.used.most ?? used),
      },
      drops: (before?.drops ?? 0) + 1,
      file,
      firstLine: before?.firstLine ?? line,
      lastLine: line,
      by: proof?.by ?? null,
      on: proof?.on ?? null,
    });
  }
  return [...found.values()];
}
