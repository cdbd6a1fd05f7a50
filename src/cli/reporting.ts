import { type Command, Option } from 'commander';
import type { TextOptions } from '../reports/text/page.ts';
import type { CommonOptions } from './context.ts';
import { destination } from './destination.ts';
import type { Shell } from './shell.ts';
import { textOptions } from './text-options.ts';

/** The reporters of a command by the name that `--format` gives them; each is loaded when it is asked for. */
export type Reporters<Result> = Readonly<
  Record<string, () => Promise<(result: Result, options: TextOptions) => string>>
>;

/** What reportingOptions adds to the options of a command. */
export interface ReportingOptions extends CommonOptions {
  readonly format: string;
  readonly json?: boolean;
  readonly output?: string;
  readonly force?: boolean;
}

/** Gives a command the options by which a result is printed: `--format`, `--json`, `-o`, `--force`. */
export function reportingOptions(command: Command, reporters: Reporters<never>): Command {
  return command
    .addOption(new Option('--format <name>', 'how to print').choices(Object.keys(reporters)).default('text'))
    .option('--json', 'short for --format json')
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists');
}

/**
 * Makes a result and prints it as the options ask; a name that is taken costs no work.
 *
 * @throws InputError as the work does, and for a file that exists
 */
export async function reported<Result>(
  shell: Shell,
  options: ReportingOptions,
  reporters: Reporters<Result>,
  work: () => Promise<Result>,
): Promise<Result> {
  const target = destination(shell, options.output, options.force === true);
  const result = await work();
  const report = await reporters[options.json ? 'json' : options.format]!();
  await target.put(report(result, textOptions(shell, options)));
  return result;
}
