import { studentLaw } from '../laws/student.ts';

/** A part of a combined uncertainty: |sensitivity|·standard uncertainty, and what it was estimated from. */
export interface Part {
  readonly contribution: number;
  /** Degrees of freedom; Infinity where the uncertainty is taken as known. */
  readonly degrees: number;
}

/** A standard uncertainty with its degrees of freedom. */
export interface Combined {
  readonly standardUncertainty: number;
  readonly degrees: number;
}

/**
 * Independent parts added in quadrature, with the effective degrees of freedom of Welch and Satterthwaite, not truncated:
 * ν = u⁴/Σ(uᵢ⁴/νᵢ) (JCGM 100, G.4.1, equation G.2b).
 */
export function combine(parts: readonly Part[]): Combined {
  const standardUncertainty = Math.hypot(...parts.map((part) => part.contribution));
  const sum = parts.reduce(
    (total, { contribution, degrees }) => total + (contribution / standardUncertainty) ** 4 / degrees,
    0,
  );
  return { standardUncertainty, degrees: sum > 0 ? 1 / sum : Infinity };
}

/** An interval value ± factor·standard uncertainty. */
export interface Expanded {
  readonly factor: number;
  readonly expandedUncertainty: number;
}

/**
 * The coverage factor t of a level by the effective degrees of freedom (JCGM 100, G.3 and G.4.2), and the expanded uncertainty.
 * Give whole degrees to follow those who truncate.
 */
export function expand({ standardUncertainty, degrees }: Combined, level: number): Expanded {
  if (!(level > 0 && level < 1)) throw new RangeError(`level ${level} is not between 0 and 1`);
  const factor = studentLaw(degrees).quantileOfSf(0.5 * (1 - level));
  return { factor, expandedUncertainty: factor * standardUncertainty };
}
