import type { DeviationList } from '../../conformance/deviation-list.ts';
import { upTo } from '../../quantity/format.ts';
import { rigName } from '../../rig/configuration.ts';
import { statedMass } from '../../rig/mass.ts';
import type { Session } from './session.ts';

/** Raises DROP-11 for the run where a rig and the protocol state two masses: the test is not the one that was planned. */
export function checkStatedMasses({ protocol, rig, rigOf, visits }: Session, list: DeviationList): void {
  const planned = statedMass(null, protocol);
  if (planned === null) return;
  const rigs = new Set(rigOf === undefined ? [rig] : visits.map(({ drop }) => rigOf(drop)));
  for (const used of rigs) {
    const actual = used === null || used.mass === null ? null : statedMass(used, protocol)!.value;
    if (actual === null || Math.abs(actual - planned.value) <= planned.tolerance + 1e-9) continue;
    const called = rigs.size > 1 ? rigName(used)! : 'the rig';
    list.add({
      code: 'DROP-11',
      scope: 'run',
      file: used!.source.path,
      found: () => `${called} states ${upTo(actual, 4)} kg, the protocol ${upTo(planned.value, 4)} kg`,
      effect: "the log's mass is used, and the rig's where the log has none",
    });
  }
}
