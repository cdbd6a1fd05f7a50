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
 * The maximum of a concave function that has one above `floor`: Newton's method inside a bracket that only shrinks,
 * bisection where Newton leaves it, and growing steps while one side is open. It ends when the Newton decrement
 * slope²/−curvature, twice what is left to gain, is below 1e-18.
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
  for (let count = 0; count < MOST_STEPS; count++) {
    at(x, point);
    const { slope, curvature } = point;
    if (slope === 0) break;
    // Far out the curvature can be lost in rounding; then it guides no step.
    const newton = curvature < 0 ? -slope / curvature : Number.NaN;
    if (Math.abs(slope * newton) < 1e-18) return { at: x + newton, value: point.value };
    if (slope > 0) low = x;
    else high = x;
    if (high - low <= 4 * Number.EPSILON * Math.abs(x)) break;
    let next = x + newton;
    const open = slope > 0 ? high === Infinity : low === -Infinity;
    if (open) {
      const furthest = x + Math.sign(slope) * reach;
      // Not beyond the reach, which grows; nor by a step that is none.
      if (!(Math.abs(next - x) < reach)) next = furthest;
      reach *= 4;
    } else if (!(next > low && next < high)) next = 0.5 * (low + high);
    x = next;
  }
  return { at: x, value: point.value };
}

const MOST_STEPS = 400;
