import { Command, Option } from 'commander';
import { gateReporters } from '../../reports/gate/reporters.ts';
import { readWhatIf, type WhatIf } from '../../verdict/what-if.ts';
import { asOf } from '../as-of.ts';
import type { CommandContext } from '../context.ts';
import { UsageError } from '../failure.ts';
import { progressLine } from '../progress.ts';
import { type ReportingOptions, reported, reportingOptions } from '../reporting.ts';
import { collect } from '../request.ts';
import { EXIT } from '../shell.ts';
import { VERSION } from '../version.ts';

interface GateOptions extends ReportingOptions {
  readonly whatIf?: readonly string[];
  readonly since?: string;
  readonly base?: string;
  readonly asOf?: string;
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
  const command = new Command('gate')
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
    .option('--as-of <date>', 'the day by which waivers are looked at (default: today)');
  return reportingOptions(command, gateReporters)
    .option('--no-progress', 'no progress on a terminal')
    .option('--exit-zero', 'exit 0 whatever the verdict')
    .addHelpText('after', EXAMPLES)
    .action((paths: string[], _options: unknown, own: Command) =>
      act(own, async () => {
        const options = own.optsWithGlobals<GateOptions>();
        const whatIf = questions(options.whatIf ?? []);
        const { date } = asOf(options.asOf, shell, Date.now);
        const result = await reported(shell, options, gateReporters, async () => {
          const { gate } = await import('../../jobs/gate/gate.ts');
          const progress = progressLine(shell, options, 'runs', Date.now);
          return gate(paths.length > 0 ? paths : ['.'], {
            version: VERSION,
            asOf: date,
            whatIf,
            since: options.since ?? null,
            base: options.base ?? null,
            onProgress: (done, all) => progress.update(done, all),
          }).finally(() => progress.end());
        });
        const { gateStatus } = await import('../../verdict/gate-status.ts');
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
