import { normal } from '../laws/normal.ts';
import { checkPairs, orders, tieSizes } from './ranks.ts';

/** Rank agreement with its probability under no agreement. */
export interface RankCorrelation {
  /** From −1 to 1; null where one side does not vary. */
  readonly coefficient: number | null;
  /** Probability of as much agreement or more, by chance. */
  readonly pOneSided: number | null;
  readonly pTwoSided: number | null;
  /** `exact` over all orders, or the normal law of large samples (also where values are tied). */
  readonly method: 'exact' | 'large-sample';
}

/** Kendall's tau with the counts behind it. */
export interface Kendall extends RankCorrelation {
  /** Pairs of pairs in the same order on both sides. */
  readonly concordant: number;
  readonly discordant: number;
  /** (concordant − discordant) over its standard deviation, ties allowed for. */
  readonly z: number | null;
}

/** Up to here the numbers of orders are summed exactly. */
const EXACT_UP_TO = 50;

/** Kendall's rank correlation (tau-b where values are tied); p exact without ties up to 50 pairs. */
export function kendall(x: readonly number[], y: readonly number[]): Kendall {
  checkPairs(x, y);
  const n = x.length;
  let concordant = 0;
  let discordant = 0;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) {
      const sign = Math.sign(x[i]! - x[j]!) * Math.sign(y[i]! - y[j]!);
      if (sign > 0) concordant++;
      else if (sign < 0) discordant++;
    }
  }
  const pairs = (n * (n - 1)) / 2;
  const tiesX = tieSizes(x);
  const tiesY = tieSizes(y);
  const tiedPairs = (sizes: readonly number[]) => sizes.reduce((sum, t) => sum + (t * (t - 1)) / 2, 0);
  const root = Math.sqrt((pairs - tiedPairs(tiesX)) * (pairs - tiedPairs(tiesY)));
  const none = { concordant, discordant, coefficient: null, pOneSided: null, pTwoSided: null, z: null };
  if (root === 0) return { ...none, method: 'exact' };
  const score = concordant - discordant;
  const z = score / Math.sqrt(scoreVariance(n, tiesX, tiesY));
  const base = { concordant, discordant, coefficient: score / root, z };
  if (tiesX.length + tiesY.length === 0 && n <= EXACT_UP_TO) {
    const atLeast = tailOfConcordant(n, concordant);
    const atMost = tailOfConcordant(n, pairs - concordant);
    return {
      ...base,
      pOneSided: atLeast,
      pTwoSided: Math.min(1, 2 * Math.min(atLeast, atMost)),
      method: 'exact',
    };
  }
  return { ...base, pOneSided: normal.sf(z), pTwoSided: 2 * normal.sf(Math.abs(z)), method: 'large-sample' };
}

/** P(so many or more concordant pairs): the numbers of orders with k inversions, built up one value at a time. */
function tailOfConcordant(n: number, concordant: number): number {
  let counts = [1];
  for (let size = 2; size <= n; size++) {
    const next = new Array<number>(counts.length + size - 1).fill(0);
    for (const [k, count] of counts.entries()) for (let j = 0; j < size; j++) next[k + j]! += count / size;
    counts = next;
  }
  // Already shares of all orders; small ones first.
  return counts
    .slice(concordant)
    .reverse()
    .reduce((a, b) => a + b, 0);
}

/** Variance of concordant − discordant with ties (Kendall 1970, chapter 4). */
function scoreVariance(n: number, tiesX: readonly number[], tiesY: readonly number[]): number {
  const sum = (sizes: readonly number[], f: (t: number) => number) => sizes.reduce((s, t) => s + f(t), 0);
  const v0 = n * (n - 1) * (2 * n + 5);
  const vt = (t: number) => t * (t - 1) * (2 * t + 5);
  const two = (t: number) => t * (t - 1);
  const three = (t: number) => t * (t - 1) * (t - 2);
  const first = (v0 - sum(tiesX, vt) - sum(tiesY, vt)) / 18;
  const second = (sum(tiesX, two) * sum(tiesY, two)) / (2 * n * (n - 1));
  const third = n > 2 ? (sum(tiesX, three) * sum(tiesY, three)) / (9 * n * (n - 1) * (n - 2)) : 0;
  return first + second + third;
}

/** The chance that two rankings of so many constructions agree fully though they have nothing to do with one another: 1/n!. */
export function chanceOfFullAgreement(n: number): number {
  return 1 / orders(n);
}
