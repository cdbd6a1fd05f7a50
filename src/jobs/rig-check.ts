import { loadRig } from '../documents/load.ts';
import type { LogSource } from '../logs/bytes.ts';
import { readRigReadings } from '../logs/rig-readings.ts';
import { InputError } from '../problem/problem.ts';
import type { RigCheckResult } from '../result/rig-check.ts';
import { rigProperties } from '../rig/check/rig-properties.ts';
import { gravityOfRig } from '../rig/gravity.ts';
import { budgetAt } from '../rig/uncertainty/carried.ts';

/** What is asked of a rig beside its file. */
export interface RigCheckRequest {
  readonly rig: string;
  /** Readings of speeds, heights, weighings; null for the budget alone. */
  readonly readings: LogSource | null;
  /** mm and bar of the drop that the budget is drawn up for. */
  readonly height: number;
  readonly pressure: number | null;
}

/**
 * Whether a rig does what its file says: velocity ratio, height scale, mass; and the budget of an energy.
 *
 * @throws InputError for a file that cannot be read, for readings that no rig can give, and for a table without any
 */
export async function checkRig({
  rig: path,
  readings,
  height,
  pressure,
}: RigCheckRequest): Promise<RigCheckResult> {
  const rig = loadRig({ path });
  const { sha256, bytes } = rig.source;
  const gravity = gravityOfRig(rig);
  const table = readings === null ? null : await readRigReadings(readings);
  const properties = table === null ? [] : rigProperties(table.records, rig, gravity.value);
  if (table !== null && properties.length === 0) {
    const message =
      'found no reading, expected rows with a height and a velocity [m/s] (or flag [mm] and gate time [s]), with a height and a reference height [mm], or with a mass [kg] of a rig that states one';
    throw new InputError([{ file: table.path, line: null, column: null, code: 'no-readings', message }]);
  }
  const mass = rig.mass?.value ?? null;
  const budget =
    mass === null
      ? null
      : budgetAt(
          rig.uncertainty ?? [],
          { mass, gravity: gravity.value, pressure },
          (mass * gravity.value * height) / 1000,
        );
  const ratio = properties.find(({ property }) => property === 'velocity-ratio');
  return {
    inputs: [
      { role: 'rig', path, sha256, bytes, rows: null },
      ...(table === null
        ? []
        : [
            {
              role: 'checks' as const,
              path: table.path,
              sha256: table.sha256,
              bytes: table.bytes,
              rows: table.records.length,
            },
          ]),
    ],
    rig: { id: rig.id, config: rig.config },
    gravity: gravity.value,
    gravityFrom: gravity.from,
    properties,
    efficiency: ratio === undefined ? null : ratio.mean ** 2,
    uncertainty: budget?.budget ?? null,
    notes: [
      ...(budget?.notes ?? []),
      ...((rig.uncertainty ?? []).length === 0
        ? ['the rig states no uncertainty: list its sources under "uncertainty" in its file']
        : []),
    ],
    standing:
      properties.length === 0
        ? 'not-checked'
        : properties.some(({ standing }) => standing === 'out')
          ? 'out'
          : 'good',
  };
}
