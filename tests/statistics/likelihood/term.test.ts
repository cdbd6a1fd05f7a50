import { describe, expect, test } from 'vitest';
import { laws } from '../../../src/statistics/laws/laws.ts';
import type { Sample } from '../../../src/statistics/likelihood/observation.ts';
import { emptyTerm, sumTerms } from '../../../src/statistics/likelihood/term.ts';
import { expectRelative } from '../../reference/likelihood/case.ts';
import { naiveLaws, naiveLogLikelihood } from './naive.ts';

/** A sample on the identity scale as it stands, also where its levels would be merged. */
function sampleOf(rows: readonly (readonly [number, number, number])[]): Sample {
  return {
    scale: 'identity',
    size: rows.length,
    lower: Float64Array.from(rows, (row) => row[0]),
    upper: Float64Array.from(rows, (row) => row[1]),
    count: Float64Array.from(rows, (row) => row[2]),
    logJacobian: 0,
  };
}

const kinds = {
  failure: [-Infinity, 1.3, 2],
  survival: [0.4, Infinity, 3],
  interval: [0.4, 1.3, 1],
  'wide interval': [-6, 8, 1],
  'interval in the upper tail': [5, 5.4, 1],
  'interval in the lower tail': [-7, -6.2, 2],
  'narrow interval': [0.4, 0.4 + 1e-3, 2],
  'very narrow interval': [0.4, 0.4 + 1e-9, 1],
  'exact value': [0.7, 0.7, 2],
} as const;

describe.each(Object.entries({ normal: laws.normal, logistic: laws.logistic, extreme: laws.weibull }))(
  'score and information by difference quotients: %s',
  (_, { standard }) => {
    test.each(Object.entries(kinds))('%s', (_kind, row) => {
      const sample = sampleOf([row]);
      const origin = 0.25;
      const [eta, b] = [-0.3, 0.8];
      const at = (p: number, s: number) => sumTerms(sample, standard, origin, p, s, emptyTerm());
      const h = 1e-5;
      const here = at(eta, b);
      const quotient = (key: 'value' | 'predictor' | 'steepness', which: 'p' | 's') =>
        which === 'p'
          ? (at(eta + h, b)[key] - at(eta - h, b)[key]) / (2 * h)
          : (at(eta, b + h)[key] - at(eta, b - h)[key]) / (2 * h);
      const size = 1 + Math.abs(here.steepness2);
      expect(Math.abs(here.predictor - quotient('value', 'p'))).toBeLessThan(1e-8 * size);
      expect(Math.abs(here.steepness - quotient('value', 's'))).toBeLessThan(1e-8 * size);
      expect(Math.abs(here.predictor2 - quotient('predictor', 'p'))).toBeLessThan(1e-8 * size);
      expect(Math.abs(here.cross - quotient('predictor', 's'))).toBeLessThan(1e-8 * size);
      expect(Math.abs(here.steepness2 - quotient('steepness', 's'))).toBeLessThan(1e-8 * size);
    });
  },
);

test.each(['logistic', 'weibull'] as const)('the value is the definition: %s', (name) => {
  const rows = [kinds.failure, kinds.survival, kinds.interval, kinds['narrow interval']];
  const observations = rows.map(([lower, upper, count]) => ({ lower, upper, count }));
  const value = sumTerms(sampleOf(rows), laws[name].standard, 0, -0.3, 0.8, emptyTerm()).value;
  expectRelative(value, naiveLogLikelihood(observations, naiveLaws[name], 0.3 / 0.8, 1 / 0.8), 1e-12);
});

test('a narrow interval is its width times the density, and its derivatives those of the exact value', () => {
  for (const { standard } of Object.values(laws)) {
    const width = 1e-7;
    const narrow = sumTerms(
      sampleOf([[0.7 - width / 2, 0.7 + width / 2, 1]]),
      standard,
      0,
      -0.3,
      0.8,
      emptyTerm(),
    );
    const exact = sumTerms(sampleOf([[0.7, 0.7, 1]]), standard, 0, -0.3, 0.8, emptyTerm());
    expectRelative(narrow.value - Math.log(width), exact.value, 1e-8);
    for (const key of ['predictor', 'steepness', 'predictor2', 'cross', 'steepness2'] as const)
      expectRelative(narrow[key], exact[key], 1e-7, key);
  }
});

test('no seam where narrow intervals take over from differences', () => {
  for (const { standard } of Object.values(laws)) {
    // Two intervals side by side are one: log(e^a + e^b), for widths around the change.
    for (const width of [0.05, 0.1, 0.15, 0.2, 0.3, 0.5]) {
      const of = (low: number, high: number) =>
        sumTerms(sampleOf([[low, high, 1]]), standard, 0, 0, 1, emptyTerm()).value;
      const halves = Math.log(
        Math.exp(of(0.3, 0.3 + width / 2)) + Math.exp(of(0.3 + width / 2, 0.3 + width)),
      );
      expect(Math.abs(of(0.3, 0.3 + width) - halves)).toBeLessThan(2e-14);
    }
  }
});

test('far tails stay finite where log(1 − cdf) would not', () => {
  for (const { standard } of [laws.normal, laws.logistic]) {
    const term = sumTerms(
      sampleOf([
        [40, Infinity, 1],
        [39, 41, 1],
        [-Infinity, -40, 1],
      ]),
      standard,
      0,
      0,
      1,
      emptyTerm(),
    );
    for (const value of Object.values(term)) expect(Number.isFinite(value)).toBe(true);
  }
});
