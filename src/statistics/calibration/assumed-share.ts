import type { Experiment } from './experiment.ts';

/** Of the risk that the level leaves, the part that is used; the rest is for the share being a guess (calibration.md). */
const USED = 0.9;

/** Whether critical values rest on a share between specimens that was assumed, and are kept on the safe side for it. */
export function restsOnShare({ share, reading }: Experiment): boolean {
  return share > 0 && reading === 'hits';
}

/** The level to ask of simulated tests so that `level` is kept with a share that is not the assumed one. */
export function guardedLevel(level: number): number {
  return 1 - USED * (1 - level);
}

/** The share of simulated tests as extreme as the observed one, taken to the risk it stands for. */
export function guardedShare(share: number): number {
  return Math.min(1, share / USED);
}
