import { normalCritical } from '../likelihood/critical.ts';

/** What is stated of an input: how wide, and what was meant by it. */
export type Statement =
  | { readonly kind: 'standard'; readonly uncertainty: number }
  /** Of a certificate: U with its coverage factor. */
  | { readonly kind: 'expanded'; readonly uncertainty: number; readonly factor: number }
  /** Of a certificate: U with its level, taken as normal. */
  | { readonly kind: 'interval'; readonly halfWidth: number; readonly level: number }
  /** Anywhere within ± halfWidth: a tolerance, a resolution (half a digit). */
  | { readonly kind: 'rectangular'; readonly halfWidth: number }
  | { readonly kind: 'triangular'; readonly halfWidth: number }
  /** A sine that swings over ± halfWidth. */
  | { readonly kind: 'arcsine'; readonly halfWidth: number };

/** The standard uncertainty of a statement (JCGM 100, 4.3.3 to 4.3.9). Throws a RangeError for one that is not positive. */
export function standardUncertainty(statement: Statement): number {
  const value = convert(statement);
  if (!(value > 0 && value < Infinity))
    throw new RangeError(`a standard uncertainty must be above 0, found ${value}`);
  return value;
}

function convert(statement: Statement): number {
  switch (statement.kind) {
    case 'standard':
      return statement.uncertainty;
    case 'expanded':
      return statement.uncertainty / statement.factor;
    case 'interval':
      return statement.halfWidth / normalCritical(statement.level, 2);
    case 'rectangular':
      return statement.halfWidth / Math.sqrt(3);
    case 'triangular':
      return statement.halfWidth / Math.sqrt(6);
    case 'arcsine':
      return statement.halfWidth / Math.SQRT2;
  }
}

/**
 * Degrees of freedom of an uncertainty that is itself known to a share only: ½·share⁻², so that 8 stand for "to a quarter"
 * (JCGM 100, G.4.2, equation G.3).
 */
export function degreesFromReliability(share: number): number {
  return 0.5 / (share * share);
}
