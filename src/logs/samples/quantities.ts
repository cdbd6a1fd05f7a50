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
  /**
   * What a value can be at all: far beyond any drum rig, near enough to catch another unit and words such as -9999 that
   * no profile names (common practice, no source).
   */
  readonly least: number;
  readonly most: number;
  /** Whether each position of a drum has one of its own. */
  readonly isOfPosition: boolean;
}

const quantity = (
  name: string,
  unit: string,
  decimals: number,
  [least, most]: readonly [number, number],
  more: { role?: SampleQuantity['role']; isOfPosition?: boolean } = {},
): SampleQuantity => ({ name, unit, decimals, least, most, role: 'channel', isOfPosition: false, ...more });

const OF_POSITION = { isOfPosition: true } as const;

/** Numeric columns of a drum log by their plain names; speed and load come first, and in that order. */
export const SAMPLE_QUANTITIES: readonly SampleQuantity[] = [
  quantity('speed', 'km/h', 4, [-10, 300]),
  quantity('load', 'N', 3, [-1000, 8000], OF_POSITION),
  quantity('pressure', 'bar', 4, [-1.1, 20], OF_POSITION),
  quantity('tyre temperature', '°C', 3, [-100, 400], OF_POSITION),
  quantity('ambient temperature', '°C', 3, [-100, 400]),
  quantity('axle height', 'mm', 4, [-2000, 2000], OF_POSITION),
  quantity('vibration', 'm/s2', 4, [0, 5000], OF_POSITION),
  quantity('distance', 'km', 6, [-1, 1e7], { role: 'distance' }),
  quantity('revolutions', '1', 3, [-1, 1e13], { role: 'revolutions' }),
  quantity('elapsed', 's', 3, [-1e9, 1e10], { role: 'elapsed' }),
];

/**
 * Decimals to keep of a column that is written in another unit, so that nothing is kept less finely than in the
 * unit of the results: a distance in metres keeps 3 where one in kilometres keeps 6.
 */
export function decimalsIn(unit: string, quantity: SampleQuantity): number {
  const step = convert(1, unit, quantity.unit) - convert(0, unit, quantity.unit);
  return Math.max(0, quantity.decimals + Math.ceil(Math.log10(step) - 1e-9));
}
