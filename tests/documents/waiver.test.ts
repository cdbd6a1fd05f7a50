import { describe, expect, it } from 'vitest';
import { marked, problemsOf, read } from './marked.ts';

const WAIVER = `format: tirelab.waiver/1
id: W-07
scope: { specification: trail-casing@1.0.0, criterion: tail, construction: C@116@1, market: a, batches: B07 to B09 }
owner: head of quality, desk 2
role: quality
reason: sold with another marking
expires: 2026-09-30
`;

describe('a waiver', () => {
  it('is read with its scope', () => {
    expect(read('waiver', WAIVER)).toMatchObject({
      id: 'W-07',
      specification: 'trail-casing@1.0.0',
      criterion: 'tail',
      construction: 'C@116@1',
      market: 'a',
      batches: 'B07 to B09',
      owner: 'head of quality, desk 2',
      role: 'quality',
      expires: '2026-09-30',
      risk: null,
    });
  });

  it.each(['2026-12-31', '2028-02-29', '2000-02-29'])('takes %s as its last day', (day) => {
    expect(problemsOf('waiver', WAIVER.replace('2026-09-30', day))).toEqual([]);
  });

  // Days of the Gregorian calendar: 2100 is no leap year.
  it.each([
    '2026-02-29',
    '2100-02-29',
    '2026-13-01',
    '2026-00-10',
    '30.09.2026',
    '2026-9-30',
    'never',
    '2026-09-30T12:00',
  ])('does not take %s', (day) => {
    const { text, expected } = marked(WAIVER.replace('2026-09-30', `▶"${day}"`), 'bad-value');
    expect(problemsOf('waiver', text)).toEqual(expected);
  });

  it.each<[string, string, string[]]>([
    [
      'no owner, reason or scope',
      `▶▶▶${WAIVER.replace(/^(?:owner|reason|scope).*\n/gmu, '')}`,
      ['missing-key', 'missing-key', 'missing-key'],
    ],
    ['an owner that is nothing', WAIVER.replace('head of quality, desk 2', '▶""'), ['bad-text']],
    ['a role of the lab', WAIVER.replace('role: quality', 'role: ▶laboratory'), ['unknown-word']],
    [
      'pins without versions',
      WAIVER.replace('trail-casing@1.0.0', '▶trail-casing').replace('C@116@1', '▶C-116'),
      ['missing-version', 'missing-version'],
    ],
    ['a key of another kind', WAIVER.replace('role:', '▶rolle: x\nrole:'), ['unknown-key']],
  ])('with %s is told at its place', (_name, text, codes) => {
    const { text: clean, expected } = marked(text, ...codes);
    expect(problemsOf('waiver', clean)).toEqual(expected);
  });
});
