import { describe, expect, it } from 'vitest';
import { calibratedQuantile } from '../../../src/statistics/calibration/calibrate.ts';
import {
  type BoundedQuantile,
  boundedQuantile,
  differenceOfQuantiles,
  ratioOfQuantiles,
} from '../../../src/statistics/calibration/contrast.ts';
import { drawing } from '../../../src/statistics/calibration/draw.ts';
import { emptyTrials } from '../../../src/statistics/calibration/experiment.ts';
import { tabulatedCriticals } from '../../../src/statistics/calibration/tabulated-criticals.ts';
import { normal } from '../../../src/statistics/laws/normal.ts';
import { prepareProfile } from '../../../src/statistics/likelihood/constrained.ts';
import { gatherObservations } from '../../../src/statistics/likelihood/observation.ts';
import { randomStream } from '../../../src/statistics/random/random-stream.ts';
import { staircase } from './walk.ts';

const first = { best: 40, lower: 37, upper: 43 };
const second = { best: 50, lower: 46, upper: 54 };

describe('differenceOfQuantiles', () => {
  it('adds the distances as squares: a right triangle of 3 and 4', () => {
    expect(differenceOfQuantiles(first, second)).toEqual({ lower: 5, upper: 15 });
    expect(differenceOfQuantiles(second, first)).toEqual({ lower: -15, upper: -5 });
  });

  it('takes each side from the limits that make it', () => {
    // Upwards 5 of the second and 12 below the first, downwards 8 and 15: 13 and 17.
    const skewed = differenceOfQuantiles(
      { best: 40, lower: 28, upper: 55 },
      { best: 50, lower: 42, upper: 55 },
    );
    expect(skewed).toEqual({ lower: 10 - 17, upper: 10 + 13 });
  });

  it('is unbounded only on the side whose limits are', () => {
    expect(differenceOfQuantiles(first, { ...second, upper: null })).toEqual({ lower: 5, upper: null });
    expect(differenceOfQuantiles({ ...first, upper: null }, second)).toEqual({ lower: null, upper: 15 });
  });

  it('takes the farthest limits where a best value runs off', () => {
    const above = { best: Infinity, lower: 46, upper: null };
    expect(differenceOfQuantiles(first, above)).toEqual({ lower: 46 - 43, upper: null });
  });
});

describe('ratioOfQuantiles', () => {
  it('gives Fieller’s interval for symmetric limits', () => {
    // Fieller (1954), J. R. Stat. Soc. B 16, 175–185, independent case, written with half-widths h = z·s:
    // (r ± √(h₂²/m₁² + r²h₁²/m₁² − g·h₂²/m₁²))/(1 − g), g = h₁²/m₁², r = m₂/m₁.
    const [m1, m2, h1, h2] = [40, 50, 3, 4];
    const g = (h1 * h1) / (m1 * m1);
    const r = m2 / m1;
    const half = Math.sqrt((h2 * h2 * (1 - g) + r * r * h1 * h1) / (m1 * m1));
    const { lower, upper } = ratioOfQuantiles(first, second, 'identity');
    expect(lower).toBeCloseTo((r - half) / (1 - g), 12);
    expect(upper).toBeCloseTo((r + half) / (1 - g), 12);
  });

  it('finds the ratios at which the limit of the difference is nought', () => {
    const a = { best: 40, lower: 28, upper: 55 };
    const b = { best: 50, lower: 42, upper: 55 };
    const scaled = (r: number): BoundedQuantile => ({ best: r * 40, lower: r * 28, upper: r * 55 });
    const { lower, upper } = ratioOfQuantiles(a, b, 'identity');
    expect(differenceOfQuantiles(scaled(lower!), b).lower).toBeCloseTo(0, 10);
    expect(differenceOfQuantiles(scaled(upper!), b).upper).toBeCloseTo(0, 10);
  });

  it('is the difference of logarithms for laws of ln x', () => {
    const { lower, upper } = ratioOfQuantiles(
      { best: 1, lower: Math.exp(-3), upper: Math.exp(3) },
      { best: 1, lower: Math.exp(-4), upper: Math.exp(4) },
      'log',
    );
    expect([Math.log(lower!), Math.log(upper!)]).toEqual([expect.closeTo(-5, 12), expect.closeTo(5, 12)]);
  });

  it('has no upper limit where the first may be nought, and no lower one where the second may', () => {
    expect(ratioOfQuantiles({ ...first, lower: -1 }, second, 'identity').upper).toBeNull();
    expect(ratioOfQuantiles(first, { ...second, lower: null }, 'identity').lower).toBeNull();
    // An upper limit of the first beyond twice its best value: the other root of the quadratic would be taken for it.
    const wide = ratioOfQuantiles({ best: 40, lower: 37, upper: 130 }, second, 'identity');
    expect(wide.lower).toBeGreaterThan(0);
    expect(wide.lower).toBeLessThan(46 / 40);
  });
});

describe('how often the limits hold', () => {
  /** The median of an up-and-down test of 30 drops in steps of one spread, its grid shifted. */
  function tested(median: number, offset: number, index: number): BoundedQuantile {
    const start = 10 + offset;
    const experiment = staircase(30, 1, start);
    const trials = emptyTrials(30);
    const draw = drawing(experiment, { location: median, scale: 1 });
    draw(randomStream(20261125, index), trials, new Float64Array(30));
    const seen = Array.from({ length: 30 }, (_, i) => {
      const level = experiment.levels[trials.level[i]!]!;
      return trials.failed[i]
        ? { lower: -Infinity, upper: level, count: 1 }
        : { lower: level, upper: Infinity, count: 1 };
    });
    const basis = prepareProfile(gatherObservations(seen, 'identity'), normal);
    const table = tabulatedCriticals({ drops: 30, start, step: 1 });
    return boundedQuantile(basis, 0.5, calibratedQuantile(basis, experiment, table, 0.5, 0.95, 2));
  }

  it.each([0, 1])('is what they promise: medians %i spreads apart', (apart) => {
    // 400 pairs, Monte Carlo error 1.1 points; 2,000 pairs in bench/contrast-coverage.md.
    const pairs = 400;
    let difference = 0;
    let ratio = 0;
    for (let k = 0; k < pairs; k++) {
      const a = tested(10, (k + 0.5) / pairs - 0.5, 2 * k);
      const b = tested(10 + apart, ((k * 0.618034) % 1) - 0.5, 2 * k + 1);
      const both = differenceOfQuantiles(a, b);
      const over = ratioOfQuantiles(a, b, 'identity');
      if ((both.lower ?? -Infinity) <= apart && apart <= (both.upper ?? Infinity)) difference++;
      const truth = (10 + apart) / 10;
      if ((over.lower ?? 0) <= truth && truth <= (over.upper ?? Infinity)) ratio++;
    }
    for (const held of [difference / pairs, ratio / pairs]) {
      expect(held).toBeGreaterThan(0.94 - 2 * 0.011);
      // An interval that always holds would promise too little.
      expect(held).toBeLessThan(0.995);
    }
  });
});
