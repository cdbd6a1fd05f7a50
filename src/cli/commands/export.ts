import { Command } from 'commander';
import { exportReporters } from '../../reports/export/reporters.ts';
import type { CommandContext } from '../context.ts';
import { type ReportingOptions, reported, reportingOptions } from '../reporting.ts';
import { EXIT } from '../shell.ts';

interface ExportOptions extends ReportingOptions {
  readonly as: string;
  readonly construction?: string;
  readonly criteria?: boolean;
}

const EXAMPLES = `
Examples:
  tirelab export result.json --as "sample 7"
  tirelab export session.json --construction C-114 --as "sample 7" --json -o sample-7.json`;

/** `tirelab export RESULT.json`: a result for outside the house, without construction details. */
export function exportCommand({ shell, act }: CommandContext): Command {
  const command = new Command('export')
    .summary('a result for a supplier, without construction details')
    .description(
      'Writes what of a stored result may leave the house: protocol, numbers with their intervals, departures by code. Not in it: names of constructions, specimens, batches, people and files, factors, notes, limits. The SHA-256 of the full result leads back to it.',
    )
    .argument('<result>', 'what "tirelab analyze --json" wrote')
    .option('--as <name>', 'how the item is called outside', 'item')
    .option('--construction <id>', 'which one goes out, where the result has several')
    .option('--criteria', 'limits and verdicts too');
  return reportingOptions(command, exportReporters)
    .addHelpText('after', EXAMPLES)
    .action((path: string, _options: unknown, own: Command) =>
      act(own, async () => {
        const options = own.optsWithGlobals<ExportOptions>();
        await reported(shell, options, exportReporters, async () => {
          const { exportResult } = await import('../../jobs/export.ts');
          return exportResult({
            path,
            as: options.as,
            construction: options.construction ?? null,
            withCriteria: options.criteria === true,
          });
        });
        return EXIT.done;
      }),
    );
}
