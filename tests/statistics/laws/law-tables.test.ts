import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { betaLaw } from '../../../src/statistics/laws/beta.ts';
import { binomialLaw, poissonLaw } from '../../../src/statistics/laws/counts.ts';
import { fisherLaw } from '../../../src/statistics/laws/fisher.ts';
import { chiSquaredLaw, gammaLaw } from '../../../src/statistics/laws/gamma.ts';
import { noncentralStudentLaw } from '../../../src/statistics/laws/noncentral-student.ts';
import { normal } from '../../../src/statistics/laws/normal.ts';
import { studentLaw } from '../../../src/statistics/laws/student.ts';
import { studentizedRangeLaw } from '../../../src/statistics/laws/studentized-range.ts';
import { readTable, relativeError, worst } from '../special/table.ts';

const read = (path: string) =>
  JSON.parse(readFileSync(new URL(`../../reference/${path}`, import.meta.url), 'utf8'));
const expectedOf = (reference: { expected: { name: string; value: number }[] }, name: string) =>
  reference.expected.find((entry) => entry.name === name)!.value;

interface Row {
  law: string;
  parameters: [number, number];
  at: number;
  value: number;
}

describe('quantiles and counts as R has them', () => {
  // R 4.2.2, tests/reference/scripts/special-laws.R; where R itself loses digits, the script leaves the rows out.
  const found: Record<string, (row: Row) => number> = {
    chiSquared: ({ parameters, at }) => chiSquaredLaw(parameters[0]).quantile(at),
    gamma: ({ parameters, at }) => gammaLaw(...parameters).quantile(at),
    student: ({ parameters, at }) => studentLaw(parameters[0]).quantile(at),
    fisher: ({ parameters, at }) => fisherLaw(...parameters).quantile(at),
    beta: ({ parameters, at }) => betaLaw(...parameters).quantile(at),
    binomialCdf: ({ parameters, at }) => binomialLaw(...parameters).cdf(at),
    binomialSf: ({ parameters, at }) => binomialLaw(...parameters).sf(at),
    poissonCdf: ({ parameters, at }) => poissonLaw(parameters[0]).cdf(at),
    poissonSf: ({ parameters, at }) => poissonLaw(parameters[0]).sf(at),
    binomialQuantile: ({ parameters, at }) => binomialLaw(...parameters).quantile(at),
    poissonQuantile: ({ parameters, at }) => poissonLaw(parameters[0]).quantile(at),
  };
  const rows: Row[] = read('special/laws-r.json').rows;
  it.each(Object.keys(found))('%s', (law) => {
    const own = rows.filter((row) => row.law === law);
    expect(own.length).toBeGreaterThan(4);
    for (const row of own) {
      const error = relativeError(found[law]!(row), row.value);
      expect(error, JSON.stringify({ ...row, found: found[law]!(row) })).toBeLessThan(1e-11);
    }
  });
});

describe('published cases', () => {
  it('Clopper–Pearson intervals (NIST e-Handbook 7.2.4.1; ZF-03)', () => {
    const reference = read('zf-03/ZF-03-clopper-pearson.json');
    const lower = (x: number, n: number, tail: number) =>
      x === 0 ? 0 : betaLaw(x, n - x + 1).quantile(tail);
    const upper = (x: number, n: number, tail: number) => betaLaw(x + 1, n - x).quantileOfSf(tail);
    expect(relativeError(lower(4, 20, 0.05), expectedOf(reference, 'NIST p_L'))).toBeLessThan(1e-14);
    expect(relativeError(upper(4, 20, 0.05), expectedOf(reference, 'NIST p_U'))).toBeLessThan(1e-14);
    for (const [x, n] of reference.data.table as [number, number][]) {
      expect(relativeError(lower(x, n, 0.025), expectedOf(reference, `${x}/${n} lower 95 %`))).toBeLessThan(
        1e-13,
      );
      expect(relativeError(upper(x, n, 0.025), expectedOf(reference, `${x}/${n} upper 95 %`))).toBeLessThan(
        1e-13,
      );
    }
  });

  it('Garwood limits of a Poisson mean (CMP-10)', () => {
    const reference = read('cmp-10/CMP-10-garwood.json');
    for (const k of reference.data.k as number[]) {
      const lower = k === 0 ? 0 : 0.5 * chiSquaredLaw(2 * k).quantile(0.025);
      const upper = 0.5 * chiSquaredLaw(2 * k + 2).quantileOfSf(0.025);
      expect(relativeError(lower, expectedOf(reference, `${k} lower`))).toBeLessThan(1e-13);
      expect(relativeError(upper, expectedOf(reference, `${k} upper`))).toBeLessThan(1e-13);
    }
  });

  it('one-sided tolerance factors (ISO 16269-6, Owen 1963; SEN-10)', () => {
    const { table } = read('sen-10/SEN-10-one-sided-tolerance-factors.json').data;
    const entries = Object.entries(table as Record<string, Record<string, number>>);
    expect(entries.length).toBeGreaterThan(5);
    for (const [n, row] of entries) {
      for (const [key, expected] of Object.entries(row)) {
        const [p, confidence] = key.slice(1).split('_c').map(Number) as [number, number];
        const root = Math.sqrt(Number(n));
        const law = noncentralStudentLaw(Number(n) - 1, normal.quantile(p) * root);
        const factor = law.quantile(confidence) / root;
        // R's series for the noncentral t is good to about 1e-12.
        expect(Math.abs(factor - expected), `${n} ${key}`).toBeLessThan(1e-9 * Math.max(1, expected));
      }
    }
  });

  it('studentized range and adjusted p of Tukey’s comparison (NIST e-Handbook 7.4.7.1; CMP-01)', () => {
    const reference = read('cmp-01/CMP-01-nist-tukey.json');
    const law = studentizedRangeLaw(4, 16);
    // R's algorithm stops at 8 digits.
    expect(relativeError(law.quantile(0.95), expectedOf(reference, 'q(0.05; 4, 16)'))).toBeLessThan(1e-7);
    const error = Math.sqrt(expectedOf(reference, 'MSE') / 5);
    const means = (reference.data.groups as number[][]).map((group) => group.reduce((a, b) => a + b) / 5);
    for (const [i, j] of [
      [1, 2],
      [1, 3],
      [1, 4],
      [2, 3],
      [2, 4],
      [3, 4],
    ] as const) {
      const q = Math.abs(means[i - 1]! - means[j - 1]!) / error;
      const p = expectedOf(reference, `pair ${i}-${j} Tukey adjusted p`);
      expect(relativeError(law.sf(q), p)).toBeLessThan(1e-7);
    }
  });
});

describe('against quadrature with 20 to 30 digits', () => {
  // mpmath, tests/reference/scripts/special-tables.py; measured 1.3e-15 and 8e-16.
  it('noncentral t, both tails', () => {
    const rows = readTable('noncentral-t');
    const law = ({ degrees, shift }: Record<string, number>) => noncentralStudentLaw(degrees!, shift!);
    expect(worst(rows, 'cdf', (row) => law(row).cdf(row.t!))).toBeLessThan(5e-15);
    expect(worst(rows, 'sf', (row) => law(row).sf(row.t!))).toBeLessThan(5e-15);
  });

  it('studentized range', () => {
    const rows = readTable('studentized-range');
    const found = ({ groups, degrees, q }: Record<string, number>) =>
      studentizedRangeLaw(groups!, degrees!).sf(q!);
    expect(worst(rows, 'sf', found)).toBeLessThan(5e-15);
  });
});
