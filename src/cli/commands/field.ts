import { Command, Option } from 'commander';
import { FLAT_CAUSES, type FlatCause } from '../../logs/rides.ts';
import { fieldReporters } from '../../reports/field/reporters.ts';
import type { CommandContext } from '../context.ts';
import { type ReportingOptions, reported, reportingOptions } from '../reporting.ts';
import { collect } from '../request.ts';
import { EXIT } from '../shell.ts';

interface FieldOptions extends ReportingOptions {
  readonly cause?: FlatCause | 'all';
  readonly lab?: readonly string[];
}

const EXAMPLES = `
RIDES.csv has a row for each ride: rider (a code), construction, distance [km] (or odometer [km]), flats and cause
(${FLAT_CAUSES.join(', ')}); where known tyre, position, terrain, bike, date, pressure [bar].
Riders are counted, never named.

Examples:
  tirelab field fixtures/field/rides.csv
  tirelab field rides.csv --cause pinch --lab results/`;

/** `tirelab field`: flats in the field, and whether they agree with the laboratory. */
export function fieldCommand({ shell, act }: CommandContext): Command {
  const command = new Command('field')
    .summary('flats in the field: rates, ratios, agreement with the laboratory')
    .description(
      'Reads ride logs: flats per 1,000 km with exact limits, ratios of constructions, whether riders differ by more than chance, what may stand for the construction, and whether the field ranks constructions as the laboratory does.',
    )
    .argument('<rides>', 'ride log (- is standard input)')
    .addOption(
      new Option('--cause <name>', 'the cause compared (default: pinch where it occurs, else all)').choices([
        'all',
        ...FLAT_CAUSES,
      ]),
    )
    .option(
      '--lab <path>',
      'stored results of drop tests, or a folder of them (may be given again)',
      collect,
    );
  return reportingOptions(command, fieldReporters)
    .addHelpText('after', EXAMPLES)
    .action((path: string, _options: unknown, own: Command) =>
      act(own, async () => {
        const options = own.optsWithGlobals<FieldOptions>();
        await reported(shell, options, fieldReporters, async () => {
          const { field } = await import('../../jobs/field.ts');
          return field(path === '-' ? shell.stdin : path, options.cause ?? null, options.lab ?? []);
        });
        return EXIT.done;
      }),
    );
}
