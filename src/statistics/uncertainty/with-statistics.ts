import { type Combined, combine } from './effective-degrees.ts';

/** An estimate from many drops, with its standard error (and degrees of freedom, Infinity where the theory is asymptotic). */
export interface Statistical {
  readonly value: number;
  readonly standardError: number;
  readonly degrees: number;
}

/**
 * The uncertainty of an estimate from many drops: what is common to all of them stands beside the standard error and does not
 * shrink with their number; scatter from drop to drop lies in the standard error already and is left out.
 *
 * @param common relative standard uncertainty of what is common (mass, gravity, calibration, loss), with its degrees
 */
export function withCommonPart(estimate: Statistical, common: Combined): Combined {
  return combine([
    { contribution: estimate.standardError, degrees: estimate.degrees },
    { contribution: Math.abs(estimate.value) * common.standardUncertainty, degrees: common.degrees },
  ]);
}

/**
 * The uncertainty of the difference of two estimates on one rig. A common factor (1 + e) multiplies both, so that of the
 * difference d only |d|·u is left; of their ratio nothing.
 */
export function ofDifferenceOnOneRig(a: Statistical, b: Statistical, common: Combined): Combined {
  return combine([
    { contribution: a.standardError, degrees: a.degrees },
    { contribution: b.standardError, degrees: b.degrees },
    { contribution: Math.abs(a.value - b.value) * common.standardUncertainty, degrees: common.degrees },
  ]);
}
