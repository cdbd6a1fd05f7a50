/**
 * A value with its unit for people, `41.3 J`; of a dimensionless quantity (unit `1`) the number alone. What would
 * take more room than it is worth (a million millions, a millionth) is written with an exponent.
 */
export function amount(value: number, decimals: number, unit: string): string {
  const number = fixed(value, decimals);
  return unit === '1' || unit === '' ? number : `${number} ${unit}`;
}

/** A number with so many decimals and without a sign before nought; `—` for what is no number. */
export function fixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return '—';
  const size = Math.abs(value);
  if (size >= 1e9 || (size > 0 && size < 1e-6)) return value.toExponential(3);
  const text = value.toFixed(Math.min(20, Math.max(0, decimals)));
  return /^-0(?:\.0*)?$/u.test(text) ? text.slice(1) : text;
}

/** A number as a person would have written it: `45`, `0.3`. Twelve digits hide what binary fractions add to it. */
export function plain(value: number): string {
  if (!Number.isFinite(value)) return '—';
  return String(Number(value.toPrecision(12)));
}

/** A stated value with its unit, as a person would have written it: `45 J`, `0.6`. */
export function written(value: number, unit: string): string {
  return unit === '1' || unit === '' ? plain(value) : `${plain(value)} ${unit}`;
}

/** `95 %`, `99.9 %`. */
export function percent(fraction: number): string {
  return `${plain(fraction * 100)} %`;
}

/**
 * The decimals, at least so many as given, with which two different values do not look the same: a bound of
 * 44.998 J that misses a limit of 45 J must not be printed as 45.0 J.
 */
export function decimalsToTell(value: number, from: number, least: number): number {
  let decimals = Math.max(0, least);
  while (decimals < 12 && value !== from && value.toFixed(decimals) === from.toFixed(decimals)) decimals += 1;
  return decimals;
}
