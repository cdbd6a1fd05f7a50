import { Command, InvalidArgumentError } from 'commander';
import { readQuantity } from '../../quantity/quantity.ts';
import { rigCheckReporters } from '../../reports/rig-check/reporters.ts';
import type { CommandContext } from '../context.ts';
import { type ReportingOptions, reported, reportingOptions } from '../reporting.ts';
import { EXIT } from '../shell.ts';

interface RigOptions extends ReportingOptions {
  readonly height: number;
  readonly pressure?: number;
}

const EXAMPLES = `
READINGS.csv has any of: height [mm] with velocity [m/s], or with flag [mm] and gate time [ms] (gate height [mm] above
contact); height [mm] with reference height [mm]; mass [kg].

Examples:
  tirelab rig shared/rigs/drop-2.yaml
  tirelab rig shared/rigs/drop-2.yaml fixtures/rig-check/readings.csv --height 500mm --pressure 2bar`;

/** `tirelab rig`: whether a rig does what its file says, and how well its energies are known. */
export function rigCommand({ shell, act }: CommandContext): Command {
  const command = new Command('rig')
    .summary('check a rig: velocity ratio, height scale, mass, uncertainty')
    .description(
      'Holds readings of a rig against its file: velocity ratio, height scale, falling mass. Draws up the uncertainty of an energy, source by source. Exit status 1 where something is out of its limits.',
    )
    .argument('<rig>', 'RIG.yaml')
    .argument('[readings]', 'table of speeds, heights, weighings (- is standard input)')
    .option('--height <mm>', 'drop height that the uncertainty is drawn up for', quantityOf('mm'), 500)
    .option('--pressure <bar>', 'set pressure, for the effect of the gauge', quantityOf('bar'));
  return reportingOptions(command, rigCheckReporters)
    .addHelpText('after', EXAMPLES)
    .action((rig: string, readings: string | undefined, _options: unknown, own: Command) =>
      act(own, async () => {
        const options = own.optsWithGlobals<RigOptions>();
        const { standing } = await reported(shell, options, rigCheckReporters, async () => {
          const { checkRig } = await import('../../jobs/rig-check.ts');
          return checkRig({
            rig,
            readings: readings === '-' ? shell.stdin : (readings ?? null),
            height: options.height,
            pressure: options.pressure ?? null,
          });
        });
        return standing === 'out' ? EXIT.notMet : EXIT.done;
      }),
    );
}

/** A quantity with or without its unit. */
function quantityOf(unit: string): (text: string) => number {
  return (text) => {
    const reading = readQuantity(/[^\d.\s]/u.test(text) ? text : `${text} ${unit}`, unit);
    if (reading.ok && reading.value.tolerance === null && reading.value.value > 0) return reading.value.value;
    throw new InvalidArgumentError(`expected a quantity above 0, such as 2 ${unit}.`);
  };
}
