import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { ImpactProtocol, Rig } from '../../documents/kinds.ts';
import { upTo } from '../../quantity/format.ts';
import { statedMass } from '../../rig/mass.ts';

/** Raises DROP-11 for the run where rig and protocol state two masses: the test is not the one that was planned. */
export function checkStatedMasses(protocol: ImpactProtocol, rig: Rig | null, list: DeviationList): void {
  const planned = statedMass(null, protocol);
  if (planned === null || rig?.mass == null) return;
  const actual = rig.mass.value;
  if (Math.abs(actual - planned.value) <= planned.tolerance + 1e-9) return;
  list.add({
    code: 'DROP-11',
    scope: 'run',
    file: rig.source.path,
    found: () => `the rig states ${upTo(actual, 4)} kg, the protocol ${upTo(planned.value, 4)} kg`,
    effect: "the log's mass is used, and the rig's where the log has none",
  });
}
