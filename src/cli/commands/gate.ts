import { Command, Option } from 'commander';
import { type GateFormat, gateReporters } from '../../reports/gate/reporters.ts';
import { readWhatIf, type WhatIf } from '../../verdict/what-if.ts';
import { asOf } from '../as-of.ts';
import type { CommandContext, CommonOptions } from '../context.ts';
import { destination } from '../destination.ts';
import { UsageError } from '../failure.ts';
import { progressLine } from '../progress.ts';
import { collect } from '../request.ts';
import { EXIT } from '../shell.ts';
import { textOptions } from '../text-options.ts';
import { VERSION } from '../version.ts';

interface GateOptions extends CommonOptions {
  readonly whatIf?: readonly string[];
  readonly since?: string;
  readonly base?: string;
  readonly asOf?: string;
  readonly format: GateFormat;
  readonly json?: boolean;
  readonly output?: string;
  readonly force?: boolean;
  readonly progress?: boolean;
  readonly exitZero?: boolean;
}

const EXAMPLES = `
Examples:
  tirelab gate
  tirelab gate constructions specifications waivers runs
  tirelab gate --what-if "median>=48 J"
  tirelab gate --since origin/main --base origin/main
  tirelab gate --format junit -o gate.xml
  tirelab gate --format markdown >> "$GITHUB_STEP_SUMMARY"`;

/** `tirelab gate`: every construction under some paths, judged by every specification that applies to it. */
export function gateCommand({ shell, act }: CommandContext): Command {
  return new Command('gate')
    .summary('judge every construction by its specifications')
    .description(
      'Finds constructions, specifications, waivers, runs and stored results under the paths by their format, and judges each construction by every specification that applies to it, from all its runs. A stored result that is current stands for its run; what is stale is analysed anew. Every criterion counts, the untested ones too. Nothing is written.',
    )
    .argument('[path...]', 'folders and files to look at (default: this folder)')
    .addOption(
      new Option('--what-if <limit>', 'judge by another limit, such as "median>=48 J"').argParser(collect),
    )
    .option('--since <commit>', 'judge only what changed since this commit, and what depends on it')
    .option('--base <commit>', 'see that no revision released in this commit was changed')
    .option('--as-of <date>', 'the day by which waivers are looked at (default: today)')
    .addOption(
      new Option('--format <name>', 'how to print').choices(Object.keys(gateReporters)).default('text'),
    )
    .option('--json', 'short for --format json')
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists')
    .option('--no-progress', 'no progress on a terminal')
    .option('--exit-zero', 'exit 0 whatever the verdict')
    .addHelpText('after', EXAMPLES)
    .action((paths: string[], _options: unknown, command: Command) =>
      act(command, async () => {
        const options = command.optsWithGlobals<GateOptions>();
        const target = destination(shell, options.output, options.force === true);
        const whatIf = questions(options.whatIf ?? []);
        const { date } = asOf(options.asOf, shell, Date.now);
        const { gate } = await import('../../jobs/gate/gate.ts');
        const { gateStatus } = await import('../../verdict/gate-status.ts');
        const progress = progressLine(shell, options, 'runs', Date.now);
        const result = await gate(paths.length > 0 ? paths : ['.'], {
          version: VERSION,
          asOf: date,
          whatIf,
          since: options.since ?? null,
          base: options.base ?? null,
          onProgress: (done, all) => progress.update(done, all),
        }).finally(() => progress.end());
        const report = await gateReporters[options.json ? 'json' : options.format]();
        await target.put(report(result, textOptions(shell, options)));
        return options.exitZero ? EXIT.done : gateStatus(result);
      }),
    );
}

/** Limits to try out, each read before any file is. */
function questions(written: readonly string[]): WhatIf[] {
  return written.map((text) => {
    const reading = readWhatIf(text);
    if (!reading.ok) throw new UsageError(`--what-if: ${reading.why}`);
    return reading.value;
  });
}
