import type { Json } from './hover.ts';
import { is, needs, when, without } from './json-keywords.ts';
import { barePattern, quantityPattern } from './pattern.ts';
import { type JudgedQuantity, QUANTITIES } from './quantities.ts';

const LIMITS = ['atLeast', 'atMost', 'within'];

/**
 * What a criterion must hold beyond its single keys, in JSON Schema: one limit, of the dimension of its quantity,
 * and the further key that the quantity needs. `external` criteria are shown elsewhere and may say less.
 */
export function criterionRules(): Json[] {
  const pairs = [LIMITS.slice(0, 2), LIMITS.slice(1), [LIMITS[0]!, LIMITS[2]!]];
  const oneKnown = {
    properties: { quantity: { enum: [...QUANTITIES.keys()] } },
    ...needs('quantity'),
    oneOf: LIMITS.map((key) => needs(key)),
  };
  const atMostOne = { not: { anyOf: pairs.map((pair) => needs(...pair)) } };
  const ofQuantities = [...QUANTITIES].map(([quantity, known]) =>
    when(is('quantity', quantity), rulesOf(known)),
  );
  return [when(needs('external'), atMostOne, oneKnown), ...ofQuantities];
}

function rulesOf({ units, isPure, needs: point, from }: JudgedQuantity): Json {
  const limit = (tolerance: 'none' | 'required'): Json => {
    const patterns = units.map((unit) => quantityPattern(unit, tolerance));
    const all = isPure && tolerance === 'none' ? [...patterns, barePattern()] : patterns;
    const pattern = all.map((one) => `(${one})`).join('|');
    return isPure ? { pattern } : { type: 'string', pattern };
  };
  const foreign = ['probability', 'at', 'protocol'].filter((key) =>
    key === 'protocol' ? from === 'measured' : key !== point,
  );
  const asked = [...(point ? [point] : []), ...(from === 'measured' ? [] : ['protocol'])];
  const { properties } = without(foreign) as { properties: Json };
  return {
    properties: { ...properties, atLeast: limit('none'), atMost: limit('none'), within: limit('required') },
    ...(asked.length > 0 ? { anyOf: [needs('external'), needs(...asked)] } : {}),
  };
}
