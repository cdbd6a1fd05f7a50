import type { GaugeReading } from '../../logs/study-readings.ts';
import type { AnovaLine, Component, GaugeStudyResult } from '../../result/repeatability.ts';
import type { ComponentInterval } from '../../statistics/analysis-of-variance/component-interval.ts';
import type { FisherTest, VarianceLine } from '../../statistics/analysis-of-variance/one-way.ts';
import { averageRange } from '../../statistics/gauge-study/average-range.ts';
import { analyseGauge, type CrossedReadings } from '../../statistics/gauge-study/crossed.ts';
import { gaugeIntervals } from '../../statistics/gauge-study/intervals.ts';
import { gaugeShares } from '../../statistics/gauge-study/shares.ts';
import { grouped } from '../../statistics/summary/grouped.ts';

/** Interaction is pooled above this p: what it may hide is small then (common practice, no source; 0.05 is used as well). */
const POOLED_ABOVE = 0.25;
export const LEVEL = 0.95;

/**
 * A gauge study by analysis of variance, with the average and range method beside it.
 *
 * @throws RangeError for a study that is not full, or with fewer than two parts, operators or trials
 */
export function gaugeStudy(readings: readonly GaugeReading[], unit: string | null): GaugeStudyResult {
  const operators = [...new Set(readings.map(({ operator }) => operator))];
  const crossed: CrossedReadings = grouped(readings, ({ part }) => part).map(([, ofPart]) =>
    operators.map((operator) => ofPart.filter((one) => one.operator === operator).map(({ value }) => value)),
  );
  const study = analyseGauge(crossed);
  const { interaction } = study.tests;
  const isPooled = interaction === null || interaction.p > POOLED_ABOVE;
  const components = isPooled ? study.pooled : study.kept;
  const shares = gaugeShares(components);
  const intervals = isPooled ? gaugeIntervals(study, LEVEL) : null;
  const reproducibility = components.operator + (components.interaction ?? 0);
  const gauge = Math.max(0, components.repeatability) + shares.reproducibility ** 2;
  const entry = (
    of: Component['of'],
    variance: number,
    share: number | null,
    interval?: ComponentInterval,
  ): Component => componentOf(of, variance, share, interval);
  const p = interaction === null ? '' : ` (p = ${interaction.p.toPrecision(2)})`;
  return {
    kind: 'gauge',
    unit,
    parts: study.parts,
    operators: study.operators,
    trials: study.trials,
    anova: [
      anovaLine('part', study.part, study.tests.part),
      anovaLine('operator', study.operator, study.tests.operator),
      anovaLine('part × operator', study.interaction, study.tests.interaction),
      anovaLine('repeatability', study.repeatability, null),
    ],
    pooled: isPooled,
    why: isPooled
      ? `the interaction does not stand out${p} and is pooled into repeatability`
      : `operators differ from part to part${p}: the interaction is kept; no intervals are given then`,
    components: [
      entry(
        'repeatability',
        components.repeatability,
        shares.studyShare.repeatability,
        intervals?.repeatability,
      ),
      entry('operator', components.operator, null, intervals?.operator),
      ...(components.interaction === null ? [] : [entry('interaction', components.interaction, null)]),
      entry('reproducibility', reproducibility, shares.studyShare.reproducibility),
      entry('gauge', gauge, shares.studyShare.gauge, intervals?.gauge),
      entry('part', components.part, shares.studyShare.part, intervals?.part),
      entry('total', shares.total ** 2, 1),
    ],
    distinctCategories: shares.distinctCategories,
    averageRange: averageRange(crossed),
  };
}

/** A component with the root of its ends, none below nought. */
export function componentOf(
  of: Component['of'],
  variance: number,
  share: number | null,
  interval?: ComponentInterval,
): Component {
  const root = (value: number) => Math.sqrt(Math.max(0, value));
  return {
    of,
    variance,
    deviation: root(variance),
    interval:
      interval === undefined
        ? null
        : { level: LEVEL, lower: root(interval.lower), upper: root(interval.upper) },
    share,
  };
}

function anovaLine(source: string, line: VarianceLine, test: FisherTest | null): AnovaLine {
  return { source, ...line, f: test?.f ?? null, p: test?.p ?? null };
}
