import { Command, Option } from 'commander';
import { type PlanFormat, planReporters } from '../../reports/plan/reporters.ts';
import type { EndurancePlan } from '../../result/endurance-plan.ts';
import type { LawName } from '../../statistics/law.ts';
import type { CommandContext, CommonOptions } from '../context.ts';
import { destination } from '../destination.ts';
import { wholeNumber } from '../quantity-options.ts';
import { collect } from '../request.ts';
import type { Shell } from '../shell.ts';
import { EXIT } from '../shell.ts';
import { textOptions } from '../text-options.ts';
import { VERSION } from '../version.ts';

interface PlanOptions extends CommonOptions {
  readonly rig?: string;
  readonly specimens?: string;
  readonly median?: string;
  readonly spread?: string;
  readonly law?: LawName;
  readonly between?: string;
  readonly damage?: string;
  readonly precision?: string;
  readonly gain?: string;
  readonly power: string;
  readonly from?: readonly string[];
  readonly perDrop: string;
  readonly perTyre: string;
  readonly tests: number;
  readonly seed: number;
  readonly sheet?: string;
  readonly drum?: string;
  readonly cleats?: number;
  readonly circumference?: string;
  readonly duty: string;
  readonly begin?: string;
  readonly format: PlanFormat;
  readonly json?: boolean;
  readonly output?: string;
  readonly force?: boolean;
}

const EXAMPLES = `
Examples:
  tirelab plan protocols/pinch-up-down.yaml
  tirelab plan P.yaml --gain "10 %" --power "80 %" --spread "4 J"
  tirelab plan P.yaml --specimens specimens.csv --sheet sheet.csv
  tirelab plan protocols/drum-two-block.yaml --duty "20 h" --begin 2026-03-02
  tirelab plan P.yaml --precision "2 J" --from earlier.json --from other.json`;

/** `tirelab plan`: levels, run sheet, sizes, hours. */
export function planCommand({ shell, act }: CommandContext): Command {
  return new Command('plan')
    .summary('levels and energies, run sheet, how many tyres, how long')
    .description(
      'Lays a drop test out beforehand: its levels with energies and impact speeds, a run sheet in seeded random order, and, by simulating this protocol, how many tyres a precision or a gain takes and what those at hand can show. Of a drum test: distance, hours, ends of its blocks, revolutions and cleat hits.',
    )
    .argument('<protocol>', 'PROTOCOL.yaml')
    .option('--rig <file>', 'the rig: falling mass, gravity, limits')
    .option('--specimens <n or file>', 'how many tyres there are, or their table')
    .option('--median <quantity>', 'what the tyres withstand, as an energy or a height')
    .option('--spread <quantity>', 'and how they scatter (default: one step)')
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
    .option('--precision <quantity>', 'wished for the median, either way, such as "2 J"')
    .option('--gain <share>', 'of one construction over another, to be seen')
    .option('--power <share>', 'chance to see it', '80 %')
    .option('--from <file>', 'earlier result (JSON) to propose start and step from (again)', collect)
    .option('--per-drop <time>', 'time of a drop (common practice, no source)', '5 min')
    .option('--per-tyre <time>', 'time to mount and prepare a tyre (likewise)', '10 min')
    .option('--tests <n>', 'simulated for each number', wholeNumber(100, 1_000_000), 4000)
    .option('--seed <n>', 'of the random numbers and the order', wholeNumber(0, Number.MAX_SAFE_INTEGER), 1)
    .option('--sheet <file>', 'write the run sheet (CSV) as well')
    .option('--drum <length>', 'drum test: diameter of the drum, such as "1.7 m"')
    .option('--cleats <n>', 'drum test: cleats on the drum', wholeNumber(0, 10_000))
    .option('--circumference <length>', 'drum test: rolling circumference of the tyre')
    .option('--duty <time>', 'drum test: running time a day', '24 h')
    .option('--begin <date>', 'drum test: when it begins')
    .addOption(
      new Option('--format <name>', 'how to print; csv is the run sheet')
        .choices(Object.keys(planReporters))
        .default('text'),
    )
    .option('--json', 'short for --format json')
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace files that exist')
    .addHelpText('after', EXAMPLES)
    .action((protocol: string, _options: unknown, command: Command) =>
      act(command, async () => {
        const options = command.optsWithGlobals<PlanOptions>();
        const target = destination(shell, options.output, options.force === true);
        const sheet =
          options.sheet === undefined ? null : destination(shell, options.sheet, options.force === true);
        const { enduranceProtocolAt, planEndurance } = await import('../../jobs/plan-endurance.ts');
        const drumTest = enduranceProtocolAt(protocol);
        if (drumTest !== null) {
          const planned = planEndurance(drumTest, {
            drum: options.drum ?? null,
            cleats: options.cleats ?? null,
            rig: options.rig ?? null,
            circumference: options.circumference ?? null,
            duty: options.duty,
            begin: options.begin ?? null,
          });
          const isJson = options.json === true || options.format === 'json';
          await target.put(await endurancePlan(planned, isJson, shell, options));
          return EXIT.done;
        }
        const { plan } = await import('../../jobs/plan.ts');
        const result = await plan({
          protocol,
          rig: options.rig ?? null,
          specimens: options.specimens ?? null,
          strength: {
            median: options.median ?? null,
            medians: null,
            spread: options.spread ?? null,
            law: options.law ?? null,
            between: options.between ?? null,
            damage: options.damage ?? null,
            anyOffset: true,
          },
          precision: options.precision ?? null,
          gain: options.gain ?? null,
          power: options.power,
          perDrop: options.perDrop,
          perSpecimen: options.perTyre,
          from: options.from ?? [],
          tests: options.tests,
          seed: options.seed,
        });
        const report = await planReporters[options.json ? 'json' : options.format]();
        const text = textOptions(shell, options);
        if (sheet !== null) await sheet.put((await planReporters.csv())(result));
        await target.put(report(result, text));
        return EXIT.done;
      }),
    );
}

async function endurancePlan(
  planned: EndurancePlan,
  isJson: boolean,
  shell: Shell,
  options: PlanOptions,
): Promise<string> {
  const { endurancePlanDocument, endurancePlanText } = await import('../../reports/endurance/plan.ts');
  if (isJson) return endurancePlanDocument(planned, VERSION);
  return endurancePlanText(planned, textOptions(shell, options));
}
