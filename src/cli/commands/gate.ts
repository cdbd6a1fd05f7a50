import { Command, Option } from 'commander';
import { type GateFormat, gateReporters } from '../../reports/gate/reporters.ts';
import type { CommandContext, CommonOptions } from '../context.ts';
import { destination } from '../destination.ts';
import { EXIT } from '../shell.ts';
import { textOptions } from '../text-options.ts';

interface GateOptions extends CommonOptions {
  readonly format: GateFormat;
  readonly json?: boolean;
  readonly output?: string;
  readonly force?: boolean;
  readonly exitZero?: boolean;
}

const EXAMPLES = `
Examples:
  tirelab gate
  tirelab gate constructions specifications runs
  tirelab gate --format junit -o gate.xml
  tirelab gate --format markdown >> "$GITHUB_STEP_SUMMARY"`;

/** `tirelab gate`: every construction under some paths, judged by every specification that applies to it. */
export function gateCommand({ shell, act }: CommandContext): Command {
  return new Command('gate')
    .summary('judge every construction by its specifications')
    .description(
      'Finds constructions, specifications and runs under the paths by their format, judges each construction by every specification that applies to it, from all its runs. Every criterion counts, the untested ones too.',
    )
    .argument('[path...]', 'folders and files to look at (default: this folder)')
    .addOption(
      new Option('--format <name>', 'how to print').choices(Object.keys(gateReporters)).default('text'),
    )
    .option('--json', 'short for --format json')
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists')
    .option('--exit-zero', 'exit 0 whatever the verdict')
    .addHelpText('after', EXAMPLES)
    .action((paths: string[], _options: unknown, command: Command) =>
      act(command, async () => {
        const options = command.optsWithGlobals<GateOptions>();
        const target = destination(shell, options.output, options.force === true);
        const { gate } = await import('../../jobs/gate/gate.ts');
        const { gateStatus } = await import('../../verdict/gate-status.ts');
        const result = await gate(paths.length > 0 ? paths : ['.']);
        const report = await gateReporters[options.json ? 'json' : options.format]();
        await target.put(report(result, textOptions(shell, options)));
        return options.exitZero ? EXIT.done : gateStatus(result);
      }),
    );
}
