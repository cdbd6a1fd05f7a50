import { convert } from '../../quantity/units.ts';

/** A column that the scanner knows by its name. */
export interface SampleQuantity {
  readonly name: string;
  /** Unit of the results. */
  readonly unit: string;
  /**
   * Decimals kept of a value in that unit; finer digits are rounded, half away from nought. Each is finer than the
   * instruments of a drum rig resolve (common practice, no source), and fixed, so that sums of whole numbers are
   * the same however a log is cut.
   */
  readonly decimals: number;
  readonly role: 'elapsed' | 'channel' | 'distance' | 'revolutions';
}

const quantity = (
  name: string,
  unit: string,
  decimals: number,
  role: SampleQuantity['role'] = 'channel',
): SampleQuantity => ({ name, unit, decimals, role });

/** Numeric columns of a drum log by their plain names; speed and load come first, and in that order. */
export const SAMPLE_QUANTITIES: readonly SampleQuantity[] = [
  quantity('speed', 'km/h', 4),
  quantity('load', 'N', 3),
  quantity('pressure', 'bar', 4),
  quantity('tyre temperature', '°C', 3),
  quantity('ambient temperature', '°C', 3),
  quantity('axle height', 'mm', 4),
  quantity('distance', 'km', 6, 'distance'),
  quantity('revolutions', '1', 3, 'revolutions'),
  quantity('elapsed', 's', 3, 'elapsed'),
];

/**
 * Decimals to keep of a column that is written in another unit, so that nothing is kept less finely than in the
 * unit of the results: a distance in metres keeps 3 where one in kilometres keeps 6.
 */
export function decimalsIn(unit: string, quantity: SampleQuantity): number {
  const step = convert(1, unit, quantity.unit) - convert(0, unit, quantity.unit);
  return Math.max(0, quantity.decimals + Math.ceil(Math.log10(step) - 1e-9));
}
