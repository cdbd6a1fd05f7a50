import { type Bracket, contains, innermostSpans, type Span } from './innermost.ts';
import { maximiseMixture } from './mixture.ts';

/** A span with the probability that the estimate gives it; how it lies within the span the data do not say. */
export interface Mass extends Span {
  readonly mass: number;
  /** Probability up to and including the span. */
  readonly cumulative: number;
}

/** The non-parametric maximum-likelihood estimate of a distribution from brackets. */
export interface Turnbull {
  readonly masses: readonly Mass[];
  readonly logLikelihood: number;
  /** The largest breach of the Karush–Kuhn–Tucker conditions, as a share of the number of specimens. */
  readonly optimality: number;
  /** Whether those conditions hold to 1e-8: only then is it the maximum-likelihood estimate. */
  readonly optimal: boolean;
}

/** Breach of the optimality conditions that is let pass; the log-likelihood is then short of its maximum by less than
 * this times the number of specimens. */
const TOLERANCE = 1e-8;

/**
 * Turnbull's estimate (1976): masses pⱼ on the innermost intervals that maximise Σ nᵢ ln Σⱼ αᵢⱼ pⱼ, where αᵢⱼ says
 * whether bracket i contains span j. Found by self-consistency, sped up, and then checked against the conditions of
 * Gentleman and Geyer (1994): Σᵢ nᵢ αᵢⱼ / Σₖ αᵢₖ pₖ is at most n everywhere and n where pⱼ > 0. Self-consistency alone
 * can stop at a point that is no maximum.
 *
 * Spans that get no probability are left out. Throws a RangeError without brackets or for one that is empty.
 */
export function turnbull(brackets: readonly Bracket[]): Turnbull {
  const used = brackets.filter((b) => b.count > 0);
  if (used.length === 0) throw new RangeError('no brackets');
  const wrong = used.find((b) => !(b.lower <= b.upper) || b.lower === Infinity || b.upper === -Infinity);
  if (wrong !== undefined) throw new RangeError(`the bracket (${wrong.lower}, ${wrong.upper}] is empty`);
  const spans = innermostSpans(used);
  const members = used.map((b) => spans.flatMap((s, j) => (contains(b, s) ? [j] : [])));
  const counts = used.map((b) => b.count);
  const { weights, logLikelihood, breach } = maximiseMixture(members, counts, spans.length, TOLERANCE);
  let cumulative = 0;
  const masses: Mass[] = [];
  for (let j = 0; j < spans.length; j++) {
    const mass = weights[j]!;
    if (mass === 0) continue;
    cumulative += mass;
    masses.push({ ...spans[j]!, mass, cumulative });
  }
  return { masses, logLikelihood, optimality: breach, optimal: breach <= TOLERANCE };
}

/**
 * Where the level with the share `probability` failed lies: the ends of the span in which the cumulative probability
 * passes it. Unbounded ends are ∓Infinity: with a last span (x, ∞) a share that is reached only there has no upper end.
 * Where the cumulative probability equals it exactly between two spans, from the end of the one to the start of the
 * next it is undecided, and both spans are covered.
 */
export function turnbullQuantile(estimate: Turnbull, probability: number): Span {
  const { masses } = estimate;
  const rounding = 1e-9;
  const first = masses.findIndex((m) => m.cumulative >= probability - rounding);
  const from = masses[first === -1 ? masses.length - 1 : first]!;
  const exactly = Math.abs(from.cumulative - probability) <= rounding;
  const to = exactly ? (masses[first + 1] ?? from) : from;
  return { lower: from.lower, upper: to.upper };
}

/** Share failed up to and including `level`, between `lower` and `upper` where the level is inside a span. */
export function turnbullShare(estimate: Turnbull, level: number): Span {
  let lower = 0;
  let upper = 0;
  for (const m of estimate.masses) {
    if (m.upper <= level) lower = m.cumulative;
    if (m.upper <= level || m.lower < level) upper = m.cumulative;
  }
  return { lower, upper: Math.min(1, upper) };
}
