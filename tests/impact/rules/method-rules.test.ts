import { describe, expect, it } from 'vitest';
import type { ImpactProtocol } from '../../../src/documents/kinds.ts';
import { ruleFor } from '../../../src/impact/rules/method-rules.ts';
import type { Trial } from '../../../src/impact/rules/rule.ts';
import { InputError } from '../../../src/problem/problem.ts';
import bottle from '../../reference/sen-01/SEN-01-updown-bottle-staircase-1969.json' with { type: 'json' };
import hammer from '../../reference/sen-02/SEN-02-updown-drop-hammer-2019.json' with { type: 'json' };
import { rigOf, risingProtocol, upAndDownProtocol } from '../invented.ts';

const trial = (height: number, outcome: Trial['outcome'], specimen = 'A', hit = 1): Trial => ({
  height,
  outcome,
  specimen,
  hit,
});

describe('the up-and-down rule', () => {
  const rule = ruleFor(upAndDownProtocol({ limits: { min: 450, max: 550 } }), null);
  const advised = (...trials: Trial[]) => rule.advice(trials.reduce(rule.step, rule.start));

  it('starts at the start, lowers after a failure, raises after a survival', () => {
    expect(advised()).toMatchObject({ decision: 'height', height: 500, specimen: 'new' });
    expect(advised(trial(500, 'failed'))).toMatchObject({ height: 475, specimen: 'new' });
    expect(advised(trial(500, 'survived'))).toMatchObject({ height: 525 });
  });

  it('stays at a limit (CONTRACT)', () => {
    expect(advised(trial(550, 'survived'))).toMatchObject({ height: 550 });
    expect(advised(trial(450, 'failed'))).toMatchObject({ height: 450 });
    expect(advised(trial(600, 'survived'))).toMatchObject({ height: 550 });
  });

  it('takes the narrower limit of protocol and rig', () => {
    const narrow = ruleFor(upAndDownProtocol(), rigOf({ limits: { min: 480, max: null } }));
    expect(narrow.advice(narrow.step(narrow.start, trial(500, 'failed')))).toMatchObject({ height: 500 });
  });

  it('refuses a rig that reaches neither the start nor a second level, by the place in the protocol', () => {
    const on = (protocol: ImpactProtocol, min: number, max: number) => () =>
      ruleFor(protocol, rigOf({ limits: { min, max } }));
    expect(on(upAndDownProtocol(), 100, 450)).toThrow(
      /found 500 mm, expected a start that rig "drop-2" reaches, 100 mm to 450 mm/u,
    );
    expect(on(upAndDownProtocol(), 490, 520)).toThrow(/a step that leaves what rig "drop-2" reaches/u);
    expect(on(risingProtocol(), 100, 370)).toThrow(/a step that leaves what rig "drop-2" reaches/u);
    expect(on(upAndDownProtocol(), 475, 510)).not.toThrow();
    const levels = { method: 'fixed-level', start: null, step: null, levels: [400, 450, 500] } as const;
    expect(on(upAndDownProtocol(levels), 420, 480)).toThrow(
      /found 400 mm, 500 mm, expected levels that the rig reaches, 420 mm to 480 mm/u,
    );
  });

  it('allows a free site while the specimen has one', () => {
    const three = ruleFor(
      upAndDownProtocol({ sites: { perSpecimen: 3, spacing: null, each: 'new-spot', avoid: [] } }),
      null,
    );
    const specimen = (...trials: Trial[]) => {
      const advice = three.advice(trials.reduce(three.step, three.start));
      return advice.decision === 'height' ? advice.specimen : 'stop';
    };
    expect(specimen(trial(500, 'survived', 'A', 1))).toBe('any');
    expect(specimen(trial(500, 'survived', 'A', 1), trial(525, 'survived', 'A', 3))).toBe('new');
    expect(specimen(trial(500, 'failed', 'A', 1))).toBe('new');
  });

  it('says why in a sentence, with foreign names made safe', () => {
    expect(advised(trial(500, 'failed', 'T\u001b7'))).toMatchObject({
      why: '"T\\u{1b}7" failed at 500 mm: lower one step to 475 mm, on a new specimen.',
    });
  });
});

