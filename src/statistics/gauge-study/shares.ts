import type { GaugeComponents } from './crossed.ts';

/** Standard deviations and shares of a gauge study. Negative variances count as 0 here. */
export interface GaugeShares {
  readonly repeatability: number;
  /** Operators, and their interaction with parts where it was kept. */
  readonly reproducibility: number;
  readonly gauge: number;
  readonly part: number;
  readonly total: number;
  /** Standard deviation as a share of the total one; these do not add up to 1. */
  readonly studyShare: { readonly [of in 'repeatability' | 'reproducibility' | 'gauge' | 'part']: number };
  /** Variance as a share of the total one. */
  readonly varianceShare: { readonly gauge: number; readonly part: number };
  /** √2·part/gauge, not truncated: how many classes of parts the gauge can tell apart. */
  readonly distinctCategories: number;
}

/** Sums up the components of a gauge study. */
export function gaugeShares({ repeatability, operator, interaction, part }: GaugeComponents): GaugeShares {
  const own = Math.max(0, repeatability);
  const between = Math.max(0, operator) + Math.max(0, interaction ?? 0);
  const parts = Math.max(0, part);
  const gauge = own + between;
  const total = gauge + parts;
  const share = (variance: number) => Math.sqrt(variance / total);
  return {
    repeatability: Math.sqrt(own),
    reproducibility: Math.sqrt(between),
    gauge: Math.sqrt(gauge),
    part: Math.sqrt(parts),
    total: Math.sqrt(total),
    studyShare: {
      repeatability: share(own),
      reproducibility: share(between),
      gauge: share(gauge),
      part: share(parts),
    },
    varianceShare: { gauge: gauge / total, part: parts / total },
    distinctCategories: Math.SQRT2 * Math.sqrt(parts / gauge),
  };
}
