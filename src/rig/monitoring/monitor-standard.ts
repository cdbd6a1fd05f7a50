import type { ReferenceReading } from '../../logs/reference-readings.ts';
import type { ChartKind, MonitoredStandard } from '../../result/monitor.ts';
import { analyseOneWay } from '../../statistics/analysis-of-variance/one-way.ts';
import {
  cusumRunLength,
  ewmaRunLength,
  shewhartRunLength,
} from '../../statistics/control-chart/run-length.ts';
import { runRulesLength } from '../../statistics/control-chart/run-rule-length.ts';
import { autocorrelation } from '../../statistics/summary/autocorrelation.ts';
import { mean } from '../../statistics/summary/moments.ts';
import { type BaseChoice, basePeriod } from './base-period.ts';
import { chartLimits, type PairOfCharts } from './chart-limits.ts';
import { driftStart } from './drift-start.ts';
import { type Occasion, occasionsOf } from './occasions.ts';
import { RULE_SETS, type RuleSet } from './rule-sets.ts';
import { gatherSignals, readStretch, type Watch } from './signals.ts';
import { stretchesOf } from './stretches.ts';

/** How check standards are to be watched. */
export interface Monitoring {
  readonly base: BaseChoice | null;
  /** Null leaves it to the readings. */
  readonly chart: ChartKind | null;
  readonly rules: RuleSet;
  readonly ewma: { readonly weight: number; readonly width: number };
  /** In standard deviations of a point. */
  readonly cusum: { readonly allowance: number; readonly decision: number };
}

/**
 * λ 0.2 finds small drifts (NIST/SEMATECH e-Handbook 6.3.2.4 names 0.2 to 0.3); with 2.962 and 5 both sums give a false alarm in
 * about 500 points (Montgomery, chapter 9).
 */
export const USUAL_MONITORING: Monitoring = {
  base: null,
  chart: null,
  rules: 'western-electric',
  ewma: { weight: 0.2, width: 2.962 },
  cusum: { allowance: 0.5, decision: 5 },
};

const LEVEL = 0.95;

/**
 * One check standard on one rig: limits from the base period, what signals, and since when.
 *
 * @param readings of this standard and rig, at least one
 * @throws InputError as occasionsOf, basePeriod and chartLimits do
 */
export function monitorStandard(readings: readonly ReferenceReading[], how: Monitoring): MonitoredStandard {
  const { occasions, bridges } = occasionsOf(readings, LEVEL);
  const base = basePeriod(occasions, how.base);
  const inBase = new Set(base.places);
  const pair = chartLimits(
    base.places.map((place) => occasions[place]!),
    how.chart,
  );
  const { sigma } = pair;
  const watch: Watch = {
    value: pair.value,
    spread: pair.spread,
    sigma,
    rules: how.rules,
    ewma: { ...how.ewma, target: pair.value.centre, sigma },
    cusum: {
      target: pair.value.centre,
      allowance: how.cusum.allowance * sigma,
      decision: how.cusum.decision * sigma,
    },
  };
  const values = occasions.map((occasion) => mean(occasion.values));
  const stretches = stretchesOf(occasions.map(({ settled }) => settled)).map((stretch) => {
    const places = range(stretch.first, stretch.last);
    const spreads = places.map((place) =>
      pair.spreadOf(occasions[place]!, place === stretch.first ? null : occasions[place - 1]!),
    );
    const read = readStretch(
      places.map((place) => values[place]!),
      spreads,
      watch,
    );
    return { stretch, spreads, read, signals: gatherSignals(read, stretch, occasions, watch) };
  });
  const signals = stretches.flatMap((each) => each.signals);
  const open = stretches.findLast(({ stretch }) => stretch.settled === null);
  const spreads = stretches.flatMap((each) => each.spreads);
  const read = stretches.flatMap((each) => each.read);
  const [{ standard, rig, unit }] = readings as [ReferenceReading];
  return {
    standard,
    rig,
    unit,
    chart: pair.kind,
    subgroup: occasions[0]!.values.length,
    base: {
      points: base.places.length,
      from: occasions[base.places[0]!]!.time,
      to: occasions[base.places.at(-1)!]!.time,
      chosen: base.chosen,
    },
    limits: { value: pair.value, spread: pair.spread, sigma },
    ewma: how.ewma,
    cusum: how.cusum,
    rules: how.rules,
    runLength: runLengths(how),
    points: occasions.map(({ line, time, batch, values: own }, i) => ({
      line,
      time,
      batch,
      readings: own.length,
      value: values[i]!,
      spread: spreads[i]!,
      inBase: inBase.has(i),
      ...read[i]!,
    })),
    signals,
    drift:
      open === undefined ? null : driftStart(values, open.read, open.stretch, open.signals, occasions, watch),
    bridges,
    notes: notesOf(
      base.places.map((place) => occasions[place]!),
      pair,
    ),
    standing: signals.some(({ settled }) => settled === null) ? 'out-of-control' : 'in-control',
  };
}

function range(first: number, last: number): number[] {
  return Array.from({ length: last - first + 1 }, (_, i) => first + i);
}

/** Points between false alarms, limits taken as known; rules of a trend and the like are not in it. */
function runLengths({ ewma, cusum, rules }: Monitoring): Record<string, number> {
  const sided = RULE_SETS[rules].flatMap(([, rule]) => (rule.kind === 'one-side' ? [rule] : []));
  const limits = { kind: 'one-side', count: 1, of: 1, beyond: 3 } as const;
  return {
    limits: shewhartRunLength(3, 0),
    ...(sided.length === 0 ? {} : { limitsAndRules: runRulesLength([limits, ...sided], 0) }),
    ewma: ewmaRunLength(ewma.weight, ewma.width, 0),
    cusum: cusumRunLength(cusum.allowance, cusum.decision, 0),
  };
}

/** What a chart takes for granted and the base period speaks against. */
function notesOf(base: readonly Occasion[], { kind }: PairOfCharts): string[] {
  const notes: string[] = [];
  const means = base.map(({ values }) => mean(values));
  const r = autocorrelation(means);
  // Beyond two standard errors of a series without memory, 1/√n (Box & Jenkins).
  if (Math.abs(r) > 2 / Math.sqrt(means.length)) {
    notes.push(
      `neighbouring points of the base period go together (correlation ${r.toFixed(2)}): the charts take them as independent and will signal more often than said`,
    );
  }
  if (kind !== 'individuals') {
    const { test } = analyseOneWay(base.map(({ values }) => values));
    if (test !== null && test.p < 0.01) {
      notes.push(
        'the occasions of the base period differ by more than the readings within them: limits from within are too narrow for a rig that is set anew each time; --chart individuals takes the means as single points',
      );
    }
  }
  return notes;
}
