import type { JudgedCriterion, Verdict } from '../result/criterion.ts';

/** From the best to the worst. */
const ORDER: readonly Verdict[] = [
  'pass',
  'waived',
  'external',
  'not-tested',
  'inconclusive',
  'invalid',
  'fail',
];

/** The worst verdict among the criteria that count; `not-tested` where none does. */
export function overallVerdict(criteria: readonly Pick<JudgedCriterion, 'verdict' | 'counted'>[]): Verdict {
  const counted = criteria.filter((criterion) => criterion.counted);
  if (counted.length === 0) return 'not-tested';
  return ORDER[Math.max(...counted.map(({ verdict }) => ORDER.indexOf(verdict)))]!;
}
