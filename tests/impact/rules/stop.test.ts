import { describe, expect, it } from 'vitest';
import {
  counting,
  NO_PROGRESS,
  type Progress,
  stillLacking,
  stopReached,
} from '../../../src/impact/rules/stop.ts';

const progress = (changes: Partial<Progress>): Progress => ({ ...NO_PROGRESS, ...changes });

describe('stop rules', () => {
  it('count valid drops, specimens, reversals', () => {
    expect(stopReached({ drops: 30 }, progress({ drops: 29 }))).toBeNull();
    expect(stopReached({ drops: 30 }, progress({ drops: 30 }))).toContain('30');
    expect(stopReached({ specimens: 5 }, progress({ specimens: 5, open: 1 }))).toBeNull();
    expect(stopReached({ specimens: 5 }, progress({ specimens: 5 }))).not.toBeNull();
    expect(stopReached({ reversals: 6 }, progress({ drops: 20, reversals: 5 }))).toBeNull();
    expect(stopReached({ reversals: 6 }, progress({ drops: 20, reversals: 6 }))).not.toBeNull();
    expect(stopReached(null, progress({ drops: 1e6 }))).toBeNull();
  });

  // The falling-dart rule: after 20, go on to 10 of the rarer outcome (TRADE: film darts), at most 40.
  it('go on for the rarer outcome', () => {
    const stop = { drops: 20, rarer: 10, atMost: 40 };
    const at = (drops: number, failures: number) => stopReached(stop, progress({ drops, failures })) !== null;
    expect(at(20, 10)).toBe(true);
    expect(at(20, 9)).toBe(false);
    expect(at(20, 11)).toBe(false);
    expect(at(21, 11)).toBe(true);
    expect(at(39, 9)).toBe(false);
    expect(at(40, 9)).toBe(true);
    expect(at(19, 10)).toBe(false);
  });

  it('count a drop by its outcome and the one before', () => {
    const trial = { height: 500, outcome: 'failed', specimen: 'A', hit: 1 } as const;
    expect(counting(NO_PROGRESS, trial, null, true)).toEqual({
      drops: 1,
      failures: 1,
      reversals: 0,
      specimens: 1,
      open: 0,
    });
    const second = counting(
      progress({ drops: 1, specimens: 1, open: 1 }),
      { ...trial, hit: 2 },
      'survived',
      false,
    );
    expect(second).toEqual({ drops: 2, failures: 1, reversals: 1, specimens: 1, open: 1 });
  });

  it('say what is still lacking', () => {
    expect(stillLacking({ drops: 30 }, progress({ drops: 22 }))).toBe('22 of 30 valid drops');
    expect(stillLacking({ drops: 20, rarer: 10 }, progress({ drops: 25, failures: 4 }))).toBe(
      'the rarer outcome 4 of 10 times',
    );
    expect(stillLacking({ specimens: 3 }, progress({ specimens: 3, open: 1 }))).toContain('unfinished');
  });
});
