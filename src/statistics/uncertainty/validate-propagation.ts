import type { Propagation } from './monte-carlo.ts';

/** Whether the law of propagation holds up against drawing. */
export interface Validation {
  /** How far the ends may lie apart: half a unit of the last of so many digits of the standard uncertainty. */
  readonly tolerance: number;
  readonly lowerDifference: number;
  readonly upperDifference: number;
  readonly agrees: boolean;
}

/**
 * Compares value ± expanded uncertainty with the symmetric interval by drawing (JCGM 101, 8.1): where the ends part by more
 * than the tolerance, the law of propagation does not serve here, and the drawn interval is the one to state.
 *
 * @param digits of the standard uncertainty that count, 1 or 2 (JCGM 101, 7.9.2)
 */
export function validatePropagation(
  {
    value,
    standardUncertainty,
    expandedUncertainty,
  }: { readonly value: number; readonly standardUncertainty: number; readonly expandedUncertainty: number },
  drawn: Pick<Propagation, 'symmetric'>,
  digits: 1 | 2 = 2,
): Validation {
  // Rounded first: 0.0996 to two digits is 0.10, whose last digit counts for 0.01 rather than 0.001.
  const [, exponent] = standardUncertainty.toExponential(digits - 1).split('e');
  const tolerance = 0.5 * 10 ** (Number(exponent) - digits + 1);
  const lowerDifference = Math.abs(value - expandedUncertainty - drawn.symmetric.lower);
  const upperDifference = Math.abs(value + expandedUncertainty - drawn.symmetric.upper);
  return {
    tolerance,
    lowerDifference,
    upperDifference,
    agrees: lowerDifference <= tolerance && upperDifference <= tolerance,
  };
}
