/**
 * What is known of one specimen's strength or life: in (lower, upper], or exactly at `lower` = `upper`. Unbounded ends
 * are ∓Infinity (0 may stand for the lower end of a life). `count` such specimens.
 */
export interface Bracket {
  readonly lower: number;
  readonly upper: number;
  readonly count: number;
}

/** Where the estimate may put probability: (lower, upper], or the point where both are equal. */
export interface Span {
  readonly lower: number;
  readonly upper: number;
}

const EXACT = 0;
const CLOSES = 1;
const OPENS = 2;

/**
 * The innermost intervals of the data (Turnbull 1976, JRSS B 38, 290–295; Peto 1973): a left end that is followed at
 * once by a right end. Only there does the maximum-likelihood estimate put probability. At equal values an exact one
 * comes first, then the ends that close (they include the value), then those that open (they do not).
 */
export function innermostSpans(brackets: readonly Bracket[]): Span[] {
  const ends: { at: number; rank: number; opens: boolean }[] = [];
  for (const { lower, upper } of brackets) {
    ends.push({ at: lower, rank: lower === upper ? EXACT : OPENS, opens: true });
    ends.push({ at: upper, rank: CLOSES, opens: false });
  }
  ends.sort((a, b) => (a.at === b.at ? a.rank - b.rank : a.at < b.at ? -1 : 1));
  const spans: Span[] = [];
  for (let i = 0; i + 1 < ends.length; i++) {
    const here = ends[i]!;
    const next = ends[i + 1]!;
    if (here.opens && !next.opens) spans.push({ lower: here.at, upper: next.at });
  }
  return spans;
}

/** Does a bracket contain a span? */
export function contains(bracket: Bracket, span: Span): boolean {
  if (bracket.lower === bracket.upper) return span.lower === span.upper && span.lower === bracket.lower;
  // A point needs lower < point; an open-ended span needs only lower ≤ its lower end.
  const begins = span.lower === span.upper ? bracket.lower < span.lower : bracket.lower <= span.lower;
  return begins && span.upper <= bracket.upper;
}
