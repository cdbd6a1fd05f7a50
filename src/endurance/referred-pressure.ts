import { gaugePressureAt } from '../quantity/gas-pressure.ts';
import type { EnduranceEstimate } from '../result/endurance.ts';
import type { DrumSummary } from './summary.ts';

/**
 * The mean pressure of each block at one temperature, so that blocks (and tyres) that ran at different ones compare: what
 * is left of a difference is air that was lost, or a tyre that grew.
 *
 * @param temperature °C to refer to; null where it is not asked
 */
export function referredPressures(
  temperature: number | null,
  summary: DrumSummary | null,
  tyres: number,
): EnduranceEstimate[] {
  if (temperature === null) return [];
  return (summary?.schedule ?? []).flatMap(({ block, channels, distance }): EnduranceEstimate[] => {
    if (distance.logged === 0) return [];
    const mean = (name: string): number | null =>
      channels.find(({ channel }) => channel === name)?.mean ?? null;
    const pressure = mean('pressure');
    const tyre = mean('tyre temperature');
    const air = tyre ?? mean('ambient temperature');
    const base = {
      quantity: 'referredPressure',
      method: 'ideal-gas',
      variant: `${block}, at ${temperature} °C`,
      unit: 'bar',
      standardError: null,
      interval: null,
      specimens: tyres,
      drops: 0,
    } as const;
    if (pressure === null || air === null)
      return [{ ...base, value: null, why: 'the log has no pressure or no temperature in this block' }];
    const by = tyre === null ? 'the temperature of the room' : 'the temperature of the tyre';
    const why = `from a mean of ${Number(pressure.toPrecision(4))} bar at ${Number(air.toPrecision(3))} °C, ${by}, as the air in it; a constant volume is assumed`;
    return [{ ...base, value: gaugePressureAt(pressure, air, temperature), why }];
  });
}
