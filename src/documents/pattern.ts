import { dimensionOf, unitNames } from '../quantity/units.ts';

const NUMBER = String.raw`[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?`;

/**
 * A regular expression (JSON Schema `pattern`) for a quantity in any unit of the dimension of `unit`, so that an
 * editor marks a missing or wrong unit while it is typed.
 */
export function quantityPattern(unit: string, tolerance: 'none' | 'optional' | 'required'): string {
  const dimension = dimensionOf(unit)!;
  const value = `${NUMBER}\\s*${oneOf(unitNames(dimension))}`;
  if (tolerance === 'none') return `^\\s*${value}\\s*$`;
  const own = dimension === 'temperature' ? unitNames('temperature difference') : unitNames(dimension);
  const share = `${NUMBER}\\s*${oneOf([...new Set([...own, '%'])])}`;
  return `^\\s*${value}\\s*((±|\\+-|\\+/-)\\s*${share})${tolerance === 'optional' ? '?' : ''}\\s*$`;
}

/** A regular expression that either of two satisfies. */
export function eitherPattern(one: string, other: string): string {
  return `(${one})|(${other})`;
}

/** A regular expression for a number without unit. */
export function barePattern(): string {
  return `^\\s*${NUMBER}\\s*$`;
}

function oneOf(names: readonly string[]): string {
  return `(${names.map((name) => name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('|')})`;
}
