import { describe, expect, it } from 'vitest';
import { ruleFor } from '../../../src/impact/rules/method-rules.ts';
import sen31 from '../../reference/sen-31/SEN-31-langlie-replay.json' with { type: 'json' };
import { rigOf, upAndDownProtocol } from '../invented.ts';

const langlie = (min: number, max: number, resolution: number | null = null) =>
  ruleFor(
    upAndDownProtocol({ method: 'langlie', start: null, step: null, limits: { min, max } }),
    resolution === null ? null : rigOf({ resolution }),
  );

describe('the Langlie rule', () => {
  it.each(sen31.data.seqs)('replays SEN-31 from $lo to $hi move by move', ({ lo, hi, results, levels }) => {
    const rule = langlie(Math.max(lo, 0), hi);
    let state = rule.start;
    for (const [i, level] of levels.entries()) {
      const advice = rule.advice(state);
      expect(advice.decision === 'height' && advice.height).toBeCloseTo(level, 9);
      if (i === results.length) return;
      const outcome = results[i] === 1 ? 'failed' : 'survived';
      state = rule.step(state, { height: level, outcome, specimen: `T${i}`, hit: 1 });
    }
  });

  it('averages from the heights as they were, and sets what the rig can set', () => {
    const rule = langlie(200, 1000, 5);
    const state = rule.step(rule.start, { height: 612, outcome: 'failed', specimen: 'A', hit: 1 });
    const advice = rule.advice(state);
    // (612 + 200)/2 = 406, to the nearest 5 mm.
    expect(advice).toMatchObject({ decision: 'height', height: 405, specimen: 'new' });
    expect(advice.why).toBe(
      '"A" failed: set 405 mm, halfway from 612 mm to 200 mm, the lower end of the range, on a new specimen.',
    );
  });
});
