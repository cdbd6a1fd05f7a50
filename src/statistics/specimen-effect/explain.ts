import type { SpecimenEffect } from './fit.ts';

/**
 * What must be said where the spreads are not told apart: what the median would be at either extreme. Null where they are
 * told apart.
 *
 * @param format a level on the fitted scale as text with its unit
 */
export function explainUntold(effect: SpecimenEffect, format: (level: number) => string): string | null {
  const { kind, allBetween, allWithin } = effect;
  if (kind === 'spreads-told' || allBetween === null || allWithin === null) return null;
  return (
    'the data cannot tell the spread between specimens from that from hit to hit: the median is ' +
    `${format(allBetween.location)} if all of it lies between specimens and ${format(allWithin.location)} if all of it ` +
    'lies from hit to hit; several series or sites on each specimen would settle it'
  );
}
