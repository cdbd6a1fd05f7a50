/** A stretch at one load. */
export interface Stretch {
  /** Cycles, hits or distance. */
  readonly amount: number;
  /** Life at that load, in the same unit; Infinity where the load does no harm. */
  readonly life: number;
}

/** Σ amount/life (Palmgren 1924, Miner 1945): failure is due at 1. It takes no account of order. */
export function minerSum(stretches: readonly Stretch[]): number {
  for (const { amount, life } of stretches) {
    if (!(amount >= 0 && amount < Infinity))
      throw new RangeError(`amount ${amount} is not a number from 0 upward`);
    if (!(life > 0)) throw new RangeError(`life ${life} is not above 0`);
  }
  return stretches.reduce((sum, { amount, life }) => sum + amount / life, 0);
}
