/**
 * Where f, at or below 0 at the estimate (argument 0), first rises above 0, going out from the profile limit (argument
 * 1). Each value is asked for once and taken as it is, since f rests on simulated tests that may grow on the way, and
 * it may jump. Regula falsi with the Illinois weights (Dowell and Jarratt 1971, BIT 11, 168–174).
 *
 * @param slope about that of f
 * @returns null where f stays at or below 0 up to `farthest`
 */
export function crossing(f: (x: number) => number, slope: number, farthest: number): number | null {
  let inside = 0;
  let below = -slope;
  let outside = 1;
  let above = f(1);
  while (above <= 0) {
    inside = outside;
    below = above;
    // Not creeping, and not leaping where a critical value is infinite.
    outside = Math.min(outside - (1.2 * above) / slope + 0.02, 1.7 * outside);
    if (outside > farthest) return null;
    above = f(outside);
  }
  let last: 'inside' | 'outside' | null = null;
  for (let step = 0; step < MOST_STEPS && outside - inside > TOLERANCE; step++) {
    const secant = inside + ((outside - inside) * below) / (below - above);
    const x = Number.isFinite(below) ? secant : 0.5 * (inside + outside);
    const value = f(x);
    if (Math.abs(value) < FLAT) return x;
    if (value <= 0) {
      inside = x;
      below = value;
      if (last === 'inside') above *= 0.5;
      last = 'inside';
    } else {
      outside = x;
      above = value;
      if (last === 'outside') below *= 0.5;
      last = 'outside';
    }
  }
  return outside;
}

const MOST_STEPS = 8;
/** In half-widths of the profile interval; a second seed changes more. */
const TOLERANCE = 0.005;
/** Of the root of the statistic, whose critical value is about 2. */
const FLAT = 0.005;
