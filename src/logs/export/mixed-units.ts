import { convert } from '../../quantity/units.ts';
import type { Drop } from '../drop.ts';

/** Ratios at which a pressure was written in another unit: 1 bar is 14.5 psi and 100 kPa, 1 psi is 6.9 kPa. */
const RATIOS = [convert(1, 'bar', 'psi'), convert(1, 'bar', 'kPa'), convert(1, 'psi', 'kPa')];
const NEARNESS = 0.15;

/**
 * Rows whose pressure stands to the middle one as one unit to another: 2.0 and 29 in one column are bar and psi.
 * Common practice, no source. Only pressures: heights may differ so within a test.
 */
export function mixedPressures(drops: readonly Drop[]): { line: number; message: string }[] {
  const pressed = drops.filter(({ pressure }) => pressure !== null && pressure > 0);
  const middle = pressed.map(({ pressure }) => pressure!).toSorted((a, b) => a - b)[
    Math.floor(pressed.length / 2)
  ];
  if (middle === undefined) return [];
  return pressed.flatMap(({ line, pressure }) => {
    const ratio = Math.max(pressure! / middle, middle / pressure!);
    if (!RATIOS.some((it) => Math.abs(ratio / it - 1) < NEARNESS)) return [];
    const message =
      `found a pressure of ${Number(pressure!.toPrecision(4))} bar where others are ${Number(middle.toPrecision(4))} bar, ` +
      'expected one unit in a column; give the rows of each unit as a log of their own, with its unit (export.columns.pressure.unit)';
    return [{ line, message }];
  });
}
