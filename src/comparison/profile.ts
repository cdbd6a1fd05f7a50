import type { StandardLaw } from '../statistics/laws/standard-law.ts';
import type { Sample } from '../statistics/likelihood/observation.ts';
import { emptyTerm, sumTerms } from '../statistics/likelihood/term.ts';

const term = emptyTerm();

/** Largest ln(scale range / scale) that is looked at: beyond it the likelihood of what overlaps nowhere is at its limit. */
const STEEPEST = 18;

/**
 * Log-likelihood of samples whose quantiles at standard quantile z lie at `places` (fitted scale), maximised over one
 * spread common to all. It is concave in the steepness b = 1/spread, so that a safeguarded Newton search on b suffices.
 *
 * @param range of the levels, fitted scale: what steepness is measured by
 */
export function throughQuantiles(
  samples: readonly Sample[],
  places: readonly number[],
  law: StandardLaw,
  z: number,
  range: number,
): number {
  let value = 0;
  let slope = 0;
  let curvature = 0;
  const at = (b: number) => {
    value = 0;
    slope = 0;
    curvature = 0;
    for (const [i, sample] of samples.entries()) {
      sumTerms(sample, law, places[i]!, z, b, term);
      value += term.value;
      slope += term.steepness;
      curvature += term.steepness2;
    }
  };
  at(0);
  // Where even the first step upwards does not pay, a flat response fits best: levels do not count.
  if (slope <= 0) return value;
  const steepest = Math.exp(STEEPEST) / range;
  let low = 0;
  let high = steepest;
  let b = 1 / range;
  for (let i = 0; i < 100 && b < steepest; i++) {
    at(b);
    if (slope > 0) low = b;
    else high = b;
    const newton = curvature < 0 ? b - slope / curvature : Number.NaN;
    const held = newton > low && newton < high ? newton : (low + high) / 2;
    const next = Math.min(held, 4 * b);
    if (Math.abs(next - b) <= 1e-12 * b) break;
    b = next;
  }
  at(b);
  return value;
}

/** The least of a function with one valley that lies between two places or beyond: they are moved out until it is held. */
export function leastFrom(f: (x: number) => number, from: number, to: number): number {
  let low = from;
  let high = to;
  for (let k = 0; k < 40; k++) {
    const width = high - low;
    const [a, b, c, d] = [f(low), f(low + 0.01 * width), f(high - 0.01 * width), f(high)];
    if (a < b) low -= width;
    else if (d < c) high += width;
    else break;
  }
  return leastBetween(f, low, high);
}

/** By golden section. */
function leastBetween(f: (x: number) => number, from: number, to: number): number {
  const share = (Math.sqrt(5) - 1) / 2;
  let a = from;
  let d = to;
  let b = d - share * (d - a);
  let c = a + share * (d - a);
  let fb = f(b);
  let fc = f(c);
  for (let i = 0; i < 60 && Math.abs(d - a) > 1e-8 * (Math.abs(a) + Math.abs(d)); i++) {
    if (fb <= fc) {
      d = c;
      c = b;
      fc = fb;
      b = d - share * (d - a);
      fb = f(b);
    } else {
      a = b;
      b = c;
      fb = fc;
      c = a + share * (d - a);
      fc = f(c);
    }
  }
  return Math.min(fb, fc);
}
