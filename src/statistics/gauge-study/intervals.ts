import { type ComponentInterval, componentInterval } from '../analysis-of-variance/component-interval.ts';
import type { GaugeAnalysis } from './crossed.ts';

/** Intervals of the variances of a gauge study with the interaction pooled. */
export interface GaugeIntervals {
  readonly repeatability: ComponentInterval;
  readonly operator: ComponentInterval;
  /** Repeatability and operators together. */
  readonly gauge: ComponentInterval;
  readonly part: ComponentInterval;
}

/**
 * Intervals of the variance components; with two or three operators those of the operator and the gauge are wide, and rightly
 * so.
 *
 * @param level two-sided
 */
export function gaugeIntervals(study: GaugeAnalysis, level: number): GaugeIntervals {
  const { line } = study.pooled;
  const behindOperator = study.parts * study.trials;
  const behindPart = study.operators * study.trials;
  const operator = { coefficient: 1 / behindOperator, line: study.operator };
  return {
    repeatability: componentInterval([{ coefficient: 1, line }], level),
    operator: componentInterval([operator, { coefficient: -1 / behindOperator, line }], level),
    gauge: componentInterval([operator, { coefficient: 1 - 1 / behindOperator, line }], level),
    part: componentInterval(
      [
        { coefficient: 1 / behindPart, line: study.part },
        { coefficient: -1 / behindPart, line },
      ],
      level,
    ),
  };
}
