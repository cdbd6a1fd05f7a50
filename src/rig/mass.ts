import type { ImpactProtocol, Rig } from '../documents/kinds.ts';
import type { Drop } from '../logs/drop.ts';
import type { Quantity } from '../quantity/quantity.ts';

/** The share by which a logged mass may differ where no document states a tolerance (CONTRACT: DROP-11). */
export const MASS_TOLERANCE = 0.005;

/** The falling mass that the documents state, and how far a log may differ from it. */
export interface StatedMass {
  /** kg. */
  readonly value: number;
  /** kg, either way. */
  readonly tolerance: number;
  readonly from: 'rig' | 'protocol';
}

/**
 * The rig's mass, which was weighed, goes before the protocol's, which was wished for, and what was proven since before
 * what was stated; null where nobody says.
 */
export function statedMass(rig: Rig | null, protocol: ImpactProtocol): StatedMass | null {
  if (rig?.provenMass) return { ...stated(rig.provenMass.mass, rig.mass ?? protocol.mass), from: 'rig' };
  if (rig?.mass) return { ...stated(rig.mass, protocol.mass), from: 'rig' };
  if (protocol.mass) return { ...stated(protocol.mass, null), from: 'protocol' };
  return null;
}

/** The mass that fell: the log's, else the one stated; null where nobody says. */
export function fallingMass(drop: Drop, mass: StatedMass | null): number | null {
  return drop.mass ?? mass?.value ?? null;
}

function stated(mass: Quantity, fallback: Quantity | null) {
  const tolerance = mass.tolerance ?? fallback?.tolerance ?? { kind: 'relative', fraction: MASS_TOLERANCE };
  return {
    value: mass.value,
    tolerance: tolerance.kind === 'absolute' ? tolerance.value : mass.value * tolerance.fraction,
  };
}
