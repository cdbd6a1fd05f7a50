import type { Limits, Signal } from '../../result/monitor.ts';
import { type CusumDesign, cusumChart } from '../../statistics/control-chart/cusum.ts';
import { type EwmaDesign, ewmaChart } from '../../statistics/control-chart/ewma.ts';
import { describeRule, signalsOf } from '../../statistics/control-chart/run-rules.ts';
import type { Occasion } from './occasions.ts';
import { RULE_SETS, type RuleSet } from './rule-sets.ts';
import type { Stretch } from './stretches.ts';

/** What the charts are held against. */
export interface Watch {
  readonly value: Limits;
  readonly spread: Limits;
  readonly ewma: EwmaDesign;
  readonly cusum: CusumDesign;
  readonly rules: RuleSet;
  /** Standard deviation of a point. */
  readonly sigma: number;
}

/** What the charts say of one point. */
export interface Reading {
  readonly ewma: { readonly value: number; readonly lower: number; readonly upper: number };
  readonly cusum: { readonly high: number; readonly low: number };
  readonly signals: readonly string[];
}

/** Everything that signals in one stretch of points, point by point. */
export function readStretch(
  values: readonly number[],
  spreads: readonly (number | null)[],
  watch: Watch,
): Reading[] {
  const { value, spread, ewma, cusum, rules, sigma } = watch;
  const averages = ewmaChart(values, ewma);
  const sums = cusumChart(values, cusum);
  const z = values.map((one) => (one - value.centre) / sigma);
  const ruled = RULE_SETS[rules].map(([name, rule]) => [name, new Set(signalsOf(rule, z))] as const);
  const isOut = (one: number | null, limits: Limits) =>
    one !== null && (one < limits.lower || one > limits.upper);
  return values.map((one, i) => {
    const { signal: averageOut, ...average } = averages[i]!;
    const { signal: sumOut, ...sum } = sums[i]!;
    const signals = [
      ...(isOut(one, value) ? ['value'] : []),
      ...(isOut(spreads[i]!, spread) ? ['spread'] : []),
      ...(averageOut ? ['ewma'] : []),
      ...(sumOut === null ? [] : ['cusum']),
      ...ruled.filter(([, places]) => places.has(i)).map(([name]) => name),
    ];
    return { ewma: average, cusum: sum, signals };
  });
}

/** The signals of a stretch, those of one chart at points in a row as one. */
export function gatherSignals(
  readings: readonly Reading[],
  stretch: Stretch,
  occasions: readonly Occasion[],
  watch: Watch,
): Signal[] {
  const names = [...new Set(readings.flatMap(({ signals }) => signals))];
  return names
    .flatMap((by) => {
      const places = readings.flatMap(({ signals }, i) => (signals.includes(by) ? [i + stretch.first] : []));
      return runsOf(places).map(
        ([first, last]): Signal => ({
          by,
          what: wordsOf(by, watch.rules),
          first,
          last,
          from: occasions[first]!.time,
          to: occasions[last]!.time,
          settled: stretch.settled,
        }),
      );
    })
    .sort((a, b) => a.first - b.first);
}

function runsOf(places: readonly number[]): [first: number, last: number][] {
  const runs: [number, number][] = [];
  for (const place of places) {
    const run = runs.at(-1);
    if (run !== undefined && run[1] === place - 1) run[1] = place;
    else runs.push([place, place]);
  }
  return runs;
}

function wordsOf(by: string, rules: RuleSet): string {
  switch (by) {
    case 'value':
      return 'beyond the limits';
    case 'spread':
      return 'scatter beyond its limits';
    case 'ewma':
      return 'weighted average beyond its limits';
    case 'cusum':
      return 'cumulative sum beyond its limit';
    default:
      return describeRule(RULE_SETS[rules].find(([name]) => name === by)![1]);
  }
}
