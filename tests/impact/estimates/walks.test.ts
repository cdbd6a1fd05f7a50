import { describe, expect, it } from 'vitest';
import { fixedWalk, risingWalk, steppedWalk } from '../../../src/impact/estimates/walks.ts';
import { levelsFrom } from '../../../src/impact/rules/levels.ts';
import { risingHeight } from '../../../src/impact/rules/rising-height.ts';
import { emptyTrials, type Trials } from '../../../src/statistics/calibration/experiment.ts';
import { upAndDownProtocol } from '../invented.ts';

const levels = levelsFrom(500, { kind: 'additive', size: 25 }, { min: 400, max: 600 });

function made({ size, level, failed, specimen }: Trials): [number, string, number][] {
  return Array.from({ length: size }, (_, i) => [level[i]!, failed[i] ? 'x' : 'o', specimen[i]!]);
}

describe('steppedWalk', () => {
  it('goes up after a survival, down after a failure, and stays at a limit', () => {
    const series = { levels, start: 3, stop: { drops: 5 }, specimens: [0, 1, 2, 3, 4] };
    const walk = steppedWalk([series], upAndDownProtocol());
    const into = emptyTrials(walk.mostDrops);
    const outcomes = [false, false, false, true, false];
    walk.walk(() => outcomes[into.size++]!, into);
    const heights = made(into).map(([level]) => walk.heights[level]);
    // By hand: level 3 is 575 mm, the highest level is 600 mm.
    expect(heights).toEqual([575, 600, 600, 600, 575]);
  });

  it('hits the tyres as they were hit where a failure retires none', () => {
    const protocol = upAndDownProtocol({
      afterFailure: 'new-site',
      sites: { perSpecimen: 3, spacing: null, each: 'new-spot', avoid: [] },
    });
    const series = { levels, start: 0, stop: { drops: 6 }, specimens: [0, 1, 0, 1, 0, 1] };
    const walk = steppedWalk([series], protocol);
    const into = emptyTrials(walk.mostDrops);
    walk.walk((_, specimen) => specimen === 1, into);
    expect(made(into).map(([, , specimen]) => specimen)).toEqual([0, 1, 0, 1, 0, 1]);
  });

  it('takes a new tyre after a failure that retires, and uses up the sites of the others', () => {
    const protocol = upAndDownProtocol({
      sites: { perSpecimen: 2, spacing: null, each: 'new-spot', avoid: [] },
    });
    const series = { levels, start: 0, stop: { drops: 5 }, specimens: [0, 0, 1, 1, 2] };
    const walk = steppedWalk([series], protocol);
    const into = emptyTrials(walk.mostDrops);
    const outcomes = [true, false, false, true, false];
    walk.walk(() => outcomes[into.size++]!, into);
    // By hand: failed; two survivals use one tyre up; failed; the next.
    const tyres = made(into).map(([, , specimen]) => specimen);
    expect(new Set(tyres).size).toBe(4);
    expect(tyres[1]).toBe(tyres[2]);
  });

  it('prolongs a test whose rarer outcome is wanting, up to its most drops', () => {
    const stop = { drops: 4, rarer: 2, atMost: 7 };
    const walk = steppedWalk([{ levels, start: 0, stop, specimens: [0, 1, 2, 3] }], upAndDownProtocol());
    const into = emptyTrials(walk.mostDrops);
    walk.walk(() => false, into);
    expect(into.size).toBe(7);
    walk.walk((level) => level % 2 === 0, into);
    expect(into.size).toBe(4);
  });
});

describe('risingWalk', () => {
  it('does what the rule of the method does', () => {
    const rule = risingHeight({ levels, stop: { specimens: 4 } });
    const first = levels.lowest;
    const thresholds = [2, 0, 20, 7];
    const into = emptyTrials(100);
    const from = levels.within(0);
    risingWalk(levels.highest - from + 1, 4)((level, specimen) => level >= thresholds[specimen]!, into);
    const seen: [number, string, number][] = [];
    let state = rule.start;
    let specimen = -1;
    let hit = 0;
    for (;;) {
      const advice = rule.advice(state);
      if (advice.decision === 'stop') break;
      if (advice.specimen === 'new') {
        specimen++;
        hit = 0;
      }
      const level = levels.nearest(advice.height) - from;
      const failed = level >= thresholds[specimen]!;
      seen.push([level, failed ? 'x' : 'o', specimen]);
      const outcome = failed ? 'failed' : 'survived';
      state = rule.step(state, { height: advice.height, outcome, specimen: `${specimen}`, hit: ++hit });
    }
    expect(first).toBe(-4);
    expect(made(into)).toEqual(seen);
  });
});

describe('fixedWalk', () => {
  it('repeats the hits as they were, at the planned levels', () => {
    const hits = [
      { drop: { specimen: 'A', height: 450.4, mass: null } },
      { drop: { specimen: 'B', height: 500, mass: null } },
      { drop: { specimen: 'A', height: 499.2, mass: null } },
    ] as unknown as Parameters<typeof fixedWalk>[0];
    const { walk, specimens } = fixedWalk(hits, [450, 500], 'height');
    const into = emptyTrials(3);
    walk((level) => level === 1, into);
    expect(specimens).toBe(2);
    expect(made(into)).toEqual([
      [0, 'o', 0],
      [1, 'x', 1],
      [1, 'x', 0],
    ]);
  });
});
