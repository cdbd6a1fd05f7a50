import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../../src/conformance/catalogue/catalogue.ts';
import { analyze } from '../../../src/jobs/analyze.ts';
import { germanDeviation, germanRecord } from '../../../src/reports/words/german-record.ts';
import { GERMAN_TITLES } from '../../../src/reports/words/german-titles.ts';

/** Every run among the fixtures: a deviation of each code, methods, rigs, drums. */
const RUNS = ['fixtures', 'fixtures/deviations', 'fixtures/methods', 'fixtures/rigs']
  .flatMap((folder) => readdirSync(folder).map((name) => join(folder, name, 'run.yaml')))
  .filter((path) => existsSync(path));

/** Words that no German sentence has, but in names that the record quotes. */
const ENGLISH = /\b(?:the|of|is|are|with|and|from|drops?|failed|survived|line|tyres?)\b/;
const unquoted = (text: string) => text.replace(/"[^"]*"|\([^)]*\)/g, '');

const NOTHING: AsyncIterable<Uint8Array> = { async *[Symbol.asyncIterator]() {} };

describe('the record in German', () => {
  it('has a title and an effect for every code of the catalogue', () => {
    expect(CATALOGUE.size).toBeGreaterThan(80);
    for (const [code, { effect }] of CATALOGUE) {
      expect(GERMAN_TITLES.has(code), code).toBe(true);
      expect(germanRecord(effect).isRecord, effect).toBeUndefined();
    }
  });

  it('has every sentence of every fixture', { timeout: 60_000 }, async () => {
    expect(RUNS.length).toBeGreaterThan(50);
    const seen = new Map<string, string>();
    const foreign = new Set<string>();
    for (const path of RUNS) {
      const result = await analyze({ kind: 'run', path }, NOTHING).catch(() => null);
      if (result === null) continue;
      const { conformance, notes, defaults, estimates } = result;
      const sentences = [
        ...notes,
        ...defaults,
        ...(conformance.why === null ? [] : [conformance.why]),
        ...estimates.flatMap(({ why }) => why ?? []),
        ...(result.kind === 'impact' ? result.provisional : []),
      ];
      for (const [english, { text, isRecord }] of [
        ...conformance.deviations.map((own) => [own.message, germanDeviation(own)] as const),
        ...sentences.map((sentence) => [sentence, germanRecord(sentence)] as const),
      ]) {
        if (isRecord) foreign.add(english);
        seen.set(english, text);
      }
    }
    expect(seen.size).toBeGreaterThan(80);
    expect([...foreign]).toEqual([]);
    for (const text of seen.values()) expect(unquoted(text)).not.toMatch(ENGLISH);
  });

  it('writes numbers with a comma and leaves names, versions and places alone', () => {
    const { text } = germanDeviation({
      code: 'DROP-01',
      message: 'height 579.1 mm, planned 575 mm ± 1 mm; the height as it was is used.',
    });
    expect(text).toBe('Höhe 579,1 mm, geplant 575 mm ± 1 mm; die Höhe, wie sie war, wird verwendet.');
    const made = germanDeviation({
      code: 'DROP-55',
      message: 'made by protocol "a@0.9.0", analysed by "a@1.0.0"; results are judged by their own version.',
    });
    expect(made.text).toContain('"a@0.9.0"');
    expect(germanRecord('a/b.csv:12: the same as c.csv, byte for byte: read once').text).toMatch(
      /^a\/b\.csv:12: /,
    );
  });

  it('keeps a sentence that is new, and says in German what it is about', () => {
    expect(germanRecord('Something else.')).toEqual({ text: 'Something else.', isRecord: true });
    const { text, isRecord } = germanDeviation({
      code: 'DROP-01',
      message: 'something new; the height as it was is used.',
    });
    expect(isRecord).toBe(true);
    expect(text).toBe(
      'Höhe neben der geplanten Stufe; die Höhe, wie sie war, wird verwendet. (something new; the height as it was is used.)',
    );
  });
});
