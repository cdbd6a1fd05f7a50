import { plannedPressure } from '../../impact/replay/conditions.ts';
import type { Drop } from '../../logs/drop.ts';
import type { ReportedCondition } from '../../result/report.ts';
import type { ImpactTest } from '../impact-test.ts';

/** Falling mass, pressure and temperature: what was asked for, and what the log has. */
export function conditionsOf(test: ImpactTest, drops: readonly Drop[]): ReportedCondition[] {
  const { protocol, rig, constructions } = test;
  const pressures = new Set(constructions.map((own) => plannedPressure(protocol, own)?.text ?? null));
  const pressure =
    pressures.size === 1 ? [...pressures][0]! : (plannedPressure(protocol, null)?.text ?? null);
  return [
    condition('mass', 'kg', (protocol.mass ?? rig?.mass)?.text ?? null, drops, ({ mass }) => mass),
    condition('pressure', 'bar', pressure, drops, (drop) => drop.pressure),
    condition('temperature', '°C', protocol.temperature?.text ?? null, drops, (drop) => drop.temperature),
  ];
}

function condition(
  name: ReportedCondition['name'],
  unit: string,
  planned: string | null,
  drops: readonly Drop[],
  of: (drop: Drop) => number | null,
): ReportedCondition {
  let [least, most, sum, n] = [Infinity, -Infinity, 0, 0];
  for (const drop of drops) {
    const value = of(drop);
    if (value === null) continue;
    least = Math.min(least, value);
    most = Math.max(most, value);
    sum += value;
    n += 1;
  }
  return { name, planned, unit, logged: n === 0 ? null : { least, mean: sum / n, most, drops: n } };
}
