import { Command, InvalidArgumentError, Option } from 'commander';
import { monitorReporters } from '../../reports/monitor/reporters.ts';
import type { ChartKind } from '../../result/monitor.ts';
import type { Monitoring } from '../../rig/monitoring/monitor-standard.ts';
import type { CommandContext } from '../context.ts';
import { type ReportingOptions, reported, reportingOptions } from '../reporting.ts';
import { collect } from '../request.ts';
import { EXIT } from '../shell.ts';

interface MonitorOptions extends ReportingOptions {
  readonly column?: string;
  readonly base?: Monitoring['base'];
  readonly chart?: ChartKind;
  readonly rules: Monitoring['rules'];
  readonly ewma: readonly [number, number];
  readonly cusum: readonly [number, number];
  readonly results?: readonly string[];
}

const EXAMPLES = `
CHECKS.csv has a row for each reading: time, value [unit] and, where needed, standard, rig, batch (of reference
tyres), occasion (what was read together), settled (cause and decision behind a signal).

Examples:
  tirelab monitor fixtures/monitor/checks.csv
  tirelab monitor checks.csv --base 2026-01-05..2026-02-13 --results results/
  tirelab monitor checks.csv --chart mean-range --rules nelson --json`;

/** `tirelab monitor`: the check standard of a rig over time. */
export function monitorCommand({ shell, act }: CommandContext): Command {
  const command = new Command('monitor')
    .summary("watch the rig's check standard over time")
    .description(
      'Draws control charts of a reference tyre or check mass: limits from a base period, weighted average, cumulative sum, run rules; says since when the rig is off and which stored results that touches. Exit status 1 where a signal is open.',
    )
    .argument('<checks>', 'table of readings (- is standard input)')
    .option(
      '--column <name>',
      'the column to read as the value (default: value, or the only one with a unit)',
    )
    .addOption(
      new Option(
        '--base <period>',
        'points that limits come from: how many from the first, or FROM..TO as days',
      ).argParser(baseOf),
    )
    .addOption(
      new Option('--chart <name>', 'pair of charts (default: by the readings)').choices([
        'individuals',
        'mean-range',
        'mean-spread',
      ]),
    )
    .addOption(
      new Option('--rules <name>', 'published run rules')
        .choices(['western-electric', 'nelson', 'none'])
        .default('western-electric'),
    )
    .addOption(
      new Option('--ewma <weight,width>', 'weighted average: weight of the newest point, limits in sigma')
        .argParser(pairOf((weight, width) => weight > 0 && weight <= 1 && width > 0, '0.2,2.962'))
        .default([0.2, 2.962], '0.2,2.962'),
    )
    .addOption(
      new Option('--cusum <k,h>', 'cumulative sum: allowance and decision limit in sigma')
        .argParser(pairOf((k, h) => k >= 0 && h > 0, '0.5,5'))
        .default([0.5, 5], '0.5,5'),
    )
    .option(
      '--results <path>',
      'stored results, or a folder of them: which are touched (may be given again)',
      collect,
    );
  return reportingOptions(command, monitorReporters)
    .addHelpText('after', EXAMPLES)
    .action((path: string, _options: unknown, own: Command) =>
      act(own, async () => {
        const options = own.optsWithGlobals<MonitorOptions>();
        const [weight, width] = options.ewma;
        const [allowance, decision] = options.cusum;
        const how: Monitoring = {
          base: options.base ?? null,
          chart: options.chart ?? null,
          rules: options.rules,
          ewma: { weight, width },
          cusum: { allowance, decision },
        };
        const source = path === '-' ? shell.stdin : path;
        const { standing } = await reported(shell, options, monitorReporters, async () => {
          const { monitor } = await import('../../jobs/monitor.ts');
          return monitor(source, options.column ?? null, how, options.results ?? []);
        });
        return standing === 'in-control' ? EXIT.done : EXIT.notMet;
      }),
    );
}

function baseOf(text: string): NonNullable<Monitoring['base']> {
  if (/^\d{1,9}$/u.test(text)) return { kind: 'first', count: Number(text) };
  const days = /^(\d{4}-\d\d-\d\d)\.\.(\d{4}-\d\d-\d\d)$/u.exec(text);
  const [from, to] = (days ?? []).slice(1).map((day) => Date.parse(`${day}T00:00:00Z`));
  if (from === undefined || to === undefined || Number.isNaN(from) || Number.isNaN(to) || from > to) {
    throw new InvalidArgumentError(
      'expected a number of points, such as 20, or days, such as 2026-01-05..2026-02-13.',
    );
  }
  return { kind: 'days', from, to: to + 86_399_999, text: text.replace('..', ' to ') };
}

function pairOf(holds: (first: number, second: number) => boolean, example: string) {
  return (text: string): readonly [number, number] => {
    const [first, second, ...rest] = text.split(',').map(Number);
    if (first === undefined || second === undefined || rest.length > 0 || !holds(first, second)) {
      throw new InvalidArgumentError(`expected two numbers such as ${example}.`);
    }
    return [first, second];
  };
}
