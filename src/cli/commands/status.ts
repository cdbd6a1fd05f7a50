import { Command } from 'commander';
import { statusReporters } from '../../reports/status/reporters.ts';
import { asOf } from '../as-of.ts';
import type { CommandContext } from '../context.ts';
import { drumRunner } from '../drum-runner.ts';
import { type ReportingOptions, reported, reportingOptions } from '../reporting.ts';
import { EXIT, write } from '../shell.ts';

interface StatusOptions extends ReportingOptions {
  readonly asOf?: string;
}

const EXAMPLES = `
Examples:
  tirelab status fixtures/drum-run/run.yaml
  tirelab status runs/*.yaml --as-of 2026-03-16 --json`;

/** `tirelab status`: running drum tests, what is due, forecast. */
export function statusCommand({ shell, act }: CommandContext): Command {
  const command = new Command('status')
    .summary('running drum tests: how far they are, what is due, forecast')
    .description(
      'Reads the logs of running drum tests as far as they go: kilometres and block reached, what is due by the end of a day, when blocks end and the tread is worn down.',
    )
    .argument('<run...>', 'RUN.yaml of a drum test (several may be given)')
    .option('--as-of <date>', 'the day asked about (default: SOURCE_DATE_EPOCH, else today in UTC)');
  return reportingOptions(command, statusReporters)
    .addHelpText('after', EXAMPLES)
    .action((paths: string[], _options: unknown, own: Command) =>
      act(own, async () => {
        const options = own.optsWithGlobals<StatusOptions>();
        const day = asOf(options.asOf, shell, Date.now);
        const { unread } = await reported(shell, options, statusReporters, async () => {
          const { status } = await import('../../jobs/status.ts');
          return status(paths, day, { runner: drumRunner });
        });
        if (unread.length === 0) return EXIT.done;
        const { unreadLines } = await import('../batch/unread-lines.ts');
        await write(shell.stderr, unread.map(({ path, problems }) => unreadLines(path, problems)).join(''));
        return EXIT.wrongUse;
      }),
    );
}
