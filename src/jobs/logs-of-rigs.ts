import type { Rig } from '../documents/kinds.ts';
import type { Drop, DropDetails, DropLog } from '../logs/drop.ts';
import type { EnergyScale } from '../rig/energy.ts';
import { type StatedMass, statedMass } from '../rig/mass.ts';
import type { ImpactTest } from './impact-test.ts';

/** Whether a log was written by another rig than that of the run, or by another configuration of it. */
export function severalRigs({ rigs, rig }: Pick<ImpactTest, 'rigs' | 'rig'>): boolean {
  return new Set([rig, ...rigs].map(nameOf)).size > 1;
}

/**
 * The logs of a test with the rig on each drop, where there are several: `id@config`, and its falling mass where the
 * log has none.
 */
export function logsOfRigs(test: Pick<ImpactTest, 'logs' | 'rigs' | 'rig'>): readonly DropLog[] {
  if (!severalRigs(test)) return test.logs;
  return test.logs.map((log, i) => {
    const rig = test.rigs[i] ?? null;
    const mass = rig?.mass?.value ?? null;
    const drops = log.drops.map((drop) => ({
      ...drop,
      mass: drop.mass ?? mass,
      details: { ...(drop.details ?? NO_DETAILS), rig: drop.details?.rig ?? nameOf(rig) },
    }));
    return { ...log, drops };
  });
}

/** The mass stated for a drop by the rig of its own log. */
export function statedMasses(
  { rigs, rig, logs, protocol }: Pick<ImpactTest, 'rigs' | 'rig' | 'logs' | 'protocol'>,
  scale: EnergyScale,
): (drop: Drop) => StatedMass | null {
  if (!severalRigs({ rigs, rig })) return () => scale.statedMass;
  const byFile = new Map(logs.map(({ path }, i) => [path, statedMass(rigs[i] ?? null, protocol)]));
  return ({ file }) => byFile.get(file) ?? scale.statedMass;
}

function nameOf(rig: Rig | null | undefined): string | null {
  if (rig == null) return null;
  return rig.config === null ? rig.id : `${rig.id}@${rig.config}`;
}

const NO_DETAILS: DropDetails = {
  hits: null,
  catcher: null,
  rig: null,
  setTemperature: null,
  pressureAfter: null,
  gauge: null,
  secondReading: null,
  reader: null,
  leakCheck: null,
  criterion: null,
  protocol: null,
};
