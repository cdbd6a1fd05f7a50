import { describe, expect, it } from 'vitest';
import { chart } from '../../../src/reports/simulation/chart.ts';
import { pageOf } from '../../../src/reports/text/page.ts';
import type { SimulatedPoint } from '../../../src/result/simulation.ts';

const page = (width: number, unicode = true) => pageOf({ version: '0.1.0', width, colour: 0, unicode });
const chance = (value: number) => ({ value, error: 0.01 });
const count = { mean: chance(30), mostly: 30, most: 30 };

/** Chances that fall and rise along straight lines. */
const points = [
  [40, 0, 1],
  [50, 0.5, 0.5],
  [60, 1, 0],
].map(
  ([median, pass, fail]): SimulatedPoint => ({
    median: median!,
    drops: count,
    specimens: count,
    existence: {},
    estimates: [],
    verdicts: { overall: { pass: chance(pass!), fail: chance(fail!) }, criteria: [] },
  }),
);

describe('the operating characteristic as characters', () => {
  it('draws the chances at their heights, with the limit where it lies', () => {
    expect(chart(page(40), points, 45).join('\n')).toBe(`  100 % ××      ┊                     ●●
          ×××   ┊                  ●●●
             ×××┊               ●●●
                ×××          ●●●
                ┊  ×××    ●●●
   50 %         ┊     ●●●●
                ┊  ●●●    ×××
                ●●●          ×××
             ●●●┊               ×××
          ●●●   ┊                  ×××
    0 % ●●○○○○○○○○○○○○○○○○○○○○○○○○○○○○××
        ────────────────────────────────
        40 J                        60 J

  ● pass, × fail, ○ undecided: chance
  over the true median; ┊ limit 45 J
`);
  });

  it('keeps to the width and to ASCII where the terminal has no more', () => {
    for (const width of [40, 60, 200]) {
      const lines = chart(page(width, false), points, 45);
      expect(lines.join('\n')).toMatch(/^[\n -~]*$/);
      for (const line of lines) expect(line.length).toBeLessThanOrEqual(width);
    }
  });

  it('draws nothing of one median, and nothing without verdicts', () => {
    expect(chart(page(80), points.slice(0, 1), 45)).toEqual([]);
    expect(
      chart(
        page(80),
        points.map((point) => ({ ...point, verdicts: null })),
        null,
      ),
    ).toEqual([]);
  });
});
