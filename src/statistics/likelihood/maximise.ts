/** A function of one variable at a point: value, first and second derivative. */
export interface CurvePoint {
  value: number;
  slope: number;
  curvature: number;
}

/** Where a concave function is largest, and how large. */
export interface Maximum {
  at: number;
  value: number;
}

/**
 * The maximum of a concave function that has one above `floor`: Newton's method inside a bracket that only shrinks, with
 * bisection where Newton leaves it or has not halved it in three steps (in an exponential tail it creeps), and growing
 * steps while one side is open. It ends when the Newton decrement slope²/−curvature, twice what is left to gain, is
 * below 1e-18.
 *
 * @param at writes the point at x into its second argument
 * @param start above `floor`
 * @param stretch first step towards an open side
 */
export function maximiseConcave(
  at: (x: number, into: CurvePoint) => void,
  start: number,
  floor: number,
  stretch: number,
): Maximum {
  const point: CurvePoint = { value: 0, slope: 0, curvature: 0 };
  let low = floor;
  let high = Infinity;
  let x = start;
  let reach = stretch;
  let target = Infinity;
  let patience = 3;
  for (let count = 0; count < MOST_STEPS; count++) {
    at(x, point);
    const { slope, curvature } = point;
    if (slope === 0) break;
    // Far out the curvature can be lost in rounding; then it guides no step.
    const newton = curvature < 0 ? -slope / curvature : Number.NaN;
    if (Math.abs(slope * newton) < 1e-18) return { at: x + newton, value: point.value };
    // A slope that is no number comes of a density beyond all numbers, which only too large an x gives.
    if (slope > 0) low = x;
    else high = x;
    const width = high - low;
    if (width <= 4 * Number.EPSILON * Math.abs(x)) break;
    const open = slope > 0 ? high === Infinity : low === -Infinity;
    if (open) {
      // Not beyond the reach, nor creeping; the reach grows as it is used.
      if (Math.abs(newton) < reach && patience-- > 0) {
        x += newton;
        continue;
      }
      x += slope > 0 ? reach : -reach;
      reach *= 4;
      continue;
    }
    if (width <= target) {
      target = 0.5 * width;
      patience = 3;
    }
    const useful = patience-- > 0 && x + newton > low && x + newton < high;
    x = useful ? x + newton : 0.5 * (low + high);
  }
  return { at: x, value: point.value };
}

const MOST_STEPS = 400;
