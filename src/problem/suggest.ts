/**
 * The candidate nearest to a mistyped word, or null where none is near enough to be meant: at most a third of
 * the word's letters may differ (Damerau–Levenshtein distance, optimal string alignment).
 */
export function suggest(word: string, candidates: readonly string[]): string | null {
  const from = word.toLowerCase().slice(0, 80);
  let best: string | null = null;
  let bestDistance = Math.max(1, Math.floor(from.length / 3)) + 1;
  for (const candidate of candidates) {
    const distance = editDistance(from, candidate.toLowerCase());
    if (distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

/** `; did you mean "x"?`, or nothing: the tail of a message about an unknown word. */
export function didYouMean(word: string, candidates: readonly string[]): string {
  const nearest = suggest(word, candidates);
  return nearest === null ? '' : `; did you mean "${nearest}"?`;
}

function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const substitution = last[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      let distance = Math.min(last[j]! + 1, row[j - 1]! + 1, substitution);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) distance = Math.min(distance, beforeLast[j - 2]! + 1);
      row.push(distance);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}
