import { describe, expect, it } from 'vitest';
import { amend } from '../../src/impact/amend.ts';
import type { Amendment } from '../../src/logs/amendments.ts';
import type { InputError } from '../../src/problem/problem.ts';
import { logOf } from './invented.ts';

// How amendments work: CONTRACT (files: amendments) and ISO/IEC 17025:2017, 7.5.2, as the trade page restates it:
// originals stay, both states are shown, each change with its reason, date and author.

const LOG = logOf('500o 525x 500o 525o', (index) => ({ number: index + 7 }));

const entry = (changes: Partial<Amendment>): Amendment => ({
  file: 'amendments.csv',
  line: 2,
  log: null,
  logLine: 3,
  drop: null,
  what: 'outcome',
  old: 'failed',
  new: 'survived',
  reason: 'DROP-43',
  by: 'T2',
  on: '2026-03-10',
  ...changes,
});

function problems(...journal: Partial<Amendment>[]) {
  try {
    amend(
      LOG,
      journal.map((changes, i) => entry({ line: i + 2, ...changes })),
    );
  } catch (error) {
    return (error as InputError).problems.map(({ line, code }) => `${code}@${line}`);
  }
  return [];
}

describe('a journal of amendments', () => {
  it('changes a row named by its line or by its drop, and leaves the log as it was', () => {
    const before = structuredClone(LOG);
    const byLine = amend(LOG, [entry({})]);
    const byDrop = amend(LOG, [entry({ logLine: null, drop: 8 })]);
    expect(byLine.drops.map(({ outcome }) => outcome)).toEqual(Array(4).fill('survived'));
    expect(byDrop.drops).toEqual(byLine.drops);
    expect(LOG).toEqual(before);
    expect([...byLine.acted]).toEqual([[byLine.drops[1], 'failed']]);
    expect(byLine.applied[0]!.drop.outcome).toBe('failed');
  });

  it('follows a chain in its order', () => {
    const { drops, acted } = amend(LOG, [
      entry({}),
      entry({ old: 'survived', new: 'failed' }),
      entry({ what: 'height', old: '525', new: '530 mm', reason: 'DROP-01' }),
    ]);
    expect(drops[1]).toMatchObject({ outcome: 'failed', height: 530 });
    expect(acted.get(drops[1]!)).toBe('failed');
  });

  it('refuses a chain out of its order, at the line that does not fit', () => {
    expect(problems({ old: 'survived', new: 'failed' }, { old: 'failed', new: 'survived' })).toEqual([
      'amendment-of-another-state@2',
    ]);
    expect(problems({}, {})).toEqual(['amendment-of-another-state@3']);
  });

  it.each([
    ['a line that is not there', { logLine: 99 }, 'no-such-drop'],
    ['a drop that is not there', { logLine: null, drop: 99 }, 'no-such-drop'],
    ['a log that is not there', { log: 'other.csv' }, 'no-such-drop'],
    ['no column', { what: 'hight' }, 'unknown-column'],
    ['no outcome', { new: 'Failed' }, 'bad-value'],
    ['no reason', { reason: 'looked wrong' }, 'no-reason'],
    [
      'an exclusion by result',
      { what: 'valid', old: 'yes', new: 'no', reason: 'DROP-07' },
      'exclusion-by-result',
    ],
    [
      'an outcome taken away for its result',
      { new: 'not-evaluable', reason: 'DROP-43' },
      'exclusion-by-result',
    ],
  ] as const)('refuses %s', (_, changes, code) => {
    expect(problems(changes)).toEqual([`${code}@2`]);
  });

  it('takes a drop out for a reason that does not depend on its result', () => {
    const { drops } = amend(LOG, [
      entry({ what: 'valid', old: '', new: 'no', reason: 'DROP-16, on the video' }),
    ]);
    expect(drops[1]).toMatchObject({ valid: false, reason: 'DROP-16, on the video' });
  });

  it('reports all that is wrong at once', () => {
    expect(problems({ logLine: 99 }, { what: 'hight' }, { reason: '' })).toHaveLength(3);
  });
});
