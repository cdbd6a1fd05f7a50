import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betaLaw } from '../../../src/statistics/laws/beta.ts';
import { binomialLaw, poissonLaw } from '../../../src/statistics/laws/counts.ts';
import { fisherLaw } from '../../../src/statistics/laws/fisher.ts';
import { chiSquaredLaw, gammaLaw } from '../../../src/statistics/laws/gamma.ts';
import { noncentralStudentLaw } from '../../../src/statistics/laws/noncentral-student.ts';
import { normal } from '../../../src/statistics/laws/normal.ts';
import { studentLaw } from '../../../src/statistics/laws/student.ts';
import { studentizedRangeLaw } from '../../../src/statistics/laws/studentized-range.ts';
import { relativeError } from '../special/table.ts';

const continuous = {
  gamma: gammaLaw(2.3, 4),
  'chi-squared': chiSquaredLaw(7),
  beta: betaLaw(3, 1.5),
  fisher: fisherLaw(4, 11),
  student: studentLaw(6),
  'noncentral student': noncentralStudentLaw(9, 4.1),
};

describe.each(Object.entries(continuous))('the %s law', (name, law) => {
  it('is led back to p by its quantiles, from either tail', () => {
    fc.assert(
      fc.property(fc.double({ min: -200, max: -1e-3, noNaN: true }), (log) => {
        const p = Math.exp(log);
        const x = law.quantile(p);
        expect(relativeError(law.cdf(x), p)).toBeLessThan(1e-12);
        const y = law.quantileOfSf(p);
        // A beta quantile close to 1 is rounded as 1 − x cannot be: an ulp of it is 1.1e-16/(1 − x) of the tail.
        const rounding = name === 'beta' ? (1.1e-16 * 1.5) / (1 - y) : 0;
        if (rounding < 0.1) expect(relativeError(law.sf(y), p)).toBeLessThan(1e-12 + 2 * rounding);
      }),
      { numRuns: 40 },
    );
  });

  it('rises', () => {
    const x = fc.double({ min: -3, max: 12, noNaN: true });
    fc.assert(
      fc.property(x, x, (a, b) => {
        if (a < b) expect(law.cdf(a)).toBeLessThanOrEqual(law.cdf(b) + 1e-15);
      }),
      { numRuns: 40 },
    );
  });

  it('has no quantile outside [0, 1]', () => {
    expect(law.quantile(-0.1)).toBeNaN();
    expect(law.quantileOfSf(1.5)).toBeNaN();
  });
});

describe('laws that are one another', () => {
  it('t with 1 degree is Cauchy, with infinitely many normal', () => {
    for (const t of [-1e10, -3, -0.1, 0, 0.7, 25]) {
      expect(
        relativeError(
          studentLaw(1).cdf(t),
          t < -1 ? Math.atan(-1 / t) / Math.PI : 0.5 + Math.atan(t) / Math.PI,
        ),
      ).toBeLessThan(1e-14);
    }
    expect(studentLaw(Infinity)).toBe(normal);
    expect(studentLaw(5).quantile(0.5)).toBe(0);
  });

  it('F with 2 degrees below has a closed quantile', () => {
    // P(F ≤ f) = x^(ν/2), x = νf/(2 + νf), by hand
    for (const p of [1e-250, 1e-3, 0.5, 0.99]) {
      const x = p ** (1 / 20);
      expect(relativeError(fisherLaw(40, 2).quantile(p), x / (1 - x) / 20)).toBeLessThan(1e-13);
    }
  });

  it('t² is F, and t without a shift is the noncentral t of shift 0', () => {
    for (const t of [0.3, 1.7, 4, 20]) {
      expect(relativeError(fisherLaw(1, 8).sf(t * t), 2 * studentLaw(8).sf(t))).toBeLessThan(1e-13);
      expect(relativeError(noncentralStudentLaw(8, 0).sf(t), studentLaw(8).sf(t))).toBeLessThan(1e-13);
    }
  });

  it('the range of two is √2 times |t|', () => {
    for (const q of [0.5, 2, 6, 30]) {
      const twice = 2 * studentLaw(10).sf(q / Math.SQRT2);
      expect(relativeError(studentizedRangeLaw(2, 10).sf(q), twice)).toBeLessThan(1e-12);
    }
  });
});

describe('counts', () => {
  it('binomial tails are sums of terms', () => {
    // By hand for n = 5, p = 0.3: 0.7⁵ + 5·0.3·0.7⁴
    expect(relativeError(binomialLaw(5, 0.3).cdf(1), 0.52822)).toBeLessThan(1e-14);
    expect(binomialLaw(5, 0.3).cdf(-1)).toBe(0);
    expect(binomialLaw(5, 0.3).cdf(5)).toBe(1);
    expect(relativeError(binomialLaw(5, 0.3).sf(4), 0.3 ** 5)).toBeLessThan(1e-14);
  });

  it('quantiles are the smallest counts that reach, from either tail', () => {
    for (const law of [binomialLaw(12, 0.35), poissonLaw(4.5)]) {
      for (let k = 0; k < 12; k++) {
        expect(law.quantile(law.cdf(k))).toBe(k);
        expect(law.quantile(law.cdf(k) * (1 + 1e-9))).toBe(k + 1);
        expect(law.quantileOfSf(law.sf(k))).toBe(k);
      }
    }
  });

  it('sure probabilities need no search', () => {
    expect(binomialLaw(7, 0).cdf(0)).toBe(1);
    expect(binomialLaw(7, 1).cdf(6)).toBe(0);
    expect(poissonLaw(3).quantile(1)).toBe(Infinity);
    expect(poissonLaw(0).cdf(0)).toBe(1);
  });
});
