import { rmSync } from 'node:fs';
import { Command, Option } from 'commander';
import type { EstimatorName } from '../../documents/estimator-names.ts';
import { filesOf, isPattern } from '../../documents/glob.ts';
import type { Guard } from '../../logs/samples/side-file.ts';
import { type ReporterName, reporters } from '../../reports/reporters.ts';
import type { TextOptions } from '../../reports/text/page.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import type { EnduranceResult } from '../../result/endurance.ts';
import type { IntervalKind } from '../../result/estimate.ts';
import type { BatchFormat } from '../batch/answer.ts';
import type { CommandContext, CommonOptions } from '../context.ts';
import { type Destination, destination } from '../destination.ts';
import { drumRunner } from '../drum-runner.ts';
import { growSparingly } from '../engine.ts';
import { estimatorNames } from '../estimator-option.ts';
import { UsageError } from '../failure.ts';
import { listedFiles } from '../listed-files.ts';
import { progressLine } from '../progress.ts';
import { wholeNumber } from '../quantity-options.ts';
import { collect, type RequestOptions, requestOf, requestsOf } from '../request.ts';
import { EXIT, type Shell } from '../shell.ts';
import { textOptions } from '../text-options.ts';

interface AnalyzeOptions extends CommonOptions, RequestOptions {
  readonly format: BatchFormat;
  readonly json?: boolean;
  readonly ndjson?: boolean;
  readonly csv?: boolean;
  readonly each?: boolean;
  readonly filesFrom?: string;
  readonly workers?: number;
  readonly progress?: boolean;
  readonly intervals: IntervalKind;
  readonly output?: string;
  readonly force?: boolean;
  readonly exitZero?: boolean;
  readonly keepMinutes?: boolean;
  readonly estimators?: readonly EstimatorName[];
}

const EXAMPLES = `
Examples:
  tirelab analyze fixtures/demo/run.yaml
  tirelab analyze --protocol protocols/pinch-up-down.yaml drops.csv
  tirelab analyze --protocol P.yaml --spec S.yaml --json drops.csv | jq .verdict
  ssh rig cat drops.csv | tirelab analyze --protocol P.yaml -
  tirelab analyze --csv 'runs/**/run.yaml' | awk -F, '$3 == "fail"'
  tirelab analyze --ndjson --protocol P.yaml --each logs/*.csv | jq .verdict

Several run files, a pattern in quotes, or logs with --each are a batch: each is a
test of its own, on all cores, told in the order given. One that cannot be read is
told on standard error with its path, and stops none of the others.`;

