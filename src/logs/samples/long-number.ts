/** Longest run of digits that fits 32 bits whatever the digits are. */
export const SAFE_DIGITS = 9;
/** Where doubles cease to hold every whole number: 2^53. */
export const UNSAFE = 9007199254740992;
/** Powers of ten that doubles hold exactly. */
export const POWERS = Float64Array.from({ length: 23 }, (_, i) => 10 ** i);

const ZERO = 48;

/**
 * The number that digits (and a decimal mark among them) make from byte `first` to `end`, in whole steps of 10^−decimals:
 * one of more digits than 32 bits hold, or finer than the column keeps, which is rounded half away from nought.
 *
 * @param point byte of the decimal mark
 */
export function longNumber(
  bytes: Buffer,
  first: number,
  end: number,
  point: number,
  decimals: number,
): number {
  let value = 0;
  let left = -1;
  for (let at = first; at < end; at++) {
    const byte = bytes[at]!;
    if (byte === point) {
      left = decimals;
    } else if (left === 0) {
      return byte >= ZERO + 5 ? value + 1 : value;
    } else {
      value = value * 10 + (byte - ZERO);
      if (left > 0) left--;
    }
  }
  return value * POWERS[left < 0 ? decimals : left]!;
}
