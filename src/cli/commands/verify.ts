import { Command, Option } from 'commander';
import type { CommandContext, CommonOptions } from '../context.ts';
import { destination } from '../destination.ts';
import { EXIT } from '../shell.ts';
import { textOptions } from '../text-options.ts';
import { VERSION } from '../version.ts';

interface VerifyOptions extends CommonOptions {
  readonly format: 'text' | 'json';
  readonly json?: boolean;
  readonly output?: string;
  readonly force?: boolean;
}

const EXAMPLES = `
Examples:
  tirelab analyze run.yaml --json -o result.json
  tirelab verify result.json`;

/** `tirelab verify RESULT.json`: recomputes a stored result from the inputs it names. */
export function verifyCommand({ shell, act }: CommandContext): Command {
  return new Command('verify')
    .summary('recompute a stored result from its inputs')
    .description(
      'Recomputes a stored result from the inputs it names: exit status 0 where they are unchanged and every number, word and verdict comes out again, 1 where not. Run it where the result was made: the paths of its inputs start there.',
    )
    .argument('<result>', 'what "tirelab analyze --json" wrote')
    .addOption(new Option('--format <name>', 'how to print').choices(['text', 'json']).default('text'))
    .option('--json', 'short for --format json')
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists')
    .addHelpText('after', EXAMPLES)
    .action((path: string, _options: unknown, command: Command) =>
      act(command, async () => {
        const options = command.optsWithGlobals<VerifyOptions>();
        const target = destination(shell, options.output, options.force === true);
        const { verify } = await import('../../jobs/verify.ts');
        const { analysisDocument } = await import('../../reports/json.ts');
        const { enduranceDocument } = await import('../../reports/endurance/json.ts');
        const { verificationReporters } = await import('../../reports/verification/reporters.ts');
        const verification = await verify(path, (result) =>
          JSON.parse(
            result.kind === 'impact' ? analysisDocument(result, VERSION) : enduranceDocument(result, VERSION),
          ),
        );
        await target.put(
          verificationReporters[options.json ? 'json' : options.format](
            verification,
            textOptions(shell, options),
          ),
        );
        return verification.follows ? EXIT.done : EXIT.notMet;
      }),
    );
}