/** `tirelab analyze`: the main job, from a log to an estimate and, with a specification, a verdict. */
export function analyzeCommand({ shell, act }: CommandContext): Command {
  return new Command('analyze')
    .summary('check a log against its protocol, estimate, judge')
    .description(
      'Reads a rig log, checks it against the protocol, estimates what the tyres withstand and, with a specification, judges it. Takes run files, or a protocol and its logs.',
    )
    .argument('[file...]', 'RUN.yaml…; or, with --protocol, the logs in order (- is standard input)')
    .option('--protocol <file>', 'how the test was to be done')
    .option('--rig <file>', 'the rig: falling mass, gravity, limits')
    .option('--construction <file>', 'what was tested (may be given again)', collect)
    .option('--spec <file>', 'the limits to judge against')
    .option('--specimens <file>', 'the table of specimens')
    .addOption(
      new Option(
        '--estimators <names>',
        'further estimators, separated by commas; all for every one',
      ).argParser(estimatorNames),
    )
    .addOption(
      new Option(
        '--intervals <kind>',
        'calibrated by simulation, or of the profile likelihood alone (faster)',
      )
        .choices(INTERVALS)
        .default('calibrated'),
    )
    .option('--each', 'with --protocol: each log is a test of its own')
    .option('--files-from <list>', 'more files, one a line, from a file (- is standard input)')
    .option('--workers <n>', 'threads (default: one a core); the result is the same', wholeNumber(1, 256))
    .option(
      '--keep-minutes',
      'keep the minutes of each drum log beside it, by its SHA-256, and use them while it is the same',
    )
    .option('--no-progress', 'no progress line')
    .addOption(new Option('--format <name>', 'how to print').choices(FORMATS).default('text'))
    .option('--json', 'short for --format json')
    .option('--ndjson', 'short for --format ndjson: a line a run')
    .option('--csv', 'short for --format csv: a row a run')
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists')
    .option('--exit-zero', 'exit 0 whatever the verdict')
    .addHelpText('after', EXAMPLES)
    .action((files: string[], _options: unknown, command: Command) =>
      act(command, async () => {
        const options = command.optsWithGlobals<AnalyzeOptions>();
        const target = destination(shell, options.output, options.force === true);
        const format = formatOf(options);
        const listed = await listedFiles(shell, options.filesFrom);
        const asked = [...files, ...listed];
        if (asked.length === 0) throw new UsageError('analyze takes a run file, or a protocol and its logs');
        const words = filesOf(asked);
        if (isBatch(asked, format, options)) return batch(shell, target, words, format, options);
        growSparingly();
        const { analyze } = await import('../../jobs/analyze.ts');
        const { exitStatus } = await import('../../verdict/exit-status.ts');
        const progress = progressLine(shell, options, 'bytes', () => performance.now());
        const result = await analyze(requestOf(words, options), shell.stdin, options.estimators, {
          intervals: options.intervals,
          runner: drumRunner,
          onProgress: progress.update,
          ...(options.keepMinutes ? { minutes: watchOver(shell) } : {}),
        }).finally(progress.end);
        const single = format === 'json' ? 'json' : 'text';
        await target.put(await reported(result, single, textOptions(shell, options)));
        return options.exitZero ? EXIT.done : exitStatus(result);
      }),
    );
}

/** An interruption takes half a file away. */
function watchOver(shell: Shell): Guard {
  return (temporary) => shell.onInterrupt(() => rmSync(temporary, { force: true }));
}

const INTERVALS: readonly IntervalKind[] = ['calibrated', 'profile-likelihood'];
const FORMATS: readonly BatchFormat[] = ['text', 'json', 'ndjson', 'csv'];

function formatOf({ json, ndjson, csv, format }: AnalyzeOptions): BatchFormat {
  return json ? 'json' : ndjson ? 'ndjson' : csv ? 'csv' : format;
}

/** Several tests, or one whose output has a form for several. */
function isBatch(asked: readonly string[], format: BatchFormat, options: AnalyzeOptions): boolean {
  if (options.each && options.protocol === undefined) {
    throw new UsageError('--each goes with --protocol: a run file names its logs itself');
  }
  if (format === 'ndjson' || format === 'csv') return true;
  return options.protocol === undefined
    ? asked.length > 1 || options.filesFrom !== undefined || asked.some(isPattern)
    : options.each === true;
}

/** Loaded only for a batch: a single test need not wait for it. */
async function batch(
  shell: Shell,
  target: Destination,
  words: readonly string[],
  format: BatchFormat,
  options: AnalyzeOptions,
): Promise<number> {
  const { analyzeBatch } = await import('../batch/analyze-batch.ts');
  const progress = progressLine(shell, options, 'runs', () => performance.now());
  const status = await analyzeBatch(shell, target.open(), progress, {
    requests: requestsOf(words, options, options.protocol === undefined || options.each === true),
    options: { estimators: options.estimators ?? [], intervals: options.intervals },
    format,
    workers: options.workers ?? null,
    text: textOptions(shell, options),
  });
  return options.exitZero && status === EXIT.notMet ? EXIT.done : status;
}

async function reported(
  result: ImpactResult | EnduranceResult,
  format: ReporterName,
  options: TextOptions,
): Promise<string> {
  if (result.kind === 'impact') return (await reporters[format]())(result, options);
  const { enduranceReporters } = await import('../../reports/endurance/reporters.ts');
  return (await enduranceReporters[format]())(result, options);
}
