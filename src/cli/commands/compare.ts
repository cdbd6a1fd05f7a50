import { Command, InvalidArgumentError, Option } from 'commander';
import { filesOf } from '../../documents/glob.ts';
import { type ComparisonFormat, comparisonReporters } from '../../reports/comparison/reporters.ts';
import type { LanguageCode } from '../../reports/words/language.ts';
import type { ComparedPair, ComparisonResult } from '../../result/comparison.ts';
import { unreadLines } from '../batch/unread-lines.ts';
import type { CommandContext, CommonOptions } from '../context.ts';
import { despiteOption, reasonsOf } from '../despite-option.ts';
import { type Destination, destination } from '../destination.ts';
import { UsageError } from '../failure.ts';
import { languageOption } from '../language-option.ts';
import { listedFiles } from '../listed-files.ts';
import { progressLine } from '../progress.ts';
import { wholeNumber } from '../quantity-options.ts';
import { EXIT, type Shell, write } from '../shell.ts';
import { textOptions } from '../text-options.ts';

interface CompareOptions extends CommonOptions {
  readonly format: ComparisonFormat;
  readonly language: LanguageCode;
  readonly json?: boolean;
  readonly output?: string;
  readonly force?: boolean;
  readonly despite?: readonly string[];
  readonly reference?: string;
  readonly margin?: number;
  readonly covariates?: readonly string[];
  readonly pool?: boolean;
  readonly measured?: string;
  readonly pairedBy?: string;
  readonly blocks?: readonly string[];
  readonly filesFrom?: string;
  readonly workers?: number;
  readonly progress?: boolean;
  readonly ndjson?: boolean;
  readonly csv?: boolean;
}

const EXAMPLES = `
Examples:
  tirelab compare runs/C-114/run.yaml runs/C-115/run.yaml
  tirelab compare --despite "day=same week, reference tyre unmoved" A.yaml B.yaml
  tirelab compare --json A.yaml B.yaml C.yaml | jq '.pairs[].differences[0].ratio'
  tirelab compare --reference C-100 --margin "5 %" 'runs/2026-11/*.yaml'
  tirelab compare --covariates pressure,operator A.yaml B.yaml

A run may hold several constructions, and tyres of the reference role. Against
references of several days each side is told as a ratio to that of its own day.`;

/** `tirelab compare`: drop tests of constructions against each other, where only what was declared differs. */
export function compareCommand({ shell, act }: CommandContext): Command {
  return new Command('compare')
    .summary('compare constructions, one variable at a time')
    .description(
      'Compares constructions over drop tests or drum tests: first every factor of construction, mounting and conditions, then energies or lives. Refused (status 3) where a factor differs that nobody declared. With a margin: status 1 where a construction is inferior to the reference, 3 where that is open.',
    )
    .argument('[run...]', 'run files, or patterns in quotes')
    .addOption(despiteOption())
    .option('--reference <construction>', 'what all stand against, C-100 or C-100@2 (default: the first)')
    .addOption(
      new Option('--margin <share>', 'share that may be lost against the reference, as "5 %"').argParser(
        shareBelowOne,
      ),
    )
    .addOption(
      new Option(
        '--covariates <names>',
        'conditions and blocks to allow for: pressure, temperature, mass, day, operator, session, rig, series, or a column of the table of specimens',
      ).argParser(namesOf),
    )
    .option('--pool', 'put runs of one construction together')
    .option(
      '--measured <column>',
      'compare what was measured on the tyres: mass, or a column of their tables',
    )
    .option('--paired-by <column>', 'with --measured: what makes a pair of two tyres')
    .addOption(
      new Option('--blocks <columns>', 'with --measured: blocks of a balanced layout').argParser(namesOf),
    )
    .option('--files-from <list>', 'more run files, one a line, from a file (- is standard input)')
    .option('--workers <n>', 'threads (default: one a core); the result is the same', wholeNumber(1, 256))
    .option('--no-progress', 'no progress line')
    .addOption(
      new Option('--format <name>', 'how to print').choices(Object.keys(comparisonReporters)).default('text'),
    )
    .addOption(languageOption())
    .option('--json', 'short for --format json')
    .option('--ndjson', 'short for --format ndjson: a line a pair')
    .option('--csv', 'short for --format csv')
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists')
    .addHelpText('after', EXAMPLES)
    .action((runs: string[], _options: unknown, command: Command) =>
      act(command, async () => {
        const options = command.optsWithGlobals<CompareOptions>();
        const words = [...runs, ...(await listedFiles(shell, options.filesFrom))];
        const paths = filesOf(words);
        if (paths.length === 0) throw new UsageError('compare takes run files');
        const despite = reasonsOf(options.despite);
        const target = destination(shell, options.output, options.force === true);
        if (options.measured !== undefined) return measured(shell, target, paths, despite, options);
        if (options.pairedBy !== undefined || options.blocks !== undefined)
          throw new UsageError('--paired-by and --blocks go with --measured');
        const { compare } = await import('../../jobs/compare.ts');
        const { pairRunner } = await import('../batch/pair-runner.ts');
        const line = (noun: string) => progressLine(shell, options, noun, () => performance.now());
        const [reading, comparing] = [line('runs'), line('pairs')];
        const result = await compare(paths, {
          despite,
          reference: options.reference ?? null,
          margin: options.margin ?? null,
          covariates: options.covariates ?? [],
          pool: options.pool === true,
          runner: pairRunner(options.workers ?? null, comparing.update),
          onProgress: reading.update,
        }).finally(comparing.end);
        await write(shell.stderr, unreadText(result));
        const report = await comparisonReporters[formatOf(options)]();
        await target.put(report(result, { ...textOptions(shell, options), language: options.language }));
        return statusOf(result);
      }),
    );
}

