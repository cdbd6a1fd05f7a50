import { describe, expect, it } from 'vitest';
import { csvRow } from '../../src/reports/csv-cell.ts';

// Quoting: RFC 4180, section 2. What a spreadsheet takes for a formula: common practice, no source.
describe('csvRow', () => {
  it('quotes only what needs it', () => {
    expect(csvRow(['plain', 'a,b', 'say "so"', ' blank', 1.5, null])).toBe(
      'plain,"a,b","say ""so"""," blank",1.5,',
    );
  });
  it('keeps digits, and no number that is none', () => {
    expect(csvRow([0.1 + 0.2, -0.0015, 1e-12, Number.POSITIVE_INFINITY, Number.NaN])).toBe(
      '0.30000000000000004,-0.0015,1e-12,,',
    );
  });
  it('lets no text begin as a formula, also behind blanks and quotation marks', () => {
    for (const text of [
      '=1+1',
      '+1',
      '-1',
      '@SUM(A1)',
      ' =cmd',
      '\t=1',
      '"=1',
      '＝1',
      '\r=1',
      '|calc',
      '%0A=1',
    ])
      expect(csvRow([text]).replace(/^"/, '').startsWith("'"), text).toBe(true);
    expect(csvRow(['C-114', 'a=b', '1-2'])).toBe('C-114,a=b,1-2');
  });
  it('keeps a row on one line', () => {
    expect(csvRow(['two\nlines', 'and\r\nmore'])).toBe('two lines,and more');
  });
});
