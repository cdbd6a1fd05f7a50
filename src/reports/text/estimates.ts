import { percent } from '../../quantity/amount.ts';
import { counted } from '../../quantity/format.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import type { Estimate } from '../../result/estimate.ts';
import { listed, methodName, quantityName } from './names.ts';
import { estimateText, intervalText, standardErrorText } from './numbers.ts';
import { named, type Page, paragraph, sentence } from './page.ts';
import { table } from './table.ts';

/**
 * The estimates, those of one method together, each followed by what binds it or what is wanting.
 *
 * @param basis what all entries of a group share, in words
 */
export function estimates(
  page: Page,
  result: Pick<ImpactResult, 'estimates'>,
  basis: (estimate: Estimate) => string = basisOf,
): string[] {
  const groups = new Map<string, Estimate[]>();
  for (const estimate of result.estimates) {
    const key = basis(estimate);
    const same = groups.get(key);
    if (same === undefined) groups.set(key, [estimate]);
    else same.push(estimate);
  }
  return [...groups].flatMap(([shared, all], i) => {
    const group = all.filter((estimate) => !isMedianAgain(estimate, all));
    return [
      ...(i === 0 ? [] : ['']),
      ...paragraph(page, shared),
      ...listing(page, group),
      ...reasons(page, group),
    ];
  });
}

/** The JSON gives the 50 % point beside the median that it is; a page needs it once. */
function isMedianAgain({ quantity, probability }: Estimate, group: readonly Estimate[]): boolean {
  const isHalf = quantity === 'failureEnergyQuantile' && probability === 0.5;
  return isHalf && group.some((other) => other.quantity === 'medianFailureEnergy');
}

/** The variant that the entries of a specimen effect stand under together. */
const FRESH = 'single-hit-on-a-fresh-tyre';

/** What all entries of a group share. */
function basisOf({ sample, method, distribution, interval, variant, specimens, drops }: Estimate): string {
  const law = distribution === undefined ? '' : `, ${distribution} strength`;
  // The spreads of a specimen effect belong to its median; their names say which they are.
  const together = method === 'specimen-effect';
  const choice = variant === undefined ? '' : `, ${methodName(together ? FRESH : variant)}`;
  const ends = interval === null || together ? '' : `, ${methodName(interval.method)} intervals`;
  const size = `${counted(drops, 'drop')} on ${counted(specimens, 'tyre')}`;
  const whose = sample === undefined ? '' : `${named(sample)}: `;
  return `${whose}${sentence(methodName(method) + law + ends + choice).slice(0, -1)}; ${size}`;
}

function listing(page: Page, group: readonly Estimate[]): string[] {
  if (group.every(({ value, interval }) => value === null && interval === null)) return [];
  const levels = new Set(group.flatMap(({ interval }) => (interval === null ? [] : [interval.level])));
  const oneLevel = levels.size === 1 ? [...levels][0]! : null;
  const rows = group.map((estimate) => {
    const { interval } = estimate;
    const level = oneLevel === null && interval !== null ? `${percent(interval.level)}: ` : '';
    return [
      quantityName(estimate),
      estimateText(estimate),
      standardErrorText(estimate),
      level + intervalText(estimate),
    ];
  });
  return table(
    page,
    [
      { head: '', align: 'left', least: 18 },
      { head: 'value', align: 'right' },
      { head: 'std. error', align: 'right' },
      { head: oneLevel === null ? 'interval' : `${percent(oneLevel)} interval`, align: 'left', least: 16 },
    ],
    rows,
  );
}

/** Each reason once, with the quantities it holds for. */
function reasons(page: Page, group: readonly Estimate[]): string[] {
  const byReason = new Map<string, string[]>();
  for (const estimate of group) {
    if (estimate.why === null) continue;
    const names = byReason.get(estimate.why) ?? [];
    byReason.set(estimate.why, [...names, quantityName(estimate)]);
  }
  return [...byReason].flatMap(([why, names]) => {
    const whose = names.length === group.length && names.length > 1 ? '' : `${listed(names, 4)}: `;
    return paragraph(page, sentence(whose + why), 4);
  });
}
