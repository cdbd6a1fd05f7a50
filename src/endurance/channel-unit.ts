import { POWERS } from '../logs/samples/long-number.ts';
import { SAMPLE_QUANTITIES } from '../logs/samples/quantities.ts';
import { convert } from '../quantity/units.ts';

/** Unit of the results by the name of a column. */
export const SAMPLE_UNITS: ReadonlyMap<string, string> = new Map(
  SAMPLE_QUANTITIES.map(({ name, unit }) => [name, unit]),
);

/** What a step of a column is. */
interface Steps {
  readonly name: string;
  /** Unit of the log. */
  readonly unit: string;
  readonly decimals: number;
  /** Air pressure to take off, in the unit of the results, where the column is absolute. */
  readonly ambient: number;
}

/** A value in steps of a channel, in the unit of the results. */
export function valueOfSteps(steps: number, channel: Steps): number {
  const value = steps / POWERS[channel.decimals]!;
  return convert(value, channel.unit, SAMPLE_UNITS.get(channel.name)!) - channel.ambient;
}
