import { Command, Option } from 'commander';
import type { Documents } from '../../jobs/documents-of.ts';
import { type NextFormat, nextReporters } from '../../reports/next/reporters.ts';
import type { TextOptions } from '../../reports/text/page.ts';
import type { NextResult } from '../../result/next.ts';
import type { CommandContext, CommonOptions } from '../context.ts';
import { destination } from '../destination.ts';
import { UsageError } from '../failure.ts';
import { grown } from '../grown.ts';
import { collect, type RequestOptions, requestOf } from '../request.ts';
import { EXIT, type Shell, write } from '../shell.ts';
import { goesToFile, textOptions } from '../text-options.ts';

interface NextOptions extends CommonOptions, RequestOptions {
  readonly follow?: boolean;
  readonly format: NextFormat;
  readonly json?: boolean;
  readonly output?: string;
  readonly force?: boolean;
}

const EXAMPLES = `
Examples:
  tirelab next fixtures/demo/run.yaml
  tirelab next --protocol protocols/pinch-up-down.yaml drops.csv
  tirelab next --protocol P.yaml --json drops.csv | jq .height
  tirelab next --protocol P.yaml --follow drops.csv

Exits 0 for a height and for stop, 3 where it may not advise.`;

/** `tirelab next`: the height to set for the next drop, or stop, and why. */
export function nextCommand({ shell, act }: CommandContext): Command {
  return new Command('next')
    .summary('the height to set for the next drop, or stop, and why')
    .description(
      "Asks the protocol's rule for the next drop after those in the log: height, energy, impact speed, new or same tyre, or stop. A log that is empty, or a header alone, gives the start. Takes what analyze takes.",
    )
    .argument('<file...>', 'RUN.yaml; or, with --protocol, the logs in order (- is standard input)')
    .option('--protocol <file>', 'how the test is to be done')
    .option('--rig <file>', 'the rig: falling mass, gravity, limits')
    .option('--construction <file>', 'what is tested (may be given again)', collect)
    .option('--spec <file>', 'taken as analyze takes it; nothing is judged yet')
    .option('--specimens <file>', 'the table of specimens')
    .option('--follow', 'go on while the rig writes: one line an advice, until the stop')
    .addOption(
      new Option('--format <name>', 'how to print').choices(Object.keys(nextReporters)).default('text'),
    )
    .option('--json', 'short for --format json; with --follow one document a line')
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists')
    .addHelpText('after', EXAMPLES)
    .action((files: string[], _options: unknown, command: Command) =>
      act(command, async () => {
        const options = command.optsWithGlobals<NextOptions>();
        const target = destination(shell, options.output, options.force === true);
        const { adviseOn } = await import('../../jobs/next.ts');
        const { documentsOf } = await import('../../jobs/documents-of.ts');
        const documents = documentsOf(requestOf(files, options), shell.stdin);
        const format = options.json ? 'json' : options.format;
        const text: TextOptions = textOptions(shell, options);
        if (options.follow) {
          if (goesToFile(options.output)) {
            throw new UsageError('--follow writes line by line to standard output; leave -o out');
          }
          return follow(shell, documents, () => adviseOn(documents), await lineReporter(format, text));
        }
        const result = await adviseOn(documents);
        await target.put((await nextReporters[format]())(result, text));
        return statusOf(result);
      }),
    );
}

async function follow(
  shell: Shell,
  documents: Documents,
  advise: () => Promise<NextResult>,
  report: (result: NextResult) => string,
): Promise<number> {
  let shown: string | null = null;
  for await (const _ of grown(documents.logs.map(({ source }) => source))) {
    const result = await advise();
    const line = report(result);
    if (line !== shown) await write(shell.stdout, line);
    shown = line;
    if (result.decision !== 'height') return statusOf(result);
  }
  return EXIT.done;
}

async function lineReporter(format: NextFormat, options: TextOptions) {
  if (format === 'json') {
    const { nextLine } = await import('../../reports/next/json.ts');
    return (result: NextResult) => nextLine(result, options.version);
  }
  const { followLine } = await import('../../reports/next/text.ts');
  return (result: NextResult) => followLine(result, options);
}

function statusOf({ decision }: NextResult): number {
  return decision === null ? EXIT.undecided : EXIT.done;
}
