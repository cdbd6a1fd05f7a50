import { describe, expect, it } from 'vitest';
import { accepts, guarded, limitInWords, reaches } from '../../src/verdict/limit.ts';

describe('reaches', () => {
  it('takes what is equal on paper as equal', () => {
    expect(0.1 + 0.2 >= 0.3 && 0.3 >= 0.1 + 0.2).toBe(false);
    expect(reaches(0.3, 0.1 + 0.2)).toBe(true);
    expect(reaches(0.1 + 0.2, 0.3)).toBe(true);
    // 1.1 g ± 10 %: 1.1 · 1.1 is 1.2100000000000002 in binary.
    expect(reaches(1.21, 1.1 * 1.1)).toBe(true);
  });

  it('forgives no difference that a number of twelve digits can show', () => {
    expect(reaches(44.9999999999, 45)).toBe(false);
    expect(reaches(0, 1e-300)).toBe(false);
    expect(reaches(-45.0000000001, -45)).toBe(false);
  });
});

describe('accepts', () => {
  it('includes both ends', () => {
    const range = { lower: 855, upper: 945 };
    expect([854.9, 855, 900, 945, 945.1].map((value) => accepts(range, value))).toEqual([
      false,
      true,
      true,
      true,
      false,
    ]);
  });
});

describe('guarded', () => {
  it('moves each end inwards', () => {
    expect(guarded({ lower: 45, upper: null }, 2)).toEqual({ lower: 47, upper: null });
    expect(guarded({ lower: 40, upper: 50 }, 2)).toEqual({ lower: 42, upper: 48 });
  });
});

describe('limitInWords', () => {
  it('writes limits as a person would', () => {
    expect(limitInWords({ lower: 45, upper: null }, 'J')).toBe('at least 45 J');
    expect(limitInWords({ lower: null, upper: 0.1 }, 'bar')).toBe('at most 0.1 bar');
    expect(limitInWords({ lower: 855, upper: 1.1 * 900 }, 'g')).toBe('855 to 990 g');
    expect(limitInWords({ lower: 0.6, upper: null }, '1')).toBe('at least 0.6');
  });
});
