import { Command, Option } from 'commander';
import type { CommandContext, CommonOptions } from '../context.ts';
import { destination } from '../destination.ts';
import { UsageError } from '../failure.ts';
import { EXIT } from '../shell.ts';
import { textOptions } from '../text-options.ts';

interface ExplainOptions extends CommonOptions {
  readonly format: 'text' | 'json';
  readonly json?: boolean;
  readonly output?: string;
  readonly force?: boolean;
}

const EXAMPLES = `
Examples:
  tirelab explain DROP-41
  tirelab explain --json | jq '.explanations[] | select(.excuses) | .code'`;

/** `tirelab explain [CODE]`: what a deviation is, what it weighs, where it shows, what it does to the estimate. */
export function explainCommand({ shell, act }: CommandContext): Command {
  return new Command('explain')
    .summary('say what a deviation code means')
    .description(
      'Says what a code of the catalogue of deviations means: how much it weighs, what it does to the estimate, from what it is seen, and whether it may be given as the reason for leaving out a drop. Without a code it lists all.',
    )
    .argument('[code]', 'such as DROP-41')
    .addOption(new Option('--format <name>', 'how to print').choices(['text', 'json']).default('text'))
    .option('--json', 'short for --format json')
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists')
    .addHelpText('after', EXAMPLES)
    .action((code: string | undefined, _options: unknown, command: Command) =>
      act(command, async () => {
        const options = command.optsWithGlobals<ExplainOptions>();
        const target = destination(shell, options.output, options.force === true);
        const { explain } = await import('../../jobs/explain.ts');
        const explained = explain(code ?? null);
        if (!explained.ok) throw new UsageError(explained.why);
        const { explanationDocument, explanationText } = await import('../../reports/explanation.ts');
        if (options.json || options.format === 'json') {
          await target.put(explanationDocument(explained.explanations));
          return EXIT.done;
        }
        const { pageOf } = await import('../../reports/text/page.ts');
        const page = pageOf(textOptions(shell, options));
        await target.put(explanationText(page, explained.explanations));
        return EXIT.done;
      }),
    );
}
