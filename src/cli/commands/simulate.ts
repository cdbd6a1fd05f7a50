import { Command, Option } from 'commander';
import { type SimulationFormat, simulationReporters } from '../../reports/simulation/reporters.ts';
import type { LanguageCode } from '../../reports/words/language.ts';
import type { LawName } from '../../statistics/law.ts';
import type { CommandContext, CommonOptions } from '../context.ts';
import { destination } from '../destination.ts';
import { languageOption } from '../language-option.ts';
import { progressLine } from '../progress.ts';
import { wholeNumber } from '../quantity-options.ts';
import { EXIT } from '../shell.ts';
import { textOptions } from '../text-options.ts';

interface SimulateOptions extends CommonOptions {
  readonly spec?: string;
  readonly rig?: string;
  readonly median?: string;
  readonly medians?: string;
  readonly spread?: string;
  readonly law?: LawName;
  readonly between?: string;
  readonly damage?: string;
  readonly anyOffset?: boolean;
  readonly tests: number;
  readonly seed: number;
  readonly workers?: number;
  readonly coverage: boolean;
  readonly specimenEffect?: boolean;
  readonly progress: boolean;
  readonly format: SimulationFormat;
  readonly language: LanguageCode;
  readonly json?: boolean;
  readonly output?: string;
  readonly force?: boolean;
}

const EXAMPLES = `
Examples:
  tirelab simulate P.yaml --median "45 J" --spread "4 J"
  tirelab simulate P.yaml --spec S.yaml --medians "35 J..60 J/20" --spread "4 J"
  tirelab simulate P.yaml --median "560 mm" --spread "45 mm" --any-offset --json
  tirelab simulate P.yaml --spec S.yaml --medians "35 J..60 J/20" --spread "4 J" --format html -o chances.html`;

/** `tirelab simulate`: what a protocol would find on tyres of known strength. */
export function simulateCommand({ shell, act }: CommandContext): Command {
  return new Command('simulate')
    .summary('what a protocol would find on tyres of known strength')
    .description(
      'Carries a drop test out many times on invented tyres whose strength is known: how far its estimates lie off, how often its intervals hold, how many drops and tyres it takes and, with a specification, how likely pass, fail and no decision are.',
    )
    .argument('<protocol>', 'PROTOCOL.yaml of a drop test')
    .option('--spec <file>', 'the limits to judge against')
    .option('--rig <file>', 'the rig: falling mass, gravity, limits')
    .option('--median <quantity>', 'true median, as an energy or a height')
    .option('--medians <range>', 'several: from, to and how many, "35 J..60 J/20"')
    .option('--spread <quantity>', 'scale of the law: J or mm; of ln E in % for lognormal and weibull')
    .addOption(
      new Option('--law <name>', "law of the strength (default: the protocol's)").choices([
        'normal',
        'lognormal',
        'logistic',
        'weibull',
      ]),
    )
    .option('--between <share>', 'share of the variance that lies between tyres')
    .option('--damage <share>', 'strength that a tyre loses by each hit it survives')
    .option('--any-offset', 'move the median by up to half a step in each test')
    .option('--tests <n>', 'tests at each median', wholeNumber(2, 5_000_000), 10_000)
    .option('--seed <n>', 'of the random numbers', wholeNumber(0, Number.MAX_SAFE_INTEGER), 1)
    .option('--workers <n>', 'threads (default: one a core); the result is the same', wholeNumber(1, 256))
    .option('--no-coverage', 'errors of the estimates only: several times as fast')
    .option('--specimen-effect', 'fit the specimen effect too: milliseconds a test')
    .option('--no-progress', 'no progress line')
    .addOption(
      new Option('--format <name>', 'how to print').choices(Object.keys(simulationReporters)).default('text'),
    )
    .addOption(languageOption())
    .option('--json', 'short for --format json')
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists')
    .addHelpText('after', EXAMPLES)
    .action((protocol: string, _options: unknown, command: Command) =>
      act(command, async () => {
        const options = command.optsWithGlobals<SimulateOptions>();
        const target = destination(shell, options.output, options.force === true);
        const { simulate } = await import('../../jobs/simulate.ts');
        const { blockRunner } = await import('../workers.ts');
        const progress = progressLine(shell, options, 'tests', () => performance.now());
        const result = await simulate(
          {
            protocol,
            rig: options.rig ?? null,
            specification: options.spec ?? null,
            strength: {
              median: options.median ?? null,
              medians: options.medians ?? null,
              spread: options.spread ?? null,
              law: options.law ?? null,
              between: options.between ?? null,
              damage: options.damage ?? null,
              anyOffset: options.anyOffset === true,
            },
            tests: options.tests,
            seed: options.seed,
            wanted: { withIntervals: options.coverage, specimenEffect: options.specimenEffect === true },
          },
          blockRunner(options.workers ?? null),
          progress.update,
        ).finally(progress.end);
        const report = await simulationReporters[options.json ? 'json' : options.format]();
        await target.put(report(result, { ...textOptions(shell, options), language: options.language }));
        return EXIT.done;
      }),
    );
}
