import { amount, fixed, percent } from '../../quantity/amount.ts';
import { counted, decimalsFor, significant } from '../../quantity/format.ts';
import type { BatchBridge, MonitoredStandard, MonitorResult, TouchedResult } from '../../result/monitor.ts';
import { named, type Page, pageOf, paragraph, section, sentence, type TextOptions } from '../text/page.ts';
import { table } from '../text/table.ts';
import { monitorChart } from './chart.ts';

/** The check standards of a rig over time: the finding first, then each with its chart, then what it touches. */
export function monitorText(result: MonitorResult, options: TextOptions): string {
  const page = pageOf(options);
  const lines = [
    ...result.standards.flatMap((standard) => finding(page, standard)),
    ...result.standards.flatMap((standard) => section(page, titleOf(standard), ofStandard(page, standard))),
    ...section(page, 'Stored results', touched(page, result.touched)),
    ...section(
      page,
      'Notes',
      result.notes.flatMap((note) => paragraph(page, sentence(note), 2, 4)),
    ),
  ];
  return `${lines.join('\n')}\n`;
}

function nameOf({ standard, rig }: MonitoredStandard): string {
  const what = standard === null ? 'the reference' : named(standard);
  return rig === null ? what : `${what} on ${named(rig)}`;
}

/** Times as days where no day has two points, else to the minute. */
function daysOf({ points }: MonitoredStandard): (time: string) => string {
  const days = new Set(points.map(({ time }) => time.slice(0, 10)));
  return days.size === points.length
    ? (time) => time.slice(0, 10)
    : (time) => time.slice(0, 16).replace('T', ' ');
}

function titleOf(standard: MonitoredStandard): string {
  return `Check of ${nameOf(standard)}: ${CHARTS[standard.chart]}`;
}

const CHARTS = {
  individuals: 'individuals and moving range',
  'mean-range': 'mean and range',
  'mean-spread': 'mean and standard deviation',
} as const;
const SPREADS = {
  individuals: 'moving range',
  'mean-range': 'range',
  'mean-spread': 'standard deviation',
} as const;

function finding(page: Page, standard: MonitoredStandard): string[] {
  const { drift, standing, signals, unit, limits } = standard;
  const name = nameOf(standard);
  const when = daysOf(standard);
  if (standing === 'in-control') {
    const settled = new Set(signals.map(({ settled: cause }) => cause)).size;
    const past = settled === 0 ? '' : ` (${counted(settled, 'earlier signal')} settled)`;
    return paragraph(page, `In control: ${name}, ${counted(standard.points.length, 'point')}${past}.`, 0).map(
      (line) => page.ink.green.bold(line),
    );
  }
  const first = signals.find(({ settled }) => settled === null)!;
  const since =
    drift === null
      ? `the scatter signalled on ${when(first.from)}`
      : `signalled on ${when(drift.signalled)}; the shift of ${signed(drift.shift, limits.sigma, unit)} most likely began on ${when(drift.began)}${drift.earliest === drift.latest ? '' : ` (${when(drift.earliest)} to ${when(drift.latest)})`}`;
  return paragraph(page, `Out of control: ${name}, ${since}.`, 0).map((line) => page.ink.red.bold(line));
}

function signed(value: number, sigma: number, unit: string | null): string {
  return `${value > 0 ? '+' : ''}${amount(value, decimalsFor(sigma), unit ?? '')}`;
}

function ofStandard(page: Page, standard: MonitoredStandard): string[] {
  const { drift, bridges, notes } = standard;
  const said = [
    ...bridges.map((bridge) => bridgeWords(bridge, standard)),
    ...(drift?.byCusum
      ? [`by the cumulative sum the shift began on ${daysOf(standard)(drift.byCusum)}`]
      : []),
    ...notes,
    falseAlarms(standard),
  ];
  return [
    ...monitorChart(page, standard),
    '',
    ...limitLines(page, standard),
    ...(standard.signals.length === 0 ? [] : ['', ...signalTable(page, standard)]),
    '',
    ...said.flatMap((text) => paragraph(page, sentence(text), 2, 4)),
  ];
}

function limitLines(page: Page, standard: MonitoredStandard): string[] {
  const { base, limits, chart, subgroup, unit, ewma, cusum } = standard;
  const when = daysOf(standard);
  const decimals = decimalsFor(limits.sigma / 3);
  const say = (value: number) => fixed(value, decimals);
  const rows = (['value', 'spread'] as const).map((which) => {
    const { centre, lower, upper } = limits[which];
    const what =
      which === 'spread'
        ? SPREADS[chart]
        : chart === 'individuals' && subgroup === 1
          ? 'value'
          : `mean of ${subgroup}`;
    return [unit === null ? what : `${what}, ${unit}`, say(lower), say(centre), say(upper)];
  });
  const heads = ['', 'lower limit', 'centre', 'upper limit'];
  const text = `limits from ${base.chosen} (${when(base.from)} to ${when(base.to)}), standard deviation of a point ${significant(limits.sigma, 3)}; weighted average with ${ewma.weight} and ${ewma.width} sigma, cumulative sum with k ${cusum.allowance} and h ${cusum.decision} sigma`;
  return [
    ...table(
      page,
      heads.map((head, i) => ({ head, align: i === 0 ? 'left' : 'right' })),
      rows,
    ),
    ...paragraph(page, sentence(text)),
  ];
}

function signalTable(page: Page, standard: MonitoredStandard): string[] {
  const { signals } = standard;
  const when = daysOf(standard);
  const most = 12;
  const open = signals.filter(({ settled }) => settled === null);
  const shown = [...open, ...signals.filter(({ settled }) => settled !== null)].slice(0, most);
  const rows = shown.map(({ by, what, from, to, settled }) => [
    when(from),
    from === to ? '' : when(to),
    /^[A-Z]/u.test(by) ? `${by}: ${what}` : what,
    settled === null ? 'open' : named(settled),
  ]);
  const rest = signals.length - shown.length;
  return [
    ...table(
      page,
      [
        { head: 'from', align: 'left' },
        { head: 'to', align: 'left' },
        { head: 'signal', align: 'left', least: 16 },
        { head: 'settled', align: 'left', least: 10 },
      ],
      rows,
    ),
    ...(rest > 0 ? paragraph(page, `and ${rest} more (all in --json)`) : []),
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
function falseAlarms({ runLength, base, rules }: MonitoredStandard): string {
  const { limits, limitsAndRules, ewma, cusum } = runLength;
  const together =
    limitsAndRules === undefined
      ? ''
      : `, with the one-sided run rules (${rules}) ${limitsAndRules.toFixed(0)}`;
  const loose = base.points < 25 ? `; limits from ${base.points} points signal more often` : '';
  return `points between false alarms of a quiet rig: limits ${limits!.toFixed(0)}${together}, weighted average ${ewma!.toFixed(0)}, cumulative sum ${cusum!.toFixed(0)}, were the limits known${loose}`;
}

function touched(page: Page, results: readonly TouchedResult[]): string[] {
  if (results.length === 0) return [];
  return table(
    page,
    [
      { head: 'result', align: 'left', least: 12 },
      { head: 'measured', align: 'left', least: 10 },
      { head: '', align: 'left' },
      { head: 'why', align: 'left', least: 20 },
    ],
    results.map(({ path, from, to, standing, why }) => [
      named(path),
      from === null ? '' : [...new Set([from.slice(0, 10), (to ?? from).slice(0, 10)])].join(' to '),
      standing,
      why,
    ]),
  );
}
