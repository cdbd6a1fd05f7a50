import { describe, expect, it } from 'vitest';
import { ruleFor } from '../../../src/impact/rules/method-rules.ts';
import type { Trial } from '../../../src/impact/rules/rule.ts';
import { upAndDownProtocol } from '../invented.ts';

// The phases are from memory of the published description (Neyer 1994): these tests hold the rule to what that
// description says in words, not to print.
const rule = ruleFor(
  upAndDownProtocol({
    method: 'd-optimal',
    start: null,
    step: null,
    limits: { min: 100, max: 1200 },
    guess: { lowest: 400, highest: 600, spread: 40 },
  }),
  null,
);
const at = (height: number, outcome: Trial['outcome']): Trial => ({ height, outcome, specimen: 'A', hit: 1 });
const next = (...trials: Trial[]) => {
  const advice = rule.advice(trials.reduce(rule.step, rule.start));
  return advice.decision === 'height' ? advice.height : Number.NaN;
};

describe('the D-optimal rule', () => {
  it('starts in the middle of the guess and goes outwards while all drops have one outcome', () => {
    expect(next()).toBe(500);
    // Below all failures: halfway to the lower end of the guess, or two spreads, whichever is lower.
    expect(next(at(500, 'failed'))).toBe(420);
    // Two spreads out; the same distance again; the halfway point no longer leads.
    expect(next(at(500, 'failed'), at(420, 'failed'))).toBe(340);
    expect(next(at(500, 'survived'))).toBe(580);
    expect(next(at(500, 'survived'), at(900, 'survived'), at(1150, 'survived'))).toBe(1200);
  });

  it('halves the gap while it is wider than the guessed spread', () => {
    expect(next(at(500, 'failed'), at(420, 'survived'))).toBe(460);
  });

  it('goes to either side of the gap once that is narrower than the guessed spread', () => {
    const level = next(at(500, 'failed'), at(420, 'survived'), at(460, 'survived'), at(480, 'failed'));
    // The middle is 470 mm; the best two places are 1.138 spreads off, moved outwards by what was learnt near it.
    expect(Math.abs(level - 470)).toBeGreaterThan(40);
    expect(Math.abs(level - 470)).toBeLessThan(90);
  });

  it('chooses by the fit where failures and survivals overlap, within the limits', () => {
    const overlap = [at(500, 'failed'), at(420, 'survived'), at(460, 'failed'), at(480, 'survived')];
    const level = next(...overlap);
    expect(level).toBeGreaterThanOrEqual(100);
    expect(level).toBeLessThanOrEqual(1200);
    // Spread is kept within the range tested, 80 mm, location within 420 to 500 mm.
    expect(Math.abs(level - 470)).toBeLessThan(6 * 80);
    expect([420, 460, 470, 480, 500]).not.toContain(level);
  });
});
