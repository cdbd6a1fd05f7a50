// The keys are those of CONTRACT, "The JSON of analyze --json".
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analysisDocument } from '../../src/reports/json.ts';
import { anyResult } from './random-result.ts';
import { long, passing, undecided } from './results.ts';

const read = (result: typeof passing) => JSON.parse(analysisDocument(result, '9.8.7'));

describe('analysisDocument', () => {
  it('has the keys of the contract, in its order', () => {
    const document = read(passing);
    const promised = 'schema kind tool inputs energy conformance sample estimates criteria verdict'.split(
      ' ',
    );
    expect(Object.keys(document).filter((key) => promised.includes(key))).toEqual(promised);
    expect(document).toMatchObject({
      schema: 'tirelab.result/1',
      kind: 'impact',
      tool: { name: 'tirelab', version: '9.8.7' },
      energy: { definition: 'potential', gravity: 9.8125 },
      verdict: 'pass',
    });
    const keys = (value: object) => Object.keys(value).sort().join(' ');
    expect(keys(document.inputs[1])).toBe('bytes path role rows sha256');
    expect(keys(document.sample)).toBe('censored drops failures specimens validDrops');
    expect(keys(document.conformance.deviations[0])).toBe(
      'code count drop file line message scope severity specimen',
    );
    expect(keys(document.estimates[0])).toBe(
      'distribution drops interval method quantity specimens standardError unit value why',
    );
    expect(keys(document.estimates[0].interval)).toBe('level lower method sides upper');
    expect(document.estimates[1].probability).toBe(0.1);
    expect(keys(document.criteria[0])).toBe(
      'basis bounds confidence counted estimate id limit quantity rule specimens standardError verdict why',
    );
    expect(keys(document.criteria[0].limit)).toBe('atLeast unit');
  });

  it('keeps numbers at full precision and open ends null', () => {
    const third = { ...passing.estimates[0]!, value: 1 / 3 };
    expect(read({ ...passing, estimates: [third] }).estimates[0].value).toBe(1 / 3);
    expect(read(undecided).estimates[0].interval.upper).toBeNull();
  });

  it('has no number that is not finite, and no minus nought', () => {
    const odd = { ...passing.estimates[0]!, value: Number.NaN, standardError: Infinity };
    const text = analysisDocument({ ...passing, estimates: [odd] }, '1');
    expect(text).not.toMatch(/NaN|Infinity/);
    expect(JSON.parse(text).estimates[0]).toMatchObject({ value: null, standardError: null });
    expect(analysisDocument({ ...passing, estimates: [{ ...odd, value: -0 }] }, '1')).toContain(
      '"value": 0,',
    );
  });

  it('reads back as what went in', () => {
    fc.assert(
      fc.property(anyResult, (result) => {
        const { estimates, criteria, conformance, path } = JSON.parse(analysisDocument(result, '1'));
        // JSON knows no minus nought.
        const same = (value: unknown) => JSON.parse(JSON.stringify(value));
        expect(estimates).toEqual(same(result.estimates));
        expect(criteria).toEqual(same(result.criteria));
        expect(conformance).toEqual(same(result.conformance));
        expect(path).toEqual(same(result.path));
      }),
      { numRuns: 100 },
    );
  });

  it('gives a drop a line, so that a long log stays readable', () => {
    const lines = analysisDocument(long, '1').split('\n');
    expect(lines.filter((line) => line.includes('"height"'))).toHaveLength(100_000);
    expect(lines.length).toBeLessThan(101_000);
  });
});
