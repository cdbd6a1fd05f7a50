const GOLDEN = (3 - Math.sqrt(5)) / 2;

/**
 * The highest value of a function with one peak between two arguments, by golden section (Kiefer 1953); the ends themselves
 * are not tried.
 *
 * @param tolerance width of the bracket that is left, absolute
 */
export function goldenSection(
  f: (x: number) => number,
  from: number,
  to: number,
  tolerance: number,
): { at: number; value: number } {
  let low = from;
  let high = to;
  let left = low + GOLDEN * (high - low);
  let right = high - GOLDEN * (high - low);
  let atLeft = f(left);
  let atRight = f(right);
  while (high - low > tolerance) {
    if (atLeft >= atRight) {
      high = right;
      right = left;
      atRight = atLeft;
      left = low + GOLDEN * (high - low);
      atLeft = f(left);
    } else {
      low = left;
      left = right;
      atLeft = atRight;
      right = high - GOLDEN * (high - low);
      atRight = f(right);
    }
  }
  return atLeft >= atRight ? { at: left, value: atLeft } : { at: right, value: atRight };
}
