/** What happened at one level: `failures` out of `drops`. Counts may be fractions where a source gives shares. */
export interface Response {
  /** The level, on the scale the caller works in (J, mm, or a logarithm of one). */
  readonly level: number;
  readonly failures: number;
  readonly drops: number;
}

/** An estimate that may not exist; then `value` is null and `why` says what stands in its way. */
export type Possibly<T> =
  | { readonly value: T; readonly why: null }
  | { readonly value: null; readonly why: string };

/** The responses in order of their levels, those without drops left out and equal levels joined. */
export function orderResponses(responses: readonly Response[]): Response[] {
  const sorted = responses.filter((r) => r.drops > 0).sort((a, b) => a.level - b.level);
  const joined: Response[] = [];
  for (const r of sorted) {
    const last = joined.at(-1);
    if (last !== undefined && last.level === r.level) {
      joined[joined.length - 1] = {
        level: r.level,
        failures: last.failures + r.failures,
        drops: last.drops + r.drops,
      };
    } else joined.push(r);
  }
  return joined;
}
