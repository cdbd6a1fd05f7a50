import type { Drop } from '../logs/drop.ts';
import type { Period } from '../result/analysis.ts';

/** When the drops were made, which stand in order of their times, and with which gauges. */
export function periodOf(drops: readonly Drop[]): Period {
  let from: string | null = null;
  let to: string | null = null;
  const gauges = new Set<string>();
  for (const { time, details } of drops) {
    if (details?.gauge) gauges.add(details.gauge);
    if (time === null) continue;
    from ??= time;
    to = time;
  }
  return { from, to, gauges: [...gauges].sort() };
}
