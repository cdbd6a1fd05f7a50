import type { EnergyDefinition, ImpactProtocol, Rig } from '../documents/kinds.ts';
import type { Drop } from '../logs/drop.ts';
import { InputError, type Problem } from '../problem/problem.ts';
import { type Gravity, localGravity } from './gravity.ts';
import { fallingMass, type StatedMass, statedMass } from './mass.ts';

/** How a whole test turns drops into energies; one definition, and the gravity of each rig, named in every output. */
export interface EnergyScale {
  readonly definition: EnergyDefinition;
  /** Of the run's rig; another rig of the test may stand elsewhere. */
  readonly gravity: Gravity;
  /** What the documents state for the run's rig; null where only the log does. */
  readonly statedMass: StatedMass | null;
  /** Where a drop fell. */
  gravityOf(drop: Drop): Gravity;
  /** What the documents state for a drop, by its rig. */
  statedMassOf(drop: Drop): StatedMass | null;
  /** J; null for a kinetic series where the drop has no velocity. */
  of(drop: Drop): number | null;
}

/** The masses behind a set of drops, as results print them. */
export interface MassUsed {
  /** kg; null where the drops differ. */
  readonly mass: number | null;
  readonly massFrom: string;
}

/** Potential energy in J of a mass (kg) above first contact (height in mm): E = m·g·h. */
export function potentialEnergy(mass: number, gravity: number, height: number): number {
  return (mass * gravity * height) / 1000;
}

/** Kinetic energy in J: E = ½·m·v². */
export function kineticEnergy(mass: number, velocity: number): number {
  return 0.5 * mass * velocity * velocity;
}

/** Speed in m/s at contact of a free fall from a height in mm: v = √(2·g·h). */
export function impactSpeed(gravity: number, height: number): number {
  return Math.sqrt((2 * gravity * height) / 1000);
}

/**
 * Settles, before the first number, what energy means for a test.
 *
 * @param rig of the run
 * @param columns the quantities that the logs have a column for.
 * @param rigOf the rig that a drop was made on, where there are several
 * @throws InputError where the definition needs what the log does not have, or a drop has no mass at all.
 */
export function energyScale(
  protocol: ImpactProtocol,
  rig: Rig | null,
  drops: readonly Drop[],
  columns: ReadonlySet<string>,
  rigOf: (drop: Drop) => Rig | null = () => rig,
): EnergyScale {
  const known = new Map<Rig | null, OfRig>();
  const ofRig = (of: Rig | null): OfRig => {
    let it = known.get(of);
    if (it === undefined) {
      // Where the mass is varied nobody states one: the log must.
      const stated = protocol.vary === 'mass' ? null : statedMass(of, protocol);
      it = { gravity: localGravity(of, protocol), statedMass: stated };
      known.set(of, it);
    }
    return it;
  };
  const statedMassOf = (drop: Drop) => ofRig(rigOf(drop)).statedMass;
  const problems = [...missingColumn(protocol, columns), ...missingMass(drops, statedMassOf)];
  if (problems.length > 0) throw new InputError(problems);
  const kinetic = protocol.energy === 'kinetic';
  return {
    definition: protocol.energy,
    ...ofRig(rig),
    gravityOf: (drop) => ofRig(rigOf(drop)).gravity,
    statedMassOf,
    of(drop) {
      const { gravity, statedMass: stated } = ofRig(rigOf(drop));
      const mass = fallingMass(drop, stated)!;
      if (kinetic) return drop.velocity === null ? null : kineticEnergy(mass, drop.velocity);
      return potentialEnergy(mass, gravity.value, drop.height);
    },
  };
}

/** What a rig gives to the energy of its drops. */
type OfRig = Pick<EnergyScale, 'gravity' | 'statedMass'>;

/** The one mass of the drops and who gave it, or null where they differ. */
export function massUsed(scale: EnergyScale, drops: Iterable<Drop>): MassUsed {
  const masses = new Set<number>();
  const sources = new Set<string>();
  for (const drop of drops) {
    const stated = scale.statedMassOf(drop);
    masses.add(fallingMass(drop, stated)!);
    sources.add(drop.mass === null ? (stated?.from ?? 'log') : 'log');
  }
  const [only] = masses;
  return {
    mass: masses.size === 1 ? only! : masses.size === 0 ? (scale.statedMass?.value ?? null) : null,
    massFrom: sources.size > 0 ? [...sources].sort().join(' and ') : (scale.statedMass?.from ?? 'none'),
  };
}

function missingColumn(protocol: ImpactProtocol, columns: ReadonlySet<string>): Problem[] {
  const { energy } = protocol;
  if (energy === 'potential' || (energy === 'kinetic' && columns.has('velocity'))) return [];
  // The plain form has no column for the compression travel, and a travel that nobody measured is not invented.
  const needed =
    energy === 'kinetic' ? 'the column "velocity [m/s]"' : 'the compression travel of every drop';
  return [
    {
      file: protocol.source.path,
      ...protocol.source.locate(['energy']),
      code: energy === 'kinetic' ? 'velocity-missing' : 'compression-missing',
      message: `found energy: ${energy}, expected ${needed} in the log, which has none; energy: potential needs neither`,
    },
  ];
}

function missingMass(drops: readonly Drop[], statedMassOf: EnergyScale['statedMassOf']): Problem[] {
  const drop = drops.find((candidate) => candidate.mass === null && statedMassOf(candidate) === null);
  if (drop === undefined) return [];
  return [
    {
      file: drop.file,
      line: drop.line,
      column: null,
      code: 'mass-missing',
      message:
        'found no falling mass for this drop, neither in the log, nor in the rig, nor in the protocol; ' +
        'expected one of them to state it, such as mass: 8.000 kg in the protocol',
    },
  ];
}
