import { Argument, Command } from 'commander';
import type { CommandContext } from '../context.ts';
import { destination } from '../destination.ts';
import { EXIT } from '../shell.ts';

const KINDS = ['protocol', 'rig', 'construction', 'specification', 'run', 'waiver'] as const;

const EXAMPLES = `
Examples:
  tirelab schema protocol
  tirelab schema run -o run.schema.json`;

/** `tirelab schema NAME`: the JSON Schema (draft-07) of a file kind, for editors. */
export function schemaCommand({ shell, act }: CommandContext): Command {
  return new Command('schema')
    .summary('print the JSON Schema of a file kind')
    .description('Prints the JSON Schema (draft-07) of a file kind: completion and checks in an editor.')
    .addArgument(new Argument('<name>', 'the kind of file').choices(KINDS))
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists')
    .addHelpText('before', '')
    .addHelpText('after', EXAMPLES)
    .action((name: (typeof KINDS)[number], options, command: Command) =>
      act(command, async () => {
        const target = destination(shell, options.output, options.force === true);
        const { jsonSchema } = await import('../../documents/json-schema.ts');
        await target.put(`${JSON.stringify(jsonSchema(name), null, 2)}\n`);
        return EXIT.done;
      }),
    );
}
