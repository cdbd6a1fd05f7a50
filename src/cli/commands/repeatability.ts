import { Command } from 'commander';
import { repeatabilityReporters } from '../../reports/repeatability/reporters.ts';
import type { CommandContext } from '../context.ts';
import { type ReportingOptions, reported, reportingOptions } from '../reporting.ts';
import { EXIT } from '../shell.ts';

const EXAMPLES = `
STUDY.csv by its header:
  part, operator, value [unit]       a gauge study: every part by every operator, equally often
  laboratory, (level,) value [unit]  precision between laboratories
  first reading, second reading      two readers of damage; a drop log with a second reading serves too

Examples:
  tirelab repeatability fixtures/repeatability/gauge.csv
  tirelab repeatability fixtures/repeatability/laboratories.csv --json`;

/** `tirelab repeatability`: gauge studies, laboratories, readers. */
export function repeatabilityCommand({ shell, act }: CommandContext): Command {
  const command = new Command('repeatability')
    .summary('repeatability and reproducibility: gauges, laboratories, readers')
    .description(
      'Evaluates a study of repeatability: variance components with intervals by analysis of variance and by averages and ranges, r and R between laboratories with tests for outliers, agreement of two readers.',
    )
    .argument('<study>', 'table of readings (- is standard input)');
  return reportingOptions(command, repeatabilityReporters)
    .addHelpText('after', EXAMPLES)
    .action((path: string, _options: unknown, own: Command) =>
      act(own, async () => {
        const options = own.optsWithGlobals<ReportingOptions>();
        await reported(shell, options, repeatabilityReporters, async () => {
          const { repeatability } = await import('../../jobs/repeatability.ts');
          return repeatability(path === '-' ? shell.stdin : path);
        });
        return EXIT.done;
      }),
    );
}
