import type { Mounting } from '../../logs/mountings.ts';
import { quote } from '../../problem/echo.ts';
import { counted, upTo } from '../../quantity/format.ts';
import { band } from '../../quantity/quantity.ts';
import type { Session } from './session.ts';

/** Share by which torques differ that a wrench cannot tell apart. Common practice, no source. */
const WRENCH = 0.1;
const SHOWN = 5;

/**
 * A sentence on axle nuts that were not tightened as planned, or not alike where nothing is planned. The catalogue has
 * no departure for it: a loose wheel leaks at the valve or shifts on the anvil, which is told by itself.
 */
export function torqueNotes({ mountings, visits, protocol }: Session): string[] {
  const used = new Set<Mounting>();
  for (const visit of visits) {
    const mounting = visit.use === 'set-aside' ? null : mountings.of(visit);
    if (mounting !== null && mounting.torque !== null) used.add(mounting);
  }
  const torques = [...used].map(({ torque }) => torque!).toSorted((a, b) => a - b);
  const middle = torques[Math.floor(torques.length / 2)];
  if (middle === undefined) return [];
  const planned = protocol.mounting?.torque ?? null;
  const target = planned?.value ?? middle;
  const limits = (planned && band(planned)) ?? { lower: target * (1 - WRENCH), upper: target * (1 + WRENCH) };
  const off = [...used].filter(
    ({ torque }) => torque! < limits.lower - 1e-9 || torque! > limits.upper + 1e-9,
  );
  if (off.length === 0) return [];
  const said = off.slice(0, SHOWN).map(({ specimen, torque, fromDrop }) => {
    const from = fromDrop === null ? '' : ` from drop ${fromDrop}`;
    return `${quote(specimen, 24)}${from} ${upTo(torque!, 2)} N·m`;
  });
  const more = off.length > SHOWN ? ` and ${counted(off.length - SHOWN, 'more mounting')}` : '';
  const expected = planned === null ? 'most others' : 'planned';
  return [`Axle nuts tightened otherwise: ${said.join(', ')}${more}; ${expected} ${upTo(target, 2)} N·m.`];
}
