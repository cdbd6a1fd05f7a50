import { significant } from '../../quantity/format.ts';
import type { NoEstimate } from '../../statistics/likelihood/existence.ts';

/**
 * Why the likelihood has no single best median and spread, in a sentence that also says what would help. The shared
 * level is called by its name: failures and survivals that meet at one level only (`common level`) are another thing
 * than those that lie apart (`gap`).
 *
 * @param unit of the levels, such as J.
 */
export function noEstimateSentence(none: NoEstimate, unit: string): string {
  const at = (level: number) => `${significant(level, 4)} ${unit}`;
  switch (none.kind) {
    case 'empty':
      return 'no drop counts, so there is nothing to estimate from';
    case 'no-failure':
      return `no failure up to ${at(none.highestSurvived)}: only a lower bound; drop higher`;
    case 'all-failed':
      return `all failed, down to ${at(none.lowestFailed)}: only an upper bound; drop lower`;
    case 'single-level':
      return `single level: ${none.failed} of ${none.total} failed at ${at(none.level)}, the only level; drop at others too`;
    case 'common-level':
      return `common level: failures and survivals meet at ${at(none.level)} only (${none.failed} of ${none.total} failed there), so the spread has no best value; more drops near it help`;
    case 'gap':
      return `gap: every survival (up to ${at(none.highestSurvived)}) lies below every failure (from ${at(none.lowestFailed)}), so any median between fits; drop between them, or take a smaller step`;
    case 'single-value':
      return `single value: all strengths were read as ${at(none.value)}, so there is no spread to estimate`;
    case 'wrong-direction':
      return `wrong direction: failures lie on average no higher (${at(none.meanFailed)}) than survivals (${at(none.meanSurvived)}), so no spread fits; look for a mix-up of outcomes or tyres`;
  }
}
