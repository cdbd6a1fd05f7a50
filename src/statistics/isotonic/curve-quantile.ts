import type { Corner } from './failure-curve.ts';
import type { Possibly } from './response.ts';

/**
 * The level at which a failure curve reaches the share `probability`, by straight lines between its corners. Where the
 * curve stays at that share over several corners every level between them is an answer and their middle is taken
 * (common practice, no source). Beyond the corners nothing is extrapolated: no value, with the reason.
 */
export function curveQuantile(corners: readonly Corner[], probability: number): Possibly<number> {
  const first = corners[0];
  const last = corners.at(-1);
  if (first === undefined || last === undefined) return { value: null, why: 'there are no drops' };
  const percent = `${Number((100 * probability).toPrecision(6))} %`;
  if (first.share > probability)
    return { value: null, why: `the share failed is above ${percent} at the lowest level already` };
  if (last.share < probability)
    return { value: null, why: `the share failed does not reach ${percent} at any level` };
  const from = corners.findIndex((c) => c.share >= probability);
  const at = corners[from]!;
  if (at.share === probability) {
    const to = corners.findLast((c) => c.share === probability)!;
    return { value: (at.level + to.level) / 2, why: null };
  }
  const below = corners[from - 1]!;
  const part = (probability - below.share) / (at.share - below.share);
  return { value: below.level + part * (at.level - below.level), why: null };
}
