import type { Possibly, Response } from '../isotonic/response.ts';
import { orderResponses } from '../isotonic/response.ts';
import { chiSquaredLaw } from '../laws/gamma.ts';

/** How far the shares failed at the levels lie from a fitted law. */
export interface GroupedFit {
  /** 2 Σ [r ln(r/np) + (n − r) ln((n − r)/nq)] */
  readonly deviance: number;
  /** Pearson's Σ (r − np)²/(npq). */
  readonly pearson: number;
  /** Levels less the two fitted parameters. */
  readonly degrees: number;
  /** The probability of a deviance, and of a Pearson sum, as large or larger if the law is right; null where the groups are
   * too small for it, with the reason. */
  readonly pDeviance: number | null;
  readonly pPearson: number | null;
  readonly why: string | null;
}

/**
 * Deviance and Pearson's chi-squared of a fitted law against the shares failed, level by level. Their chi-squared law needs
 * groups large enough: as in Cochran (1954), no expected number of failures or survivals below 1 and at most a fifth of
 * them below 5; else the sums stand without a test. Levels are never pooled for it.
 *
 * @param share the fitted share failed at a level
 */
export function groupedFit(
  responses: readonly Response[],
  share: (level: number) => number,
): Possibly<GroupedFit> {
  const groups = orderResponses(responses);
  const degrees = groups.length - 2;
  if (degrees < 1)
    return {
      value: null,
      why: `${groups.length} levels leave nothing to test beside a location and a spread`,
    };
  let small = 0;
  let tiny = 0;
  let deviance = 0;
  let pearson = 0;
  for (const { level, failures, drops } of groups) {
    const p = share(level);
    const expected = [drops * p, drops * (1 - p)];
    small += expected.filter((e) => e < 5).length;
    tiny += expected.filter((e) => e < 1).length;
    deviance += 2 * (excess(failures, expected[0]!) + excess(drops - failures, expected[1]!));
    pearson += (failures - expected[0]!) ** 2 / (drops * p * (1 - p));
  }
  const sums = { deviance, pearson, degrees };
  if (tiny > 0 || small > (2 * groups.length) / 5) {
    const why =
      `${small} of the ${2 * groups.length} expected numbers of failures and survivals at the ${groups.length} levels are ` +
      `below 5 (${tiny} below 1): too few drops a level for a test of the law`;
    return { value: { ...sums, pDeviance: null, pPearson: null, why }, why: null };
  }
  const law = chiSquaredLaw(degrees);
  return { value: { ...sums, pDeviance: law.sf(deviance), pPearson: law.sf(pearson), why: null }, why: null };
}

function excess(observed: number, expected: number): number {
  return observed === 0 ? 0 : observed * Math.log(observed / expected);
}
