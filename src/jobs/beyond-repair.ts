import type { Replay } from '../impact/replay/replay.ts';
import { echo } from '../problem/echo.ts';
import { counted } from '../quantity/format.ts';

/** Drops from which the share left out is looked at: one repeated drop of three is no lost series. */
const ENOUGH_DROPS = 10;

/**
 * Why a running series cannot be mended by going on, with the place from which it must be repeated; null as a rule. That
 * is where a deviation invalidates the whole run or its comparison, or where more than a fifth of the drops are out.
 */
export function beyondRepair({ deviations, counts, drops }: Replay): string | null {
  const fatal = deviations.find(
    ({ severity, scope }) => severity === 'invalidating' && (scope === 'run' || scope === 'comparison'),
  );
  if (fatal !== undefined) {
    const { code, scope, message, file, line } = fatal;
    const from =
      line === null
        ? 'repeat the series from its start'
        : `repeat the series from line ${line} of ${echo(file ?? '', 200)}`;
    return `No advice: ${code} invalidates the whole ${scope} (${message}). What settles it: mend the cause, then ${from} with new specimens.`;
  }
  if (counts.drops < ENOUGH_DROPS || counts.excluded * 5 <= counts.drops) return null;
  const first = drops.find(({ use }) => use !== 'used');
  const place =
    first === undefined
      ? 'its start'
      : `line ${first.drop.line} of ${echo(first.drop.file, 200)}, the first drop that is out`;
  return `No advice: ${counts.excluded} of ${counted(counts.drops, 'drop')} are left out of the estimate, more than a fifth. Repeat the series from ${place}, with new specimens.`;
}