async function measured(
  shell: Shell,
  target: Destination,
  paths: readonly string[],
  despite: ReadonlyMap<string, string>,
  options: CompareOptions,
): Promise<number> {
  if (options.covariates !== undefined || options.pool)
    throw new UsageError('--measured takes --blocks and --paired-by; --covariates and --pool go without it');
  const { compareMeasuredRuns } = await import('../../jobs/compare-measured.ts');
  const { measuredReporters } = await import('../../reports/measured/reporters.ts');
  const format = formatOf(options);
  const reporter = measuredReporters[format];
  if (reporter === undefined) throw new UsageError(`--measured is not printed as ${format}`);
  const result = await compareMeasuredRuns(paths, {
    quantity: options.measured!,
    pairedBy: options.pairedBy ?? null,
    blocks: options.blocks ?? [],
    margin: options.margin ?? null,
    reference: options.reference ?? null,
    despite,
  });
  await write(shell.stderr, unreadText(result));
  await target.put((await reporter())(result, textOptions(shell, options)));
  return statusOf({ ...result, relative: [] });
}

function formatOf({ json, ndjson, csv, format }: CompareOptions): ComparisonFormat {
  return json ? 'json' : ndjson ? 'ndjson' : csv ? 'csv' : format;
}

/** 1 where a construction is inferior to the reference; 3 where nothing was decided, or not all could be read. */
function statusOf({
  refused,
  unread,
  pairs,
  relative,
}: Pick<ComparisonResult, 'refused' | 'unread'> & {
  readonly pairs: readonly Pick<ComparedPair, 'first' | 'nonInferiority'>[];
  readonly relative: readonly Pick<ComparedPair, 'nonInferiority'>[];
}): number {
  const judged = [...pairs.filter(({ first }) => first === 0), ...relative].flatMap(
    ({ nonInferiority }) => nonInferiority?.verdict ?? [],
  );
  if (judged.includes('inferior')) return EXIT.notMet;
  const isOpen = refused.length > 0 || unread.length > 0 || judged.includes('undecided');
  return isOpen ? EXIT.undecided : EXIT.done;
}

function unreadText({ unread }: Pick<ComparisonResult, 'unread'>): string {
  return unread.map(({ path, problems }) => unreadLines(path, problems)).join('');
}

/** `5 %` or `0.05`. */
function shareBelowOne(text: string): number {
  const [, number, percent] = /^\s*(\d+(?:\.\d+)?)\s*(%?)\s*$/u.exec(text) ?? [];
  const share = Number(number) / (percent ? 100 : 1);
  if (share >= 0 && share < 1) return share;
  throw new InvalidArgumentError('Expected a share below one, as "5 %" or 0.05.');
}

function namesOf(text: string): string[] {
  const names = text.split(',').map((name) => name.trim());
  if (names.every((name) => name !== '')) return [...new Set(names)];
  throw new InvalidArgumentError('Expected names separated by commas.');
}
