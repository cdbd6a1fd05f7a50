import type { Construction } from '../../documents/kinds.ts';
import type { Specimen } from '../../logs/register.ts';
import { readQuantity } from '../../quantity/quantity.ts';
import { mean } from '../../statistics/summary/moments.ts';

/** Mean mass of the tyres in g where each was weighed, else what the construction states; null where neither tells. */
export function tyreMass(
  specimens: readonly (Specimen | null)[],
  construction: Construction | null,
): number | null {
  const masses = specimens.map((row) => row?.mass ?? null);
  if (masses.length > 0 && masses.every((mass) => mass !== null)) return mean(masses as number[]);
  const stated = construction?.factors.mass;
  if (stated === undefined || stated === null) return null;
  const found = readQuantity(stated, 'g');
  return found.ok ? found.value.value : null;
}
