import { responseCurve } from '../../impact/estimates/response-curve.ts';
import { observe, type StrengthObservation } from '../../impact/observations.ts';
import type { Sample } from '../../impact/replay/replay.ts';
import type { ReportedSample, ReportedTyre } from '../../result/report.ts';
import type { EnergyScale } from '../../rig/energy.ts';
import type { ImpactTest } from '../impact-test.ts';

/** A sample as a report shows it: its drops, its tyres, its response curve. */
export function sampleOf(sample: Sample, test: ImpactTest, scale: EnergyScale): ReportedSample {
  const { protocol, specification } = test;
  const { observations } = observe(sample, scale.of);
  const limits = (specification?.criteria ?? []).flatMap(({ quantity, limit }) =>
    quantity === 'medianFailureEnergy' || quantity === 'failureEnergyQuantile'
      ? [limit.atLeast ?? []].flat()
      : [],
  );
  return {
    name: sample.name,
    construction: sample.key.construction,
    isReference: sample.key.role === 'reference',
    path: sample.drops.map(({ drop, use }) => ({
      line: drop.line,
      specimen: drop.specimen,
      series: drop.series,
      height: drop.height,
      ...(protocol.vary === 'mass' ? { mass: drop.mass } : {}),
      energy: scale.of(drop),
      outcome: drop.outcome,
      used: use === 'used',
    })),
    tyres: tyresOf(observations, test),
    curve:
      sample.refused === null
        ? responseCurve(observations, protocol.distribution, protocol.confidence, limits)
        : null,
  };
}

/** What the drops on each tyre say together of its strength. */
function tyresOf(observations: readonly StrengthObservation[], { register }: ImpactTest): ReportedTyre[] {
  const rows = new Map((register?.specimens ?? []).map((row) => [row.specimen, row]));
  const found = new Map<string, { lower: number; upper: number; drops: number }>();
  for (const { specimen, lower, upper, drops } of observations) {
    const tyre = found.get(specimen) ?? { lower: -Infinity, upper: Infinity, drops: 0 };
    tyre.lower = Math.max(tyre.lower, lower);
    tyre.upper = Math.min(tyre.upper, upper);
    tyre.drops += drops;
    found.set(specimen, tyre);
  }
  return [...found].map(([specimen, { lower, upper, drops }]) => {
    // Survived above where it failed: the looks contradict each other, and neither end is known.
    const contradicts = lower >= upper;
    return {
      specimen,
      mass: rows.get(specimen)?.mass ?? null,
      lower: contradicts || !Number.isFinite(lower) ? null : lower,
      upper: contradicts || !Number.isFinite(upper) ? null : upper,
      drops,
    };
  });
}
