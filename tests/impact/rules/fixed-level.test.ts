import { describe, expect, it } from 'vitest';
import { ruleFor } from '../../../src/impact/rules/method-rules.ts';
import type { Trial } from '../../../src/impact/rules/rule.ts';
import { upAndDownProtocol } from '../invented.ts';

// Common practice, no source: each level gets its drops, in any order.
const rule = ruleFor(
  upAndDownProtocol({ method: 'fixed-level', start: null, step: null, levels: [400, 450, 500], perLevel: 2 }),
  null,
);
const at = (height: number, outcome: Trial['outcome'] = 'survived'): Trial => ({
  height,
  outcome,
  specimen: `T${height}`,
  hit: 1,
});
const advised = (...trials: Trial[]) => rule.advice(trials.reduce(rule.step, rule.start));

describe('the fixed-level rule', () => {
  it('fills the level that lacks most, in any order of the drops before', () => {
    expect(advised()).toMatchObject({ decision: 'height', height: 400, specimen: 'new' });
    expect(advised(at(400), at(500))).toMatchObject({ height: 450 });
    expect(advised(at(500), at(451), at(400), at(400), at(450))).toMatchObject({ height: 500 });
  });

  it('stops when every level has its drops', () => {
    const all = [500, 400, 450, 450, 400, 500].map((height) => at(height, 'failed'));
    expect(advised(...all)).toEqual({
      decision: 'stop',
      why: 'Stop: 2 drops made at each of 3 levels.',
    });
  });
});
