import { amount, fixed, percent } from '../../quantity/amount.ts';
import { counted, decimalsFor } from '../../quantity/format.ts';
import type { BatchBridge, MonitoredStandard } from '../../result/monitor.ts';
import { named } from '../text/page.ts';

/** The pairs of charts in words, and what is drawn beside the value. */
export const CHARTS = {
  individuals: 'individuals and moving range',
  'mean-range': 'mean and range',
  'mean-spread': 'mean and standard deviation',
} as const;
export const SPREADS = {
  individuals: 'moving range',
  'mean-range': 'range',
  'mean-spread': 'standard deviation',
} as const;

/** `rebound on drop-2@2026-03`. */
export function nameOf({ standard, rig }: MonitoredStandard): string {
  const what = standard === null ? 'the reference' : named(standard);
  return rig === null ? what : `${what} on ${named(rig)}`;
}

/** Times as days where no day has two points, else to the minute. */
export function timesOf({ points }: MonitoredStandard): (time: string) => string {
  const days = new Set(points.map(({ time }) => time.slice(0, 10)));
  return days.size === points.length
    ? (time) => time.slice(0, 10)
    : (time) => time.slice(0, 16).replace('T', ' ');
}

/** Whether a check standard is in control; where it is not, since when, in one sentence. */
export function findingOf(standard: MonitoredStandard): string {
  const { drift, standing, signals, unit, limits } = standard;
  const name = nameOf(standard);
  const when = timesOf(standard);
  if (standing === 'in-control') {
    const settled = new Set(signals.map(({ settled: cause }) => cause)).size;
    const past = settled === 0 ? '' : ` (${counted(settled, 'earlier signal')} settled)`;
    return `In control: ${name}, ${counted(standard.points.length, 'point')}${past}.`;
  }
  const first = signals.find(({ settled }) => settled === null)!;
  const since =
    drift === null
      ? `the scatter signalled on ${when(first.from)}`
      : `signalled on ${when(drift.signalled)}; the shift of ${signed(drift.shift, limits.sigma, unit)} most likely began on ${when(drift.began)}${drift.earliest === drift.latest ? '' : ` (${when(drift.earliest)} to ${when(drift.latest)})`}`;
  return `Out of control: ${name}, ${since}.`;
}

function signed(value: number, sigma: number, unit: string | null): string {
  return `${value > 0 ? '+' : ''}${amount(value, decimalsFor(sigma), unit ?? '')}`;
}

/** Half sentences on bridges, the cumulative sum, and what the charts take for granted. */
export function saidOf(standard: MonitoredStandard): string[] {
  const { drift, bridges, notes } = standard;
  return [
    ...bridges.map((bridge) => bridgeWords(bridge, standard)),
    ...(drift?.byCusum
      ? [`by the cumulative sum the shift began on ${timesOf(standard)(drift.byCusum)}`]
      : []),
    ...notes,
  ];
}

function bridgeWords(
  { from, to, occasions, difference, interval }: BatchBridge,
  { limits, unit }: MonitoredStandard,
): string {
  const decimals = decimalsFor(limits.sigma / 3);
  const ends = `${fixed(interval.lower, decimals)} to ${amount(interval.upper, decimals, unit ?? '')}`;
  return `batch ${named(to)} reads ${signed(difference, limits.sigma / 3, unit)} against ${named(from)} (${percent(interval.level)} interval ${ends}, ${counted(occasions, 'occasion')} side by side): taken off its readings, so that one chart goes on; the uncertainty of this bridge is common to all of them`;
}

/** What a quiet rig costs in alarms: without it a signal cannot be weighed. */
export function falseAlarms({ runLength, base, rules }: MonitoredStandard): string {
  const { limits, limitsAndRules, ewma, cusum } = runLength;
  const together =
    limitsAndRules === undefined
      ? ''
      : `, with the one-sided run rules (${rules}) ${limitsAndRules.toFixed(0)}`;
  const loose = base.points < 25 ? `; limits from ${base.points} points signal more often` : '';
  return `points between false alarms of a quiet rig: limits ${limits!.toFixed(0)}${together}, weighted average ${ewma!.toFixed(0)}, cumulative sum ${cusum!.toFixed(0)}, were the limits known${loose}`;
}
