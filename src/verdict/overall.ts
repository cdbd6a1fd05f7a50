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
  return overallOf(criteria.filter(({ counted }) => counted).map(({ verdict }) => verdict));
}

/** The worst of some verdicts; `not-tested` where there is none. */
export function overallOf(verdicts: readonly Verdict[]): Verdict {
  if (verdicts.length === 0) return 'not-tested';
  return ORDER[Math.max(...verdicts.map((verdict) => ORDER.indexOf(verdict)))]!;
}
