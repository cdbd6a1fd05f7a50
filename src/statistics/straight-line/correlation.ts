import { compensatedSum, mean } from '../summary/moments.ts';

/** Pearson's correlation; null where one side does not vary. */
export function pearson(x: readonly number[], y: readonly number[]): number | null {
  if (x.length !== y.length || x.length < 2)
    throw new RangeError(`${x.length} values against ${y.length} give no correlation`);
  const [cx, cy] = [mean(x), mean(y)];
  const dx = x.map((value) => value - cx);
  const dy = y.map((value) => value - cy);
  const xx = compensatedSum(dx.map((d) => d * d));
  const yy = compensatedSum(dy.map((d) => d * d));
  if (!(xx > 0 && yy > 0)) return null;
  const r = compensatedSum(dx.map((d, i) => d * dy[i]!)) / Math.sqrt(xx * yy);
  return Math.max(-1, Math.min(1, r));
}
