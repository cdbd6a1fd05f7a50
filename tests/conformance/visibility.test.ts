import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../src/conformance/catalogue/catalogue.ts';
import { DROP_CATALOGUE } from '../../src/conformance/catalogue/drop.ts';
import { VISIBILITY, visibilityMarkdown } from '../../src/conformance/visibility.ts';

describe('what data can show of a departure', () => {
  it('is said for every code of the catalogue, in its order', () => {
    expect(VISIBILITY.map(({ code }) => code)).toEqual(DROP_CATALOGUE.map(({ code }) => code));
  });

  it('is printed in visibility.md as it stands in the table', () => {
    expect(readFileSync('src/conformance/visibility.md', 'utf8')).toBe(visibilityMarkdown(CATALOGUE));
  });
});
