import type { LaboratoryReading } from '../../logs/study-readings.ts';
import type { InterlaboratoryResult, LevelPrecision, OutlierFinding } from '../../result/repeatability.ts';
import { laboratoryConsistency } from '../../statistics/interlaboratory/consistency.ts';
import { interlaboratoryPrecision, precisionIntervals } from '../../statistics/interlaboratory/precision.ts';
import { type Scrutiny, scrutiniseLaboratories } from '../../statistics/interlaboratory/scrutiny.ts';
import { grouped } from '../../statistics/summary/grouped.ts';
import { summarise } from '../../statistics/summary/moments.ts';
import { componentOf, LEVEL } from './gauge-study.ts';

/**
 * Repeatability and reproducibility between laboratories (ISO 5725-2), level by level, with Cochran's test of the scatter and Grubbs' of
 * the means. No laboratory is left out: whoever does so, with a reason, asks again without it.
 *
 * @throws RangeError for fewer than two laboratories, or none with a replicate
 */
export function laboratoryStudy(
  readings: readonly LaboratoryReading[],
  unit: string | null,
): InterlaboratoryResult {
  const levels = grouped(readings, ({ level }) => level).map(([level, own]) => precisionOf(level, own));
  return { kind: 'laboratories', unit, levels };
}

function precisionOf(level: string | null, readings: readonly LaboratoryReading[]): LevelPrecision {
  const named = grouped(readings, ({ laboratory }) => laboratory);
  const results = named.map(([, own]) => own.map(({ value }) => value));
  const precision = interlaboratoryPrecision(results);
  const intervals = precisionIntervals(results, LEVEL);
  const consistency = laboratoryConsistency(results);
  const { scatter, mean } = scrutiniseLaboratories(results);
  const finding = (
    test: OutlierFinding['test'],
    found: Scrutiny<{ readonly index: number; readonly statistic: number; readonly critical: number }> | null,
  ): OutlierFinding[] =>
    found === null
      ? []
      : [
          {
            test,
            laboratory: named[found.test.index]![0],
            statistic: found.test.statistic,
            critical5: found.test.critical,
            critical1: found.criticalOnePercent,
            finding: found.finding,
          },
        ];
  return {
    level,
    laboratories: named.map(([laboratory], i) => {
      const { n, mean: own, standardDeviation } = summarise(results[i]!);
      return { laboratory, results: n, mean: own, deviation: standardDeviation, ...consistency[i]! };
    }),
    mean: precision.mean,
    components: [
      componentOf('repeatability', precision.repeatabilityDeviation ** 2, null, intervals.repeatability),
      componentOf('between', precision.betweenVariance, null),
      componentOf(
        'reproducibility',
        precision.reproducibilityDeviation ** 2,
        null,
        intervals.reproducibility,
      ),
    ],
    repeatabilityLimit: precision.repeatabilityLimit,
    reproducibilityLimit: precision.reproducibilityLimit,
    tests: [...finding('Cochran', scatter), ...finding('Grubbs', mean)],
  };
}
