/**
 * A number as a cell writes it, in whole steps of 10^−decimals, rounded half away from nought: `-30.125` with two
 * decimals is −3013. Worked out on the digits, so that no binary fraction decides; NaN for a text that is no plain
 * number. Beyond 2^53 steps the nearest double is given.
 */
export function wholeNumber(text: string, decimal: '.' | ',', decimals: number): number {
  const match = (decimal === '.' ? POINT : COMMA).exec(text);
  if (!match || (match[2] === '' && !match[3])) return Number.NaN;
  const shift = decimals + Number(match[4] ?? 0);
  const digits = match[2]! + (match[3] ?? '');
  const kept = match[2]!.length + shift;
  if (kept > 300) return Number.NaN;
  const whole = Number(kept <= 0 ? 0 : digits.slice(0, kept).padEnd(kept, '0'));
  const isUp = kept >= 0 && digits.charCodeAt(kept) >= 0x35;
  const magnitude = isUp ? whole + 1 : whole;
  return match[1] === '-' && magnitude !== 0 ? -magnitude : magnitude;
}

const POINT = /^([+-]?)(\d*)(?:\.(\d*))?(?:[eE]([+-]?\d{1,3}))?$/u;
const COMMA = /^([+-]?)(\d*)(?:,(\d*))?(?:[eE]([+-]?\d{1,3}))?$/u;
