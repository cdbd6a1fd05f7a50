import { Command, Option } from 'commander';
import { type ExportFormat, exportReporters } from '../../reports/export/reporters.ts';
import type { CommandContext, CommonOptions } from '../context.ts';
import { destination } from '../destination.ts';
import { EXIT } from '../shell.ts';
import { textOptions } from '../text-options.ts';

interface ExportOptions extends CommonOptions {
  readonly as: string;
  readonly construction?: string;
  readonly criteria?: boolean;
  readonly format: ExportFormat;
  readonly json?: boolean;
  readonly output?: string;
  readonly force?: boolean;
}

const EXAMPLES = `
Examples:
  tirelab export result.json --as "sample 7"
  tirelab export session.json --construction C-114 --as "sample 7" --json -o sample-7.json`;

/** `tirelab export RESULT.json`: a result for outside the house, without construction details. */
export function exportCommand({ shell, act }: CommandContext): Command {
  return new Command('export')
    .summary('a result for a supplier, without construction details')
    .description(
      'Writes what of a stored result may leave the house: protocol, numbers with their intervals, departures by code. Not in it: names of constructions, specimens, batches, people and files, factors, notes, limits. The SHA-256 of the full result leads back to it.',
    )
    .argument('<result>', 'what "tirelab analyze --json" wrote')
    .option('--as <name>', 'how the item is called outside', 'item')
    .option('--construction <id>', 'which one goes out, where the result has several')
    .option('--criteria', 'limits and verdicts too')
    .addOption(
      new Option('--format <name>', 'how to print').choices(Object.keys(exportReporters)).default('text'),
    )
    .option('--json', 'short for --format json')
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists')
    .addHelpText('after', EXAMPLES)
    .action((path: string, _options: unknown, command: Command) =>
      act(command, async () => {
        const options = command.optsWithGlobals<ExportOptions>();
        const target = destination(shell, options.output, options.force === true);
        const { exportResult } = await import('../../jobs/export.ts');
        const exported = exportResult({
          path,
          as: options.as,
          construction: options.construction ?? null,
          withCriteria: options.criteria === true,
        });
        const report = exportReporters[options.json ? 'json' : options.format];
        await target.put(report(exported, textOptions(shell, options)));
        return EXIT.done;
      }),
    );
}
