import { describe, expect, it } from 'vitest';
import type { Waiver } from '../../src/documents/kinds.ts';
import type { Verdict } from '../../src/result/criterion.ts';
import { waive } from '../../src/verdict/waive.ts';

// What a waiver may do is the and the trade's: common practice, no source.

const waiver = (changes: Partial<Waiver> = {}): Waiver =>
  ({ id: 'W-1', role: 'quality', expires: '2026-06-30', ...changes }) as Waiver;
const PLAIN = { safety: false };
const SAFETY = { safety: true };

describe('waive', () => {
  it.each<[Verdict, Verdict]>([
    ['fail', 'waived'],
    ['inconclusive', 'waived'],
    ['not-tested', 'not-tested'],
    ['invalid', 'invalid'],
    ['pass', 'pass'],
    ['external', 'external'],
  ])('makes of %s %s', (verdict, expected) => {
    expect(waive(PLAIN, verdict, [waiver()], '2026-01-01').verdict).toBe(expected);
  });

  it('counts on the last day and not on the next, in any year', () => {
    for (const expires of ['2026-06-30', '2026-12-31', '2028-02-29']) {
      const next = new Date(Date.parse(`${expires}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);
      expect(waive(PLAIN, 'fail', [waiver({ expires })], expires).verdict).toBe('waived');
      expect(waive(PLAIN, 'fail', [waiver({ expires })], next).verdict).toBe('fail');
    }
  });

  it('of a safety criterion asks for the role safety, and for no other elsewhere', () => {
    for (const role of ['quality', 'technical'] as const) {
      expect(waive(SAFETY, 'fail', [waiver({ role })], '2026-01-01')).toMatchObject({
        verdict: 'fail',
        notes: [expect.stringContaining('needs the role safety')],
      });
    }
    expect(waive(SAFETY, 'fail', [waiver({ role: 'safety' })], '2026-01-01').verdict).toBe('waived');
    expect(waive(PLAIN, 'fail', [waiver({ role: 'safety' })], '2026-01-01').verdict).toBe('waived');
  });

  it('takes of several that count the one that ends last, and tells of those that do not', () => {
    const waivers = [
      waiver({ id: 'A', expires: '2026-03-01' }),
      waiver({ id: 'B', expires: '2026-12-31' }),
      waiver({ id: 'C', expires: '2026-07-01' }),
    ];
    const waived = waive(PLAIN, 'fail', waivers, '2026-06-01');
    expect(waived.waiver?.id).toBe('B');
    expect(waived.notes).toEqual(['waiver A counts as none: it ended on 2026-03-01']);
  });
});
