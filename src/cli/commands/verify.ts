import { Command, Option } from 'commander';
import { asOf } from '../as-of.ts';
import type { CommandContext, CommonOptions } from '../context.ts';
import { destination } from '../destination.ts';
import { EXIT, type Shell } from '../shell.ts';
import { textOptions } from '../text-options.ts';
import { VERSION } from '../version.ts';

interface VerifyOptions extends CommonOptions {
  readonly format: 'text' | 'json';
  readonly json?: boolean;
  readonly output?: string;
  readonly force?: boolean;
  readonly asOf?: string;
}

const EXAMPLES = `
Examples:
  tirelab analyze run.yaml --json -o result.json
  tirelab verify result.json
  tirelab verify archive.json --as-of 2036-04-01`;

/** `tirelab verify RESULT.json`: recomputes a stored result from the inputs it names; or looks at an archive. */
export function verifyCommand({ shell, act }: CommandContext): Command {
  return new Command('verify')
    .summary('recompute a stored result from its inputs')
    .description(
      'Recomputes a stored result from the inputs it names: exit status 0 where they are unchanged and every number, word and verdict comes out again, 1 where not. Run it where the result was made: the paths of its inputs start there. Of the manifest of an archive: 0 where every file is there and has its hash, 1 where not; files and parts that need be kept no longer are said.',
    )
    .argument('<result>', 'what "tirelab analyze --json" wrote, or "tirelab archive"')
    .option('--as-of <date>', 'the day by which an archive is looked at (default: today)')
    .addOption(new Option('--format <name>', 'how to print').choices(['text', 'json']).default('text'))
    .option('--json', 'short for --format json')
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists')
    .addHelpText('after', EXAMPLES)
    .action((path: string, _options: unknown, command: Command) =>
      act(command, async () => {
        const options = command.optsWithGlobals<VerifyOptions>();
        const target = destination(shell, options.output, options.force === true);
        const { schemaOf } = await import('../../documents/archive-manifest.ts');
        const judged =
          schemaOf(path) === 'tirelab.archive/1'
            ? await ofArchive(path, shell, options)
            : await ofResult(path, shell, options);
        await target.put(judged.text);
        return judged.holds ? EXIT.done : EXIT.notMet;
      }),
    );
}

interface Judged {
  readonly text: string;
  readonly holds: boolean;
}

async function ofResult(path: string, shell: Shell, options: VerifyOptions): Promise<Judged> {
  const { verify } = await import('../../jobs/verify.ts');
  const { analysisDocument } = await import('../../reports/json.ts');
  const { enduranceDocument } = await import('../../reports/endurance/json.ts');
  const { verificationReporters } = await import('../../reports/verification/reporters.ts');
  const verification = await verify(path, (result) =>
    JSON.parse(
      result.kind === 'impact' ? analysisDocument(result, VERSION) : enduranceDocument(result, VERSION),
    ),
  );
  const report = verificationReporters[options.json ? 'json' : options.format];
  return { text: report(verification, textOptions(shell, options)), holds: verification.follows };
}

async function ofArchive(path: string, shell: Shell, options: VerifyOptions): Promise<Judged> {
  const { verifyArchive } = await import('../../jobs/verify-archive.ts');
  const { archiveReporters } = await import('../../reports/archive/verification.ts');
  const verification = verifyArchive(path, asOf(options.asOf, shell, Date.now).date);
  const report = archiveReporters[options.json ? 'json' : options.format];
  return { text: report(verification, textOptions(shell, options)), holds: verification.whole };
}
