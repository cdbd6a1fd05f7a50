import type { EarlierResult } from '../documents/earlier-result.ts';
import { counted } from '../quantity/format.ts';
import type { Proposal } from '../result/plan.ts';
import { spreadBiasFactor } from '../statistics/tolerance/up-and-down-limit.ts';
import type { DesignedTest } from './design-of.ts';

/** Heights are proposed in steps of so many mm. */
const ROUND = 5;
/** Drops from which n/(n − 3) mends a spread. */
const MENDED_FROM = 8;

/**
 * Start and step from earlier results: the median of each test weighs by its drops, the spread too, mended by n/(n − 3)
 * since it comes out low in small tests. Up-and-down: start at the median, step of one spread. Rising-height: start three
 * spreads below, so that hardly a tyre fails at the first hit, and a step of half a spread. Common practice, no source.
 */
export function proposalFrom(
  earlier: readonly EarlierResult[],
  { protocol, energyPerLevel }: DesignedTest,
): Proposal {
  const drops = earlier.reduce((sum, one) => sum + one.drops, 0);
  const median = earlier.reduce((sum, one) => sum + one.drops * one.median, 0) / drops;
  const withSpread = earlier.filter(({ spread }) => spread !== null);
  const weight = withSpread.reduce((sum, one) => sum + one.drops, 0);
  const square = withSpread.reduce((sum, { spread, drops: n }) => sum + n * (spread! * mended(n)) ** 2, 0);
  // Without a spread, a tenth of the median: tyres scatter by 5 to 15 % (common practice, no source).
  const spread = weight > 0 ? Math.sqrt(square / weight) : 0.1 * median;
  const isRising = protocol.method === 'rising-height';
  const start = (isRising ? median - 3 * spread : median) / energyPerLevel;
  const step = (isRising ? 0.5 * spread : spread) / energyPerLevel;
  const rounded = (height: number) => Math.max(ROUND, Math.round(height / ROUND) * ROUND);
  const how = isRising
    ? 'start three spreads below the median, so that hardly a tyre fails at its first hit, and a step of half a spread'
    : 'start at the median, and a step of one spread';
  const without = withSpread.length === 0 ? '; no spread was found, a tenth of the median stands for it' : '';
  return {
    median,
    spread,
    tests: earlier.length,
    start: rounded(start),
    step: rounded(step),
    why: `by ${counted(earlier.length, 'earlier result')} with ${counted(drops, 'drop')}: ${how}, to ${ROUND} mm (common practice, no source)${without}`,
  };
}

function mended(drops: number): number {
  return drops >= MENDED_FROM ? spreadBiasFactor(drops) : 1;
}
