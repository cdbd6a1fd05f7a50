import { Command, Option } from 'commander';
import { type ComparisonFormat, comparisonReporters } from '../../reports/comparison/reporters.ts';
import type { CommandContext, CommonOptions } from '../context.ts';
import { destination } from '../destination.ts';
import { UsageError } from '../failure.ts';
import { collect } from '../request.ts';
import { EXIT } from '../shell.ts';
import { textOptions } from '../text-options.ts';

interface CompareOptions extends CommonOptions {
  readonly format: ComparisonFormat;
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
    .addOption(
      new Option(
        '--despite <factor=reason>',
        'compare though this factor differs, for this reason',
      ).argParser(collect),
    )
    .addOption(
      new Option('--format <name>', 'how to print').choices(Object.keys(comparisonReporters)).default('text'),
    )
    .option('--json', 'short for --format json')
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists')
    .addHelpText('after', EXAMPLES)
    .action((runs: string[], _options: unknown, command: Command) =>
      act(command, async () => {
        const options = command.optsWithGlobals<CompareOptions>();
        if (runs.length < 2) throw new UsageError('compare takes two runs or more');
        const despite = reasons(options.despite ?? []);
        const target = destination(shell, options.output, options.force === true);
        const { compare } = await import('../../jobs/compare.ts');
        const result = await compare(runs, despite);
        const report = await comparisonReporters[options.json ? 'json' : options.format]();
        await target.put(report(result, textOptions(shell, options)));
        return result.refused.length > 0 ? EXIT.undecided : EXIT.done;
      }),
    );
}

/** `FACTOR=REASON`, each factor once and none without a reason. */
function reasons(written: readonly string[]): Map<string, string> {
  const found = new Map<string, string>();
  for (const text of written) {
    const [, factor, reason] = /^([^=]+)=(.+)$/su.exec(text) ?? [];
    if (!factor?.trim() || !reason?.trim()) {
      throw new UsageError('--despite takes FACTOR=REASON: an override needs a reason');
    }
    if (found.has(factor.trim())) throw new UsageError(`--despite names ${factor.trim()} twice`);
    found.set(factor.trim(), reason.trim());
  }
  return found;
}
