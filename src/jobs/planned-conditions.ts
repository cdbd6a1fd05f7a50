import { plannedPressure } from '../impact/replay/conditions.ts';
import type { Sample } from '../impact/replay/replay.ts';
import { constructionsByName } from '../impact/replay/tyres.ts';
import type { ImpactTest } from './impact-test.ts';

/** What the protocol plans for these tyres; a pressure by size needs a construction with that size. */
export function plannedConditions({ protocol, constructions }: ImpactTest, { key }: Sample) {
  const own =
    key.construction === null ? null : (constructionsByName(constructions).get(key.construction) ?? null);
  const pressure = plannedPressure(protocol, own)?.value ?? null;
  return { pressure, temperature: protocol.temperature?.value ?? null };
}
