import { describe, expect, test } from 'vitest';
import { informationOf } from '../../../src/statistics/d-optimal/next-level.ts';
import { normal } from '../../../src/statistics/laws/normal.ts';
import { findRoot } from '../../../src/statistics/root.ts';
import { dixonMoodSpread } from '../../../src/statistics/up-and-down/spread.ts';
import { expectCase, titleOf } from '../../reference/likelihood/case.ts';
import sen07 from '../../reference/sen-07/SEN-07-updown-asymptotic-theory.json' with { type: 'json' };

/** Shares of the drops at each level in the long run: the walk goes up from one as often as it comes down to it. */
function longRun(step: number, offset: number) {
  const levels = Array.from({ length: 161 }, (_, i) => (i - 80 + offset) * step).filter(
    (z) => Math.abs(z) < 9,
  );
  const logs = [0];
  for (let i = 1; i < levels.length; i++)
    logs.push(logs[i - 1]! + normal.logSf(levels[i - 1]!) - normal.logCdf(levels[i]!));
  const most = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - most));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return levels.map((level, i) => ({ level, drops: weights[i]! / total }));
}

/** M of the failures, s in spreads, and the factors of the standard errors on half of the drops, in the long run. */
function ofLongRun(step: number, offset: number) {
  const run = longRun(step, offset);
  const failures = run.map(({ level, drops }) => ({ level, share: 2 * drops * normal.cdf(level) }));
  const mean = failures.reduce((sum, { level, share }) => sum + share * level, 0);
  const M = failures.reduce((sum, { level, share }) => sum + share * (level - mean) ** 2, 0) / step ** 2;
  const { s0, s1, s2 } = informationOf(run, normal, 0, 1);
  const determinant = s0 * s2 - s1 * s1;
  return {
    M,
    s: dixonMoodSpread(M, step),
    G: Math.sqrt(s2 / determinant / 2),
    H: Math.sqrt(s0 / determinant / 2),
  };
}

const four = ({ M, s, G, H }: ReturnType<typeof ofLongRun>) => [M, s, G, H];

describe(titleOf(sen07), () => {
  test('the table, from the stationary law of the walk', () => {
    for (const row of sen07.data.table) {
      const { M, s, G, H } = ofLongRun(row.dos, row.off);
      for (const [found, value] of [
        [M, row.M],
        [s, row.s_over_sigma],
        [G, row.G],
        [H, row.H],
      ] as const)
        expect(Math.abs(found - value), `${row.dos} ${row.off}`).toBeLessThan(1e-6 * Math.max(1, value));
    }
  });

  test('M, s, G and H at steps of one half, one and one and a half spreads', () => {
    expectCase(sen07, 'M, s/sigma, G, H at d=sigma (mean on a level)', four(ofLongRun(1, 0)));
    expectCase(sen07, 'at d=0.5 sigma', four(ofLongRun(0.5, 0)));
    expectCase(sen07, 'at d=1.5 sigma (mean on level)', four(ofLongRun(1.5, 0)));
    expectCase(sen07, 'at d=2 sigma (mean on level / midway): M', [ofLongRun(2, 0).M, ofLongRun(2, 0.5).M]);
  });

  test('the step at which M falls to 0.3, where the count formula ends', () => {
    const at = (offset: number) => findRoot((step) => ofLongRun(step, offset).M - 0.3, 1.5, 2.5);
    expectCase(sen07, 'd/sigma at which M=0.3: mean on a level, mean midway', [at(0), at(0.5)]);
  });
});
