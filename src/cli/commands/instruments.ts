import { Command } from 'commander';
import { instrumentsReporters } from '../../reports/instruments/reporters.ts';
import { asOf } from '../as-of.ts';
import type { CommandContext } from '../context.ts';
import { type ReportingOptions, reported, reportingOptions } from '../reporting.ts';
import { collect } from '../request.ts';
import { EXIT } from '../shell.ts';

interface InstrumentsOptions extends ReportingOptions {
  readonly asOf?: string;
  readonly results?: readonly string[];
}

const EXAMPLES = `
REGISTER.csv has a row for each calibration or check: instrument, quantity, time, result (passed, failed), due,
certificate, settled. The table of rig checks serves too: its rows of gauges are read.

Examples:
  tirelab instruments fixtures/instruments/register.csv --as-of 2026-03-31
  tirelab instruments register.csv --results results/ --json`;

/** `tirelab instruments`: the calibration register, and what was measured in doubt. */
export function instrumentsCommand({ shell, act }: CommandContext): Command {
  const command = new Command('instruments')
    .summary('calibrations: what is due, which results used a gauge in doubt')
    .description(
      'Reads a calibration register: which instruments are due, overdue or failed on a day, and which stored results used one between its last good and its first bad check. Exit status 1 where somebody must act.',
    )
    .argument('<register>', 'table of calibrations (- is standard input)')
    .option('--as-of <date>', 'the day asked about (default: SOURCE_DATE_EPOCH, else today in UTC)')
    .option('--results <path>', 'stored results, or a folder of them (may be given again)', collect);
  return reportingOptions(command, instrumentsReporters)
    .addHelpText('after', EXAMPLES)
    .action((path: string, _options: unknown, own: Command) =>
      act(own, async () => {
        const options = own.optsWithGlobals<InstrumentsOptions>();
        const day = asOf(options.asOf, shell, Date.now);
        const { standing } = await reported(shell, options, instrumentsReporters, async () => {
          const { instruments } = await import('../../jobs/instruments.ts');
          return instruments(path === '-' ? shell.stdin : path, day, options.results ?? []);
        });
        return standing === 'in-order' ? EXIT.done : EXIT.notMet;
      }),
    );
}
