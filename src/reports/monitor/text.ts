import { fixed } from '../../quantity/amount.ts';
import { decimalsFor, significant } from '../../quantity/format.ts';
import type { MonitoredStandard, MonitorResult, TouchedResult } from '../../result/monitor.ts';
import { named, type Page, pageOf, paragraph, section, sentence, type TextOptions } from '../text/page.ts';
import { table } from '../text/table.ts';
import { monitorChart } from './chart.ts';
import { CHARTS, falseAlarms, findingOf, nameOf, SPREADS, saidOf, timesOf } from './words.ts';

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

function titleOf(standard: MonitoredStandard): string {
  return `Check of ${nameOf(standard)}: ${CHARTS[standard.chart]}`;
}

function finding(page: Page, standard: MonitoredStandard): string[] {
  const ink = standard.standing === 'in-control' ? page.ink.green.bold : page.ink.red.bold;
  return paragraph(page, findingOf(standard), 0).map((line) => ink(line));
}

function ofStandard(page: Page, standard: MonitoredStandard): string[] {
  const said = [...saidOf(standard), falseAlarms(standard)];
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
  const when = timesOf(standard);
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
  const when = timesOf(standard);
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
