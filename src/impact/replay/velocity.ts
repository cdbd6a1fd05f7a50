import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { EnergyDefinition } from '../../documents/kinds.ts';
import { counted, height, upTo } from '../../quantity/format.ts';
import { impactSpeed } from '../../rig/energy.ts';
import { raiseAt, type Visit } from './replayed.ts';

/** Shares by which the speed may differ from √(2gh). Common practice, no source. */
const SLOW = -0.02;
const TOO_SLOW = -0.03;
const TOO_FAST = 0.01;
/** Share of drops without a velocity from which it is more than a note. */
const OFTEN_MISSING = 0.1;

/**
 * Compares the measured speed with free fall (DROP-12, DROP-13). For a kinetic series a slow drop is no error of the
 * energy, which is then measured, and a drop without velocity has no energy (DROP-14).
 */
export function checkVelocity(
  visit: Visit,
  definition: EnergyDefinition,
  gravity: number,
  list: DeviationList,
): void {
  const { velocity, height: fallen } = visit.drop;
  const isKinetic = definition === 'kinetic';
  if (velocity === null) {
    if (isKinetic)
      raiseAt(list, visit, 'DROP-14', () => 'no velocity in a series whose energy is ½·m·v²', NO_ENERGY);
    return;
  }
  const free = impactSpeed(gravity, fallen);
  const off = velocity / free - 1;
  if (off >= SLOW - 1e-9 && off <= TOO_FAST + 1e-9) return;
  const found = () =>
    `impact at ${upTo(velocity, 3)} m/s, ${upTo(Math.abs(off) * 100, 1)} % ${off < 0 ? 'below' : 'above'} ` +
    `the ${upTo(free, 3)} m/s of a free fall from ${height(fallen)}`;
  if (off > 0) raiseAt(list, visit, 'DROP-13', found);
  else if (isKinetic) raiseAt(list, visit, 'DROP-12', found, MEASURED);
  else raiseAt(list, visit, 'DROP-12', found, off < TOO_SLOW - 1e-9 ? FRICTION : {});
}

const MEASURED = { effect: 'the measured speed gives the energy' } as const;
const FRICTION = {
  severity: 'invalidating',
  effect: 'friction beyond 3 % leaves the drop out of the estimate',
} as const;
const NO_ENERGY = {
  severity: 'invalidating',
  scope: 'drop',
  effect: 'without it the drop has no energy, and is left out of the estimate',
} as const;

/** Raises DROP-14 once for a log that has a velocity column with empty cells. */
export function checkVelocityCoverage(
  visits: readonly Visit[],
  columns: ReadonlySet<string>,
  definition: EnergyDefinition,
  list: DeviationList,
): void {
  if (!columns.has('velocity') || definition === 'kinetic') return;
  const missing = visits.filter(({ drop }) => drop.velocity === null);
  const [first] = missing;
  if (first === undefined) return;
  const found = () =>
    `no velocity for ${missing.length} of ${counted(visits.length, 'drop')} of a log that has it`;
  const isOften = missing.length > OFTEN_MISSING * visits.length;
  raiseAt(list, first, 'DROP-14', found, { severity: isOften ? 'minor' : 'note' });
}
