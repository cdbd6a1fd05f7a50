import type { DriftStart, Signal } from '../../result/monitor.ts';
import { stepChange } from '../../statistics/control-chart/change-point.ts';
import { shiftStart } from '../../statistics/control-chart/cusum.ts';
import type { Occasion } from './occasions.ts';
import type { Reading, Watch } from './signals.ts';
import type { Stretch } from './stretches.ts';

/**
 * When the drift behind the open signals began: the most likely step before the first of them, and the start by the cumulative sum. Scatter
 * out of its limits alone is no drift of the level.
 *
 * @param values of all points; the stretch is the open one
 */
export function driftStart(
  values: readonly number[],
  readings: readonly Reading[],
  stretch: Stretch,
  signals: readonly Signal[],
  occasions: readonly Occasion[],
  watch: Watch,
): DriftStart | null {
  const signal = signals.find(({ by, settled }) => settled === null && by !== 'spread');
  if (signal === undefined) return null;
  const at = (place: number) => occasions[place + stretch.first]!.time;
  const { centre } = watch.value;
  const signalled = signal.first - stretch.first;
  // Points up to the one that signalled: later ones may be of a rig that was touched since.
  const step = stepChange(values.slice(stretch.first, signal.first + 1), centre, watch.sigma);
  const sums = readings.map(({ cusum }) => ({
    ...cusum,
    signal:
      Math.max(cusum.high, cusum.low) > watch.cusum.decision
        ? cusum.high >= cusum.low
          ? ('high' as const)
          : ('low' as const)
        : null,
  }));
  const shift = shiftStart(sums, watch.cusum);
  return {
    signalled: at(signalled),
    began: at(step.start),
    earliest: at(step.from),
    latest: at(step.to),
    lastGood: step.from + stretch.first === 0 ? null : occasions[step.from + stretch.first - 1]!.time,
    level: step.level,
    shift: step.level - centre,
    byCusum: shift === null ? null : at(shift.start),
  };
}
