// Widths of wide characters: Unicode Standard Annex 11 (two columns for W and F); common practice for terminals.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { displayWidth, wrap } from '../../../src/reports/text/wrap.ts';

describe('displayWidth', () => {
  it('counts wide characters twice and combining ones not at all', () => {
    expect(displayWidth('長い')).toBe(4);
    expect(displayWidth('e\u0301')).toBe(1);
    expect(displayWidth('Reifen ●')).toBe(8);
  });
});

describe('wrap', () => {
  it('breaks at spaces', () => {
    expect(wrap('one two three four', 9)).toEqual(['one two', 'three', 'four']);
  });

  it('breaks a word that is longer than a line, and wide ones by their width', () => {
    expect(wrap('abcdefghij k', 4)).toEqual(['abcd', 'efgh', 'ij k']);
    expect(wrap('長長長長長', 5)).toEqual(['長長', '長長', '長']);
  });

  it('keeps a number and its unit together', () => {
    expect(wrap('limit of 45 J exactly', 12)).toEqual(['limit of', '45 J exactly']);
    expect(wrap('limit of 45 Jumps', 12)).toEqual(['limit of 45', 'Jumps']);
  });

  it('loses nothing and exceeds no line', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.integer({ min: 4, max: 30 }), (text, width) => {
        const lines = wrap(text, width);
        for (const line of lines) expect(displayWidth(line)).toBeLessThanOrEqual(width);
        const bare = (of: string) => of.replaceAll(/[ \u00a0]/gu, '');
        expect(bare(lines.join(''))).toBe(bare(text));
      }),
    );
  });
});
