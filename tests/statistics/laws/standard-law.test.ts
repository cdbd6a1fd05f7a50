import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { logistic } from '../../../src/statistics/laws/logistic.ts';
import { normal } from '../../../src/statistics/laws/normal.ts';
import { smallestExtremeValue } from '../../../src/statistics/laws/smallest-extreme-value.ts';
import type { StandardLaw } from '../../../src/statistics/laws/standard-law.ts';
import { readTable, relativeError, worst } from '../special/table.ts';

const standardLaws: StandardLaw[] = [normal, logistic, smallestExtremeValue];

// Source of every expected value: mpmath with 60 digits, tests/reference/scripts/special-tables.py. Measured largest
// relative errors over the tables: normal 8e-16, logistic 4e-16 in every function. Smallest extreme value: 3e-16 in
// logPdf, logSf and the body; 8e-14 where e^−w enters with w = eᶻ up to 700, since the last digit of w is then
// 700·2⁻⁵³ of the result. No value but dLogPdf crosses zero, and that one is exact there.
const allowed = { normal: 2e-15, logistic: 1e-15, 'smallest-extreme-value': 1e-13 };

describe.each(standardLaws)('the $name law against 60 digits', (law) => {
  const rows = readTable(law.name);
  const tolerance = allowed[law.name];

  it.each([
    'pdf',
    'cdf',
    'sf',
    'logPdf',
    'dLogPdf',
    'd2LogPdf',
    'logCdf',
    'logSf',
    'dLogCdf',
    'd2LogCdf',
  ] as const)('%s', (name) => {
    expect(worst(rows, name, ({ z }) => law[name](z!))).toBeLessThan(tolerance);
  });

  it('all three parts of log F at once', () => {
    const term = (z: number) => law.logCdfTerm(z, { value: 0, slope: 0, curvature: 0 });
    expect(worst(rows, 'logCdf', ({ z }) => term(z!).value)).toBeLessThan(tolerance);
    expect(worst(rows, 'dLogCdf', ({ z }) => term(z!).slope)).toBeLessThan(tolerance);
    expect(worst(rows, 'd2LogCdf', ({ z }) => term(z!).curvature)).toBeLessThan(tolerance);
  });

  it('holds values out to |z| = 1000 in a logarithm', () => {
    expect(rows.filter(({ z, logCdf }) => z! <= -1000 && logCdf !== null).length).toBeGreaterThan(0);
  });
});

describe('quantiles against 60 digits', () => {
  // Measured: 4e-16, 2e-16, and 2e-16 but for p = 0.632, where the smallest-extreme-value quantile crosses zero at
  // 1 − 1/e: there the last digit of −log(1 − p) is an absolute 1e-16 of z = −3e-4.
  const rows = readTable('quantiles');
  it.each([
    ['normal', normal, 1e-15],
    ['logistic', logistic, 1e-15],
    ['smallest', smallestExtremeValue, 5e-13],
  ] as const)('%s, p from 1e-300 to 1 − 1e-16', (column, law, tolerance) => {
    expect(worst(rows, column, ({ p }) => law.quantile(p!))).toBeLessThan(tolerance);
  });

  it('from the upper tail', () => {
    expect(worst(rows, 'normal', ({ p }) => -normal.quantileOfSf(p!))).toBeLessThan(1e-15);
    expect(worst(rows, 'logistic', ({ p }) => -logistic.quantileOfSf(p!))).toBeLessThan(1e-15);
    expect(worst(rows, 'smallestOfSf', ({ p }) => smallestExtremeValue.quantileOfSf(p!))).toBeLessThan(1e-14);
  });

  const logRows = readTable('log-quantiles');
  it.each([
    ['normal', normal],
    ['logistic', logistic],
    ['smallest', smallestExtremeValue],
  ] as const)('%s, log p from −1e12 to −1e-300', (column, law) => {
    expect(worst(logRows, column, ({ logP }) => law.quantileOfLogCdf(logP!))).toBeLessThan(2e-15);
  });
});

