// Source of the numbers: tests/reference/sen-35 (JCGM 106:2012 as recalled, recomputed; its page says what was seen).
import { describe, expect, it } from 'vitest';
import { conformanceProbability, guardWidth } from '../../src/verdict/conformance-probability.ts';
import reference from '../reference/sen-35/SEN-35-decision-rules.json' with { type: 'json' };

const expected = (name: string): number[] => {
  const found = reference.expected.find((entry) => entry.name.startsWith(name));
  if (found === undefined) throw new Error(`no reference value ${name}`);
  return [found.value].flat();
};

describe('conformanceProbability', () => {
  it('is that of the breakdown-voltage example: −5.47 V, u = 0.05 V, at most −5.40 V', () => {
    const chance = conformanceProbability({ lower: null, upper: -5.4 }, -5.47, 0.05);
    expect(chance).toBeCloseTo(expected('Zener')[0]!, 9);
  });

  it('is Φ(2r) at an acceptance limit r·U inside, U = 2u', () => {
    for (const [i, r] of [0.5, 0.8224, 1, 1.25, 1.5].entries()) {
      const chance = conformanceProbability({ lower: 10, upper: null }, 10 + r * 2, 1);
      expect(Math.abs(chance - expected('Phi(2r)')[i]!)).toBeLessThan(1e-4);
    }
  });

  it('is that of the worked drop energies: 8.63, 8.20 and 8.63 J against 8.0 J', () => {
    const chances = [
      [8.63, 0.134],
      [8.2, 0.134],
      [8.63, 0.4],
    ].map(([value, u]) => conformanceProbability({ lower: 8, upper: null }, value!, u!));
    for (const [i, value] of expected('y=8.63').entries()) expect(chances[i]).toBeCloseTo(value, 9);
  });

  it('of a range is what both tails leave: 0.6827 within one u of the middle', () => {
    // erf(1/√2), handbook table of the normal law.
    expect(conformanceProbability({ lower: 9, upper: 11 }, 10, 1)).toBeCloseTo(0.682689492137, 10);
  });
});

describe('guardWidth', () => {
  it('is 1.645 u at 95 %', () => {
    expect(guardWidth(0.95, 1)).toBeCloseTo(expected('z for 95 %')[0]!, 9);
    expect(8 + guardWidth(0.95, 0.134)).toBeCloseTo(expected('example TL=8.0 J')[0]!, 9);
  });
});
