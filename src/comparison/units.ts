/** Units by which a factor's value may be read: one of each dimension that a tyre's factors come in. */
const UNITS = ['g', 'mm', 'bar', '°C', 'N', 'deg'] as const;

/** Those worth trying for a text that begins with a number and ends with a unit; none for anything else. */
export function unitNamesOf(text: string): readonly string[] {
  return /^[+-]?[\d.]+\s*\p{L}|^[+-]?[\d.]+\s*°/u.test(text) ? UNITS : [];
}
