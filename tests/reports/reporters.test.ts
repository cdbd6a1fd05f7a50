import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { reporters } from '../../src/reports/reporters.ts';
import { analysisText } from '../../src/reports/text/analysis.ts';
import { anyResult } from './random-result.ts';

const plain = { version: '0.1.0', width: 80, colour: 0, unicode: true } as const;

// A test loops over the map: a new reporter is held to the same.
const loaded = await Promise.all(
  Object.entries(reporters).map(async ([name, load]) => [name, await load()] as const),
);

describe.each(loaded)('reporter %s', (_, report) => {
  it('lets no control or direction character through, whatever the names', () => {
    fc.assert(
      fc.property(anyResult, (result) => {
        expect(report(result, plain)).not.toMatch(
          /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2066-\u2069\ufeff]/u,
        );
      }),
      { numRuns: 60 },
    );
  });

  it('ends in one newline and gives the same bytes twice', () => {
    fc.assert(
      fc.property(anyResult, (result) => {
        const text = report(result, plain);
        expect(text).toMatch(/[^\n]\n$/);
        expect(report(result, plain)).toBe(text);
      }),
      { numRuns: 30 },
    );
  });
});

describe('the text reporter', () => {
  it('keeps every line within its page, and no line ends in a blank', () => {
    fc.assert(
      fc.property(anyResult, fc.constantFrom(40, 60, 80, 120), fc.boolean(), (result, width, unicode) => {
        for (const line of analysisText(result, { ...plain, width, unicode }).split('\n')) {
          expect(stringWidth(line), line).toBeLessThanOrEqual(width);
          expect(line).not.toMatch(/ $/);
        }
      }),
      { numRuns: 120 },
    );
  });

  it('says in colour what it says without', () => {
    fc.assert(
      fc.property(anyResult, (result) => {
        const coloured = analysisText(result, { ...plain, colour: 1 });
        expect(coloured).toContain('\u001b[');
        expect(coloured.replaceAll(/\u001b\[\d+m/gu, '')).toBe(analysisText(result, plain));
      }),
      { numRuns: 30 },
    );
  });
});
