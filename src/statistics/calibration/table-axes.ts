/** What was tabulated; bench/critical-table.ts makes it. */
export const TABLE_AXES = {
  /** Beyond the last, between it and χ². */
  drops: [10, 12, 15, 20, 30, 50, 100],
  /** Scale over step: 12 values, each 1.3006 times the one before. */
  scales: Array.from({ length: 12 }, (_, k) => (1 / 3) * 18 ** (k / 11)),
  /** (start − y)/step. */
  offsets: Array.from({ length: 65 }, (_, k) => -8 + 0.25 * k),
  shares: [0.5, 0.1],
  levels: [0.9, 0.95],
  tails: ['both', 'above', 'below'],
} as const;
