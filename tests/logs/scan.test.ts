import { describe, expect, it } from 'vitest';
import { LONGEST_ROW } from '../../src/logs/fault.ts';
import { Row } from '../../src/logs/row.ts';
import { RowScanner } from '../../src/logs/scan.ts';

/** Rows as `line: cells`, faults as `line:column code`. */
function scanned(...pieces: string[]): string[] {
  const scanner = new RowScanner(',');
  const all: string[] = [];
  let isOver = false;
  const note = (items: Iterable<Row | { line: number; column: number; code: string; isFatal: boolean }>) => {
    for (const item of isOver ? [] : items) {
      isOver = !(item instanceof Row) && item.isFatal;
      all.push(
        item instanceof Row
          ? `${item.line}: ${JSON.stringify(item.cells)}${item.isEnded ? '' : ' open'}${item.isCut ? ' cut' : ''}`
          : `${item.line}:${item.column} ${item.code}`,
      );
    }
  };
  for (const piece of pieces) note(scanner.push(piece));
  note(scanner.end());
  return all;
}

describe('RowScanner', () => {
  const text = 'a,"b\r\n""c""",d\r\ne,,\rf,"",""\n\n"g","h,""",i';
  const rows = [
    '1: ["a","b\\r\\n\\"c\\"","d"]',
    '3: ["e","",""]',
    '4: ["f","",""]',
    '5: [""]',
    '6: ["g","h,\\"","i"] open',
  ];

  it('reads quotes, doubled quotes, breaks inside quotes and all three line ends', () => {
    expect(scanned(text)).toEqual(rows);
  });

  it.each(Array.from({ length: text.length - 1 }, (_, i) => i + 1))('is the same when cut at %i', (cut) => {
    expect(scanned(text.slice(0, cut), text.slice(cut))).toEqual(rows);
  });

  it('is the same character by character', () => {
    expect(scanned(...text)).toEqual(rows);
  });

  it('leaves a quote inside a plain cell alone', () => {
    expect(scanned('26" rim,b "c"\n')).toEqual(['1: ["26\\" rim","b \\"c\\""]']);
  });

  it('has one fault for an unclosed quote, where it opened', () => {
    expect(scanned('a,b\nc,"d\ne,f\n')).toEqual(['1: ["a","b"]', '2:3 unclosed-quote']);
    expect(scanned('a,b\nc,"d\ne,"f"\n')).toEqual(['1: ["a","b"]', '2:3 unclosed-quote']);
  });

  it('takes a quote that is open where the last line breaks off as a cut', () => {
    expect(scanned('a,b\nc,"d')).toEqual(['1: ["a","b"]', '2: ["c","d"] open cut']);
  });

  it('loses only the row that has text behind a quote', () => {
    expect(scanned('"a"x,"b\nc,d\n')).toEqual(['1:4 text-after-quote', '2: ["c","d"]']);
  });

  it('cuts NULs at the end and counts them', () => {
    const scanner = new RowScanner(',');
    expect([...scanner.push('a\nb\n\0\0'), ...scanner.push('\0')]).toHaveLength(2);
    expect(scanner.padding).toEqual({ line: 3, column: 1, count: 3 });
  });

  it('stops at NULs with text behind them', () => {
    expect(scanned('a\nb\0', '\0', 'c\n')).toEqual(['1: ["a"]', '2:2 nul-bytes']);
  });

  it('bounds the memory of one row', () => {
    const half = 'x'.repeat(LONGEST_ROW / 2);
    expect(scanned(`a\n${half}`, half)).toHaveLength(2);
    const scanner = new RowScanner(',');
    const faults = [...scanner.push(`a\n"b`), ...scanner.push(half), ...scanner.push(half)].slice(1);
    expect(faults).toMatchObject([{ line: 2, column: 1, code: 'unclosed-quote', isFatal: true }]);
    const plain = new RowScanner(',');
    expect([...plain.push(`a\n${half}`), ...plain.push(`${half}x`)].slice(1)).toMatchObject([
      { line: 2, code: 'row-too-long', isFatal: true },
    ]);
    expect(scanned(`${half}${half}x\nb\n`)).toEqual([`1:${LONGEST_ROW + 1} row-too-long`]);
  });
});
