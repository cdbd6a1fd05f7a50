import { type Budget, type Component, drawUpBudget } from './budget.ts';

/** An input of the energy with its sources of uncertainty; none where it is taken as exact. */
export interface Sourced {
  readonly value: number;
  readonly components: readonly Component[];
}

/** What the energy of a drop depends on. */
export interface DropInputs {
  /** kg */
  readonly mass: Sourced;
  /** m/s² */
  readonly gravity: Sourced;
  /** m */
  readonly height: Sourced;
  /** Share of the energy that arrives: the square of the share of the speed. 1 without components for a free fall. */
  readonly efficiency: Sourced;
  /** What the energy to failure does with a condition that is not quite at its set value. */
  readonly effects?: readonly Effect[];
}

/** A condition (pressure, temperature) by its departure from the set value: 0, with the sources of its uncertainty. */
export interface Effect {
  readonly name: string;
  /** J per unit of the condition. */
  readonly slope: number;
  readonly components: readonly Component[];
}

/** E = efficiency·m·g·h in J with its uncertainty, what is common to all drops apart from what scatters. */
export function dropEnergyBudget({ mass, gravity, height, efficiency, effects = [] }: DropInputs): Budget {
  return drawUpBudget(
    ([m, g, h, share, ...departures]) =>
      departures.reduce(
        (energy, departure, i) => energy + effects[i]!.slope * departure,
        share! * m! * g! * h!,
      ),
    [
      { name: 'mass', ...mass },
      { name: 'gravity', ...gravity },
      { name: 'height', ...height },
      { name: 'efficiency', ...efficiency },
      ...effects.map(({ name, components }) => ({ name, value: 0, components })),
    ],
  );
}

/** What a light gate says of a drop. */
export interface GateInputs {
  /** kg */
  readonly mass: Sourced;
  /** Length of the flag along the fall, m */
  readonly flag: Sourced;
  /** Time for which it covers the beam, s */
  readonly time: Sourced;
}

/** v = flag/time in m/s: the mean over the flag, which is the speed half-way through the time. */
export function gateSpeedBudget({ flag, time }: Omit<GateInputs, 'mass'>): Budget {
  return drawUpBudget(
    ([length, seconds]) => length! / seconds!,
    [
      { name: 'flag', ...flag },
      { name: 'time', ...time },
    ],
  );
}

/** E = ½·m·v² in J from a light gate. */
export function gateEnergyBudget({ mass, flag, time }: GateInputs): Budget {
  return drawUpBudget(
    ([m, length, seconds]) => 0.5 * m! * (length! / seconds!) ** 2,
    [
      { name: 'mass', ...mass },
      { name: 'flag', ...flag },
      { name: 'time', ...time },
    ],
  );
}

/** Speed at the end of a fall, m/s: √(2·efficiency·g·h), h in m. */
export function impactSpeed(gravity: number, height: number, efficiency = 1): number {
  return Math.sqrt(2 * efficiency * gravity * height);
}

/** The share of the energy that arrives, v²/(2gh): the square of the velocity ratio. */
export function energyEfficiency(speed: number, gravity: number, height: number): number {
  return (speed * speed) / (2 * gravity * height);
}
