import { Command, Option } from 'commander';
import { type StatusFormat, statusReporters } from '../../reports/status/reporters.ts';
import { asOf } from '../as-of.ts';
import type { CommandContext, CommonOptions } from '../context.ts';
import { destination } from '../destination.ts';
import { drumRunner } from '../drum-runner.ts';
import { EXIT, write } from '../shell.ts';
import { textOptions } from '../text-options.ts';

interface StatusOptions extends CommonOptions {
  readonly asOf?: string;
  readonly format: StatusFormat;
  readonly json?: boolean;
  readonly output?: string;
  readonly force?: boolean;
}

const EXAMPLES = `
Examples:
  tirelab status fixtures/drum-run/run.yaml
  tirelab status runs/*.yaml --as-of 2026-03-16 --json`;

/** `tirelab status`: running drum tests, what is due, forecast. */
export function statusCommand({ shell, act }: CommandContext): Command {
  return new Command('status')
    .summary('running drum tests: how far they are, what is due, forecast')
    .description(
      'Reads the logs of running drum tests as far as they go: kilometres and block reached, what is due by the end of a day, when blocks end and the tread is worn down.',
    )
    .argument('<run...>', 'RUN.yaml of a drum test (several may be given)')
    .option('--as-of <date>', 'the day asked about (default: SOURCE_DATE_EPOCH, else today in UTC)')
    .addOption(
      new Option('--format <name>', 'how to print').choices(Object.keys(statusReporters)).default('text'),
    )
    .option('--json', 'short for --format json')
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists')
    .addHelpText('after', EXAMPLES)
    .action((paths: string[], _options: unknown, command: Command) =>
      act(command, async () => {
        const options = command.optsWithGlobals<StatusOptions>();
        const target = destination(shell, options.output, options.force === true);
        const day = asOf(options.asOf, shell, Date.now);
        const { status } = await import('../../jobs/status.ts');
        const result = await status(paths, day, { runner: drumRunner });
        const report = await statusReporters[options.json ? 'json' : options.format]();
        await target.put(report(result, textOptions(shell, options)));
        const { unread } = result;
        if (unread.length === 0) return EXIT.done;
        const { unreadLines } = await import('../batch/unread-lines.ts');
        await write(shell.stderr, unread.map(({ path, problems }) => unreadLines(path, problems)).join(''));
        return EXIT.wrongUse;
      }),
    );
}
