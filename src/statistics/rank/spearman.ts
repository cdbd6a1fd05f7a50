import { studentLaw } from '../laws/student.ts';
import { pearson } from '../straight-line/correlation.ts';
import type { RankCorrelation } from './kendall.ts';
import { checkPairs, orders, ranks, tieSizes } from './ranks.ts';

/** Spearman's rho with its sum of squares. */
export interface Spearman extends RankCorrelation {
  /** S = Σ (difference of ranks)² */
  readonly sum: number;
}

/** Up to here every order is counted. */
const EXACT_UP_TO = 12;

/** Spearman's rank correlation; p exact without ties up to 12 pairs, else by Student's t with n − 2 degrees of freedom. */
export function spearman(x: readonly number[], y: readonly number[]): Spearman {
  checkPairs(x, y);
  const n = x.length;
  const [rx, ry] = [ranks(x), ranks(y)];
  const sum = rx.reduce((total, r, i) => total + (r - ry[i]!) ** 2, 0);
  const coefficient = pearson(rx, ry);
  if (coefficient === null) return { sum, coefficient, pOneSided: null, pTwoSided: null, method: 'exact' };
  if (tieSizes(x).length + tieSizes(y).length === 0 && n <= EXACT_UP_TO) {
    const counts = countSums(n);
    const total = orders(n);
    const atMost = counts.slice(0, sum + 1).reduce((a, b) => a + b, 0) / total;
    const atLeast = counts.slice(sum).reduce((a, b) => a + b, 0) / total;
    // S has an even spectrum about (n³ − n)/6, so twice the smaller tail is the two-sided p.
    return {
      sum,
      coefficient,
      pOneSided: atMost,
      pTwoSided: Math.min(1, 2 * Math.min(atMost, atLeast)),
      method: 'exact',
    };
  }
  const t = coefficient * Math.sqrt((n - 2) / Math.max(0, 1 - coefficient * coefficient));
  const law = studentLaw(n - 2);
  return {
    sum,
    coefficient,
    pOneSided: law.sf(t),
    pTwoSided: 2 * law.sf(Math.abs(t)),
    method: 'large-sample',
  };
}

/** How many orders of n have each S, ranks given out to one place after the other over all sets of ranks already used. */
function countSums(n: number): number[] {
  const most = (n * (n * n - 1)) / 3;
  let bySet = new Map<number, Float64Array>([[0, Float64Array.of(1)]]);
  for (let place = 0; place < n; place++) {
    const next = new Map<number, Float64Array>();
    for (const [set, counts] of bySet) {
      for (let rank = 0; rank < n; rank++) {
        if (set & (1 << rank)) continue;
        const cost = (place - rank) ** 2;
        const key = set | (1 << rank);
        let into = next.get(key);
        if (into === undefined) {
          into = new Float64Array(most + 1);
          next.set(key, into);
        }
        for (let s = 0; s < counts.length && s + cost <= most; s++) into[s + cost]! += counts[s]!;
      }
    }
    bySet = next;
  }
  return Array.from(bySet.values().next().value!);
}
