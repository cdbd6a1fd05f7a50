/** One hit: its level, what came of it, and how many valid hits the specimen had taken before. */
export interface Hit {
  /** On the scale of x (mm, J), above 0 where the law is of ln x. */
  readonly level: number;
  readonly failed: boolean;
  readonly earlier: number;
}

/** The hits of one specimen; their order does not matter, each knows how many came before. */
export type History = readonly Hit[];

/** Histories that are alike, as the likelihood reads them. */
export interface Pattern {
  /** The levels at which a fresh specimen would be as likely to fail, on the fitted scale. */
  readonly levels: Float64Array;
  /** 1 for a failure, −1 for a survival. */
  readonly signs: Float64Array;
  /** How many specimens have this history. */
  readonly count: number;
  /** Where the specimen's own effect was last found most likely, in its standard deviations: where to look next. */
  mode: number;
}

/**
 * Histories put together where they are alike, with damage allowed for: each earlier hit lowers a specimen's strength by
 * the share `damage`, so that a hit at x after k others is like one at x/(1 − damage)ᵏ on a fresh specimen.
 *
 * @param scale `log` for laws of ln x
 * @throws RangeError for damage outside [0, 1) or a level that the scale cannot take
 */
export function gatherPatterns(
  histories: readonly History[],
  scale: 'identity' | 'log',
  damage: number,
): Pattern[] {
  if (!(damage >= 0 && damage < 1)) throw new RangeError(`damage ${damage} is not a share from 0 to below 1`);
  const counts = new Map<string, { hits: { level: number; sign: number }[]; count: number }>();
  for (const history of histories) {
    if (history.length === 0) continue;
    const hits = history.map(({ level, failed, earlier }) => {
      if (!Number.isFinite(level) || (scale === 'log' && level <= 0))
        throw new RangeError(`level ${level} cannot be taken on the ${scale} scale`);
      const fresh =
        scale === 'log' ? Math.log(level) - earlier * Math.log1p(-damage) : level / (1 - damage) ** earlier;
      return { level: fresh, sign: failed ? 1 : -1 };
    });
    hits.sort((a, b) => a.level - b.level || a.sign - b.sign);
    const key = hits.map((h) => `${h.sign}@${h.level}`).join(' ');
    const known = counts.get(key);
    if (known === undefined) counts.set(key, { hits, count: 1 });
    else known.count++;
  }
  return [...counts.values()].map(({ hits, count }) => ({
    levels: Float64Array.from(hits, (h) => h.level),
    signs: Float64Array.from(hits, (h) => h.sign),
    count,
    mode: 0,
  }));
}
