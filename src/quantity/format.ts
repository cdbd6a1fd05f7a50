/**
 * A number rounded for people: as many significant digits as asked for, never an exponent between 1e-4 and 1e15,
 * trailing noughts kept because they say how finely the value is known.
 */
export function significant(value: number, digits: number): string {
  if (!Number.isFinite(value)) return '—';
  if (value === 0) return '0';
  const exponent = Math.floor(Math.log10(Math.abs(Number(value.toPrecision(digits)))));
  if (exponent < -5 || exponent >= 15) return value.toExponential(digits - 1);
  const decimals = Math.max(0, digits - 1 - exponent);
  return value.toFixed(Math.min(decimals, 20));
}

/**
 * A value and how finely to print it: the decimals that make the standard error (or half width) stand with two
 * significant digits, so that no report shows more digits than mean something.
 */
export function decimalsFor(uncertainty: number): number {
  if (!Number.isFinite(uncertainty) || uncertainty <= 0) return 2;
  return Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(uncertainty))));
}

/** `1 drop`, `30 drops`. */
export function counted(count: number, singular: string, plural = `${singular}s`): string {
  return `${count} ${count === 1 ? singular : plural}`;
}

/** A height for people: `475 mm`, `482.5 mm`; tenths of a millimetre are the finest that a drop rig knows. */
export function height(millimetres: number): string {
  return `${Number(millimetres.toFixed(1))} mm`;
}

/** A falling mass for people: `8.25 kg`. */
export function kilograms(mass: number): string {
  return `${Number(mass.toFixed(3))} kg`;
}

/** A measured value with at most so many decimals, and no trailing noughts: `2.12`, `8`. */
export function upTo(value: number, decimals: number): string {
  return String(Number(value.toFixed(decimals)));
}
