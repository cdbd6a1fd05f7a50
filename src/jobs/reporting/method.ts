import type { ImpactProtocol } from '../../documents/kinds.ts';
import type { Drop } from '../../logs/drop.ts';
import { percent, plain } from '../../quantity/amount.ts';
import type { ReportedMethod } from '../../result/report.ts';

/** The method of a protocol in the few words that a report has for it. */
export function methodOf(protocol: ImpactProtocol): ReportedMethod {
  const { failure, distribution, vary, start, step, stop, levels, perLevel } = protocol;
  const unit = vary === 'mass' ? 'kg' : 'mm';
  const of = (value: number) => `${plain(value)} ${unit}`;
  const planned =
    levels === null
      ? null
      : `${levels.map(plain).join(', ')} ${unit}${perLevel === null ? '' : ` × ${perLevel}`}`;
  return {
    failure,
    distribution,
    start: start === null ? planned : of(start),
    step: step === null ? null : step.kind === 'additive' ? of(step.size) : percent(step.ratio),
    stop:
      stop === null
        ? null
        : Object.entries(stop)
            .map(([key, count]) => `${key}: ${count}`)
            .join(', '),
  };
}

/** First and last day of a log by its own times; null where it has none. */
export function daysOf(drops: readonly Drop[]): { readonly first: string; readonly last: string } | null {
  let first: string | null = null;
  let last: string | null = null;
  for (const { time } of drops) {
    const day = time === null ? null : (/^\d{4}-\d\d-\d\d/u.exec(time)?.[0] ?? null);
    if (day === null) continue;
    if (first === null || day < first) first = day;
    if (last === null || day > last) last = day;
  }
  return first === null || last === null ? null : { first, last };
}
