import { Command, Option } from 'commander';
import { type ComparisonFormat, comparisonReporters } from '../../reports/comparison/reporters.ts';
import type { LanguageCode } from '../../reports/words/language.ts';
import type { CommandContext, CommonOptions } from '../context.ts';
import { despiteOption, reasonsOf } from '../despite-option.ts';
import { destination } from '../destination.ts';
import { UsageError } from '../failure.ts';
import { languageOption } from '../language-option.ts';
import { EXIT } from '../shell.ts';
import { textOptions } from '../text-options.ts';

interface CompareOptions extends CommonOptions {
  readonly format: ComparisonFormat;
  readonly language: LanguageCode;
  readonly json?: boolean;
  readonly output?: string;
  readonly force?: boolean;
  readonly despite?: readonly string[];
}

const EXAMPLES = `
Examples:
  tirelab compare runs/C-114/run.yaml runs/C-115/run.yaml
  tirelab compare --despite "day=same week, reference tyre unmoved" A.yaml B.yaml
  tirelab compare --json A.yaml B.yaml C.yaml | jq '.pairs[].differences[0].ratio'`;

/** `tirelab compare`: drop tests of constructions against each other, where only what was declared differs. */
export function compareCommand({ shell, act }: CommandContext): Command {
  return new Command('compare')
    .summary('compare constructions, one variable at a time')
    .description(
      'Compares drop-test runs, each of one construction: first every factor of construction, mounting and conditions, then the energies. Refused (status 3) where a factor differs that nobody declared.',
    )
    .argument('<run...>', 'two or more run files')
    .addOption(despiteOption())
    .addOption(
      new Option('--format <name>', 'how to print').choices(Object.keys(comparisonReporters)).default('text'),
    )
    .addOption(languageOption())
    .option('--json', 'short for --format json')
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists')
    .addHelpText('after', EXAMPLES)
    .action((runs: string[], _options: unknown, command: Command) =>
      act(command, async () => {
        const options = command.optsWithGlobals<CompareOptions>();
        if (runs.length < 2) throw new UsageError('compare takes two runs or more');
        const despite = reasonsOf(options.despite);
        const target = destination(shell, options.output, options.force === true);
        const { compare } = await import('../../jobs/compare.ts');
        const result = await compare(runs, despite);
        const report = await comparisonReporters[options.json ? 'json' : options.format]();
        await target.put(report(result, { ...textOptions(shell, options), language: options.language }));
        return result.refused.length > 0 ? EXIT.undecided : EXIT.done;
      }),
    );
}
