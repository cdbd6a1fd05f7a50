import { dirname } from 'node:path';
import { Command } from 'commander';
import { beginOfDay } from '../../quantity/calendar.ts';
import type { CommandContext, CommonOptions } from '../context.ts';
import { destination } from '../destination.ts';
import { UsageError } from '../failure.ts';
import { EXIT } from '../shell.ts';
import { goesToFile } from '../text-options.ts';
import { VERSION } from '../version.ts';

interface ArchiveOptions extends CommonOptions {
  readonly until: string;
  readonly parts?: string;
  readonly output?: string;
  readonly force?: boolean;
}

const EXAMPLES = `
Examples:
  tirelab analyze run.yaml --json -o result.json
  tirelab archive result.json --until 2036-03-31 --parts parts.csv -o archive.json
  tirelab verify archive.json`;

/** `tirelab archive RESULT.json…`: what an archive has to keep, until when, and where. */
export function archiveCommand({ shell, act }: CommandContext): Command {
  return new Command('archive')
    .summary('draw up what an archive has to keep, and until when')
    .description(
      'Writes the manifest of an archive: the results, every file that they rest on with its SHA-256, the day until which all must be kept, and the place of kept parts (a table: specimen, part, place, kept until). Its paths start at the folder of -o, else at the working directory. "tirelab verify" holds the archive against it.',
    )
    .argument('<result...>', 'what "tirelab analyze --json" wrote')
    .requiredOption('--until <date>', 'the last day on which the files must be there')
    .option('--parts <file>', 'the table of kept parts')
    .option('--json', 'as it is written in any case')
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists')
    .addHelpText('after', EXAMPLES)
    .action((results: string[], _options: unknown, command: Command) =>
      act(command, async () => {
        const options = command.optsWithGlobals<ArchiveOptions>();
        if (beginOfDay(options.until) === null) {
          throw new UsageError(
            `found --until "${options.until.slice(0, 40)}", expected a date such as 2036-03-31`,
          );
        }
        const target = destination(shell, options.output, options.force === true);
        const { archive } = await import('../../jobs/archive.ts');
        const { archiveDocument } = await import('../../reports/archive/manifest.ts');
        const manifest = await archive({
          results,
          until: options.until,
          parts: options.parts ?? null,
          folder: goesToFile(options.output) ? dirname(options.output!) : '.',
        });
        await target.put(archiveDocument(manifest, VERSION));
        return EXIT.done;
      }),
    );
}
