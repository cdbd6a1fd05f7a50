import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bracketRoot, findRoot } from '../../src/statistics/root.ts';

describe('root', () => {
  it('finds known roots to the last digits', () => {
    // √2 and the fixed point of the cosine (OEIS A003957)
    expect(findRoot((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 15);
    expect(findRoot((x) => Math.cos(x) - x, 0, 1)).toBeCloseTo(0.7390851332151607, 15);
    expect(findRoot((x) => x - 3, 3, 9)).toBe(3);
    expect(findRoot((x) => x, -1, 1)).toBe(0);
  });

  it('stays in the bracket and needs few evaluations, on smooth and on awkward functions', () => {
    const awkward = [
      (x: number) => Math.expm1(x),
      (x: number) => Math.cbrt(x),
      (x: number) => x ** 9,
      (x: number) => Math.sign(x) * 1e-300,
      (x: number) => (x < 0 ? -Infinity : x),
    ];
    const end = fc.double({ min: 1e-3, max: 300, noNaN: true });
    fc.assert(
      fc.property(end, end, fc.double({ min: -50, max: 50, noNaN: true }), (left, right, shift) => {
        for (const f of awkward) {
          let count = 0;
          const root = findRoot(
            (x) => {
              count++;
              expect(x).toBeGreaterThanOrEqual(shift - left);
              expect(x).toBeLessThanOrEqual(shift + right);
              return f(x - shift);
            },
            shift - left,
            shift + right,
            { tolerance: 1e-9 },
          );
          expect(Math.abs(root - shift)).toBeLessThan(2e-9);
          expect(count).toBeLessThan(150);
        }
      }),
    );
  });

  it('refuses a bracket without a change of sign', () => {
    expect(() => findRoot((x) => x * x + 1, -1, 1)).toThrow(/no sign change between -1 \(2\) and 1 \(2\)/);
    expect(() => findRoot(() => Number.NaN, -1, 1)).toThrow(RangeError);
  });

  it('brackets by doubling steps within limits, or says there is no root', () => {
    const [a, b] = bracketRoot((x) => x - 1000, 0, 1)!;
    expect(a).toBeLessThan(1000);
    expect(b).toBeGreaterThanOrEqual(1000);
    expect(bracketRoot((x) => x - 1000, 0, 1, { max: 999 })).toBeNull();
    expect(bracketRoot((x) => x, 0, 1)).toEqual([0, 0]);
    expect(bracketRoot((x) => -x - 7, 0, 1, { max: 0 })).toEqual([-7, -3]);
  });
});
