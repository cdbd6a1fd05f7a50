import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../src/conformance/catalogue/catalogue.ts';
import { DRUM_CATALOGUE } from '../../src/conformance/catalogue/drum.ts';
import { DRUM_VISIBILITY } from '../../src/conformance/drum-visibility.ts';
import { visibilityMarkdown } from '../../src/conformance/visibility.ts';

describe('what data can show of a departure of a drum test', () => {
  it('is said for DRUM-01 to DRUM-48, each once and in order, as the catalogue has them', () => {
    const codes = Array.from({ length: 48 }, (_, index) => `DRUM-${String(index + 1).padStart(2, '0')}`);
    expect(DRUM_VISIBILITY.map(({ code }) => code)).toEqual(codes);
    expect(DRUM_CATALOGUE.map(({ code }) => code)).toEqual(codes);
  });

  it('is printed in drum-visibility.md as it stands in the table', () => {
    const printed = visibilityMarkdown(CATALOGUE, { rows: DRUM_VISIBILITY, test: 'drum' });
    expect(readFileSync('src/conformance/drum-visibility.md', 'utf8')).toBe(printed);
  });
});
