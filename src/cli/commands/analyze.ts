import { Command, Option } from 'commander';
import type { EstimatorName } from '../../documents/estimator-names.ts';
import { type ReporterName, reporters } from '../../reports/reporters.ts';
import type { TextOptions } from '../../reports/text/page.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import type { EnduranceResult } from '../../result/endurance.ts';
import type { CommandContext, CommonOptions } from '../context.ts';
import { destination } from '../destination.ts';
import { drumRunner } from '../drum-runner.ts';
import { estimatorNames } from '../estimator-option.ts';
import { growSparingly } from '../heap.ts';
import { progressLine } from '../progress.ts';
import { collect, type RequestOptions, requestOf } from '../request.ts';
import { EXIT } from '../shell.ts';
import { textOptions } from '../text-options.ts';

interface AnalyzeOptions extends CommonOptions, RequestOptions {
  readonly format: ReporterName;
  readonly json?: boolean;
  readonly output?: string;
  readonly force?: boolean;
  readonly exitZero?: boolean;
  readonly estimators?: readonly EstimatorName[];
}

const EXAMPLES = `
Examples:
  tirelab analyze fixtures/demo/run.yaml
  tirelab analyze --protocol protocols/pinch-up-down.yaml drops.csv
  tirelab analyze --protocol P.yaml --spec S.yaml --json drops.csv | jq .verdict
  ssh rig cat drops.csv | tirelab analyze --protocol P.yaml -`;

/** `tirelab analyze`: the main job, from a log to an estimate and, with a specification, a verdict. */
export function analyzeCommand({ shell, act }: CommandContext): Command {
  return new Command('analyze')
    .summary('check a log against its protocol, estimate, judge')
    .description(
      'Reads a rig log, checks it against the protocol, estimates what the tyres withstand and, with a specification, judges it. Takes one run file, or a protocol and its logs.',
    )
    .argument('<file...>', 'RUN.yaml; or, with --protocol, the logs in order (- is standard input)')
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
    .addOption(new Option('--format <name>', 'how to print').choices(Object.keys(reporters)).default('text'))
    .option('--json', 'short for --format json')
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists')
    .option('--exit-zero', 'exit 0 whatever the verdict')
    .addHelpText('after', EXAMPLES)
    .action((files: string[], _options: unknown, command: Command) =>
      act(command, async () => {
        const options = command.optsWithGlobals<AnalyzeOptions>();
        const target = destination(shell, options.output, options.force === true);
        growSparingly();
        const { analyze } = await import('../../jobs/analyze.ts');
        const { exitStatus } = await import('../../verdict/exit-status.ts');
        const progress = progressLine(shell, options, 'bytes', () => performance.now());
        const result = await analyze(requestOf(files, options), shell.stdin, options.estimators, {
          runner: drumRunner,
          onProgress: progress.update,
        }).finally(progress.end);
        const format = options.json ? 'json' : options.format;
        await target.put(await reported(result, format, textOptions(shell, options)));
        return options.exitZero ? EXIT.done : exitStatus(result);
      }),
    );
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