describe('the rising-height rule', () => {
  const rule = ruleFor(risingProtocol({ limits: { min: null, max: 410 }, stop: { specimens: 2 } }), null);
  const advised = (...trials: Trial[]) => rule.advice(trials.reduce(rule.step, rule.start));

  it('raises the same specimen until it fails or survives the top, then starts anew', () => {
    // 350 mm as common start: common practice, no source.
    expect(advised()).toMatchObject({ height: 350, specimen: 'new' });
    expect(advised(trial(350, 'survived'))).toMatchObject({ height: 375, specimen: 'same' });
    expect(advised(trial(350, 'survived'), trial(375, 'failed', 'A', 2))).toMatchObject({
      height: 350,
      specimen: 'new',
    });
    expect(advised(trial(400, 'survived'))).toMatchObject({ height: 350, specimen: 'new' });
  });

  it('stops when the last specimen is done, not when it is begun', () => {
    const first = trial(350, 'failed');
    expect(advised(first, trial(350, 'survived', 'B'))).toMatchObject({ decision: 'height', height: 375 });
    expect(advised(first, trial(350, 'failed', 'B'))).toMatchObject({ decision: 'stop' });
  });
});

describe('published up-and-down tests', () => {
  /** Goes through a test; the worst difference between what the rule asked for and what was done, and the advice after. */
  const through = (
    heights: readonly number[],
    failed: readonly number[],
    step: { kind: 'additive'; size: number } | { kind: 'ratio'; ratio: number },
  ) => {
    const rule = ruleFor(
      upAndDownProtocol({ start: heights[0]!, step, limits: { min: null, max: null } }),
      null,
    );
    let state = rule.start;
    let worst = 0;
    for (const [index, height] of heights.entries()) {
      const advice = rule.advice(state);
      worst = Math.max(worst, advice.decision === 'height' ? Math.abs(advice.height - height) : Infinity);
      state = rule.step(state, trial(height, failed[index] === 1 ? 'failed' : 'survived', `${index}`));
    }
    return { worst, next: rule.advice(state) };
  };

  it('34 containers, step 0.3 m (J. Soc. Cosmet. Chem. 20, 1969, table II)', () => {
    const { data } = bottle;
    const inMillimetres = data.levels.map((metres) => Math.round(1000 * metres));
    const { worst, next } = through(inMillimetres, data.fail, { kind: 'additive', size: 1000 * data.step });
    expect(worst).toBeLessThan(1e-9);
    expect(next).toMatchObject({ decision: 'height', height: 1000 * data.next_level_would_be });
  });

  it('25 trials on a drop hammer, levels equal on the log scale (Hamada, Mang and Hoff 2019, table 1)', () => {
    const { data } = hammer;
    const inMillimetres = data.height.map((centimetres) => 10 * centimetres);
    const step = { kind: 'ratio', ratio: 10 ** data.nominal_log10_step - 1 } as const;
    // The heights are printed to 0.1 cm.
    expect(through(inMillimetres, data.fail, step).worst).toBeLessThan(0.5);
  });
});

describe('ruleFor', () => {
  it('refuses a protocol without what its method needs, at its place', () => {
    expect(() => ruleFor(upAndDownProtocol({ start: null }), null)).toThrow(InputError);
    const without = (method: ImpactProtocol['method'], changes: Partial<ImpactProtocol> = {}) =>
      expect(() => ruleFor(upAndDownProtocol({ method, ...changes }), null));
    without('fixed-level').toThrow(/without levels/u);
    without('transformed-up-and-down').toThrow(/without survivalsToRaise/u);
    without('d-optimal').toThrow(/without guess/u);
    without('langlie', { limits: { min: 100, max: null } }).toThrow(/without limits on both sides/u);
  });
});