describe.each(standardLaws)('properties of the $name law', (law) => {
  const z = fc.double({ min: -6, max: 3, noNaN: true });

  it('cdf and sf add to one; each grows or falls', () => {
    fc.assert(
      fc.property(z, z, (a, b) => {
        expect(law.cdf(a) + law.sf(a)).toBeCloseTo(1, 15);
        if (a < b) {
          expect(law.cdf(a)).toBeLessThanOrEqual(law.cdf(b));
          expect(law.sf(a)).toBeGreaterThanOrEqual(law.sf(b));
        }
      }),
    );
  });

  it('quantiles lead back', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1 - 1e-12, noNaN: true }), (p) => {
        expect(relativeError(law.cdf(law.quantile(p)), p)).toBeLessThan(1e-13);
        expect(relativeError(law.sf(law.quantileOfSf(p)), p)).toBeLessThan(1e-13);
        const logP = Math.log(p) * 50;
        expect(relativeError(law.logCdf(law.quantileOfLogCdf(logP)), logP)).toBeLessThan(1e-12);
        expect(relativeError(law.logSf(law.quantileOfLogSf(logP)), logP)).toBeLessThan(1e-12);
      }),
    );
  });

  it('derivatives are those of difference quotients', () => {
    const h = 1e-5;
    const quotient = (f: (z: number) => number, z: number) => (f(z + h) - f(z - h)) / (2 * h);
    const pairs = [
      [law.cdf, law.pdf],
      [law.logCdf, law.dLogCdf],
      [law.dLogCdf, law.d2LogCdf],
      [law.logSf, law.dLogSf],
      [law.dLogSf, law.d2LogSf],
      [law.logPdf, law.dLogPdf],
      [law.dLogPdf, law.d2LogPdf],
    ] as const;
    fc.assert(
      fc.property(z, (at) => {
        for (const [f, derivative] of pairs) {
          const size = 1 + Math.abs(f(at)) + Math.abs(derivative(at));
          expect(Math.abs(quotient(f, at) - derivative(at))).toBeLessThan(1e-7 * size);
        }
      }),
    );
  });

  it('the parts of log S at once are those had singly', () => {
    fc.assert(
      fc.property(z, (at) => {
        const term = law.logSfTerm(at, { value: 0, slope: 0, curvature: 0 });
        expect(relativeError(term.value, law.logSf(at))).toBeLessThan(1e-15);
        expect(relativeError(term.slope, law.dLogSf(at))).toBeLessThan(1e-15);
        expect(relativeError(term.curvature, law.d2LogSf(at))).toBeLessThan(2e-15);
      }),
    );
  });

  it('infinite arguments give limits, impossible probabilities no number', () => {
    expect([law.cdf(-Infinity), law.cdf(Infinity), law.pdf(-Infinity), law.pdf(Infinity)]).toEqual([
      0, 1, 0, 0,
    ]);
    expect([law.logCdf(-Infinity), law.logSf(Infinity)]).toEqual([-Infinity, -Infinity]);
    expect([law.logPdf(-Infinity), law.logPdf(Infinity)]).toEqual([-Infinity, -Infinity]);
    expect(law.quantile(0)).toBe(-Infinity);
    expect(law.quantile(1)).toBe(Infinity);
    for (const p of [-0.1, 1.1, Number.NaN]) {
      expect(law.quantile(p)).toBeNaN();
      expect(law.quantileOfSf(p)).toBeNaN();
    }
    const into = { value: 0, slope: 0, curvature: 0 };
    for (const end of [-Infinity, Infinity]) {
      expect(Object.values(law.logCdfTerm(end, into)).some(Number.isNaN)).toBe(false);
      expect(Object.values(law.logSfTerm(end, into)).some(Number.isNaN)).toBe(false);
    }
  });
});

it('normal and logistic are symmetric', () => {
  fc.assert(
    fc.property(fc.double({ min: -40, max: 40, noNaN: true }), (z) => {
      for (const law of [normal, logistic]) {
        expect(law.cdf(z)).toBe(law.sf(-z));
        expect(law.logCdf(z)).toBe(law.logSf(-z));
        expect(law.pdf(z)).toBe(law.pdf(-z));
      }
    }),
  );
});
