import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DocumentKind } from '../../src/documents/load.ts';
import { documentOf } from '../../src/documents/load.ts';
import { InputError } from '../../src/problem/problem.ts';
import { read } from './marked.ts';

const GOOD: [DocumentKind, string][] = [
  ['protocol', 'protocols/pinch-wide-low-pressure.yaml'],
  ['protocol', 'protocols/drum-two-block.yaml'],
  ['rig', 'shared/rigs/drop-2.yaml'],
  ['construction', 'shared/constructions/C-114.yaml'],
  ['specification', 'shared/specifications/trail-casing.yaml'],
  ['run', 'fixtures/demo/run.yaml'],
];

/** What people and broken disks put into files. */
const SCRAPS = [
  '',
  ':',
  '- ',
  '{',
  '}',
  '[',
  ']',
  '\t',
  '\n',
  '  ',
  '"',
  "'",
  '|',
  '>',
  '&a ',
  '*a',
  '!!x ',
  '? ',
  '#',
  '%',
  '±',
  '-',
  '1e999',
  'NaN',
  '__proto__: 1\n',
  'constructor: {}\n',
  '\u202e',
  '\0',
  '---\n',
  '<<: *a\n',
  '0x1',
  ',',
  '\u{1f6b2}',
  '\r',
];

/** A scrap in place of some of the text, a few times over. */
const mutation = fc.array(
  fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    drop: fc.nat(12),
    put: fc.constantFrom(...SCRAPS),
  }),
  { minLength: 1, maxLength: 4 },
);

describe('a document with random damage', () => {
  it.each(GOOD)('%s %s is read or refused, never a crash', (kind, path) => {
    const good = readFileSync(path, 'utf8');
    fc.assert(
      fc.property(mutation, (edits) => {
        let text = good;
        for (const { at, drop, put } of edits) {
          const from = Math.floor(at * text.length);
          text = text.slice(0, from) + put + text.slice(from + drop);
        }
        try {
          read(kind, text);
        } catch (error) {
          if (!(error instanceof InputError)) throw error;
          const lines = text.split('\n').length;
          expect(error.problems.length).toBeGreaterThan(0);
          for (const { line, column, message } of error.problems) {
            expect(message).not.toMatch(/[\x00-\x09\x0b-\x1f\u202e]/);
            if (line !== null) expect(line).toBeLessThanOrEqual(lines);
            if (column !== null) expect(column).toBeGreaterThanOrEqual(1);
          }
        }
      }),
      { numRuns: 150, seed: 20260309 },
    );
  });

  it('random bytes are read or refused, never a crash', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        try {
          documentOf(bytes, 'a.yaml', 'run');
        } catch (error) {
          if (!(error instanceof InputError)) throw error;
        }
      }),
      { numRuns: 1000, seed: 20260309 },
    );
  });
});
