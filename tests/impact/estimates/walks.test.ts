import { describe, expect, it } from 'vitest';
import type { ImpactProtocol } from '../../../src/documents/kinds.ts';
import { chosenWalk, fixedWalk, risingWalk, steppedWalk } from '../../../src/impact/estimates/walks.ts';
import { langlie } from '../../../src/impact/rules/langlie.ts';
import { levelsFrom } from '../../../src/impact/rules/levels.ts';
import { specimensOf } from '../../../src/impact/rules/method-rules.ts';
import { risingHeight } from '../../../src/impact/rules/rising-height.ts';
import { upAndDown } from '../../../src/impact/rules/up-and-down.ts';
import { emptyTrials, type Trials } from '../../../src/statistics/calibration/experiment.ts';
import { randomStream } from '../../../src/statistics/random/random-stream.ts';
import { upAndDownProtocol } from '../invented.ts';

const NO_SITES = { spacing: null, each: 'new-spot', avoid: [] } as const;

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

  it.each([
    ['plain', { stop: { drops: 30 } }],
    ['until reversals', { stop: { reversals: 9 } }],
    ['until the rarer outcome', { stop: { drops: 12, rarer: 6, atMost: 25 } }],
    ['until specimens are used up', { stop: { specimens: 7 }, sites: { ...NO_SITES, perSpecimen: 3 } }],
    ['sites that a failure ends', { stop: { drops: 24 }, sites: { ...NO_SITES, perSpecimen: 4 } }],
    [
      'sites that it does not',
      { stop: { drops: 24 }, sites: { ...NO_SITES, perSpecimen: 4 }, afterFailure: 'new-site' },
    ],
    ['several survivals', { stop: { drops: 40 }, method: 'transformed-up-and-down', survivalsToRaise: 3 }],
  ] as const)('does what the rule of the method does: %s', (_, more) => {
    const protocol = upAndDownProtocol(more as Partial<ImpactProtocol>);
    const { perSpecimen, goesOnAfterFailure } = specimensOf(protocol);
    const order = Array.from({ length: 60 }, (__, i) => Math.floor(i / perSpecimen));
    const series = { levels, start: 0, stop: more.stop, specimens: order };
    const { walk, mostDrops, heights } = steppedWalk([series], protocol);
    const survivalsToRaise = protocol.survivalsToRaise ?? 1;
    const rule = upAndDown({ levels, stop: more.stop, perSpecimen, goesOnAfterFailure, survivalsToRaise });
    for (let test = 0; test < 40; test++) {
      const stream = randomStream(3, test);
      const outcomes = Array.from({ length: 200 }, () => stream.uniform());
      const into = emptyTrials(mostDrops);
      let asked = 0;
      walk((level) => outcomes[asked++]! < (heights[level]! - 400) / 200, into);
      let state = rule.start;
      let hit = 0;
      let tyre = 0;
      const seen: [number, string][] = [];
      const tyres = new Map<number, number>();
      for (let i = 0; i < mostDrops; i++) {
        const advice = rule.advice(state);
        if (advice.decision === 'stop') break;
        hit = advice.specimen === 'new' ? 1 : hit + 1;
        if (advice.specimen === 'new') tyre += 1;
        const failed = outcomes[i]! < (advice.height - 400) / 200;
        seen.push([advice.height, failed ? 'x' : 'o']);
        // The numbers of tyres may differ, not which drops share one.
        const same = tyres.get(tyre);
        if (same === undefined) tyres.set(tyre, into.specimen[i]!);
        else expect(into.specimen[i]).toBe(same);
        const outcome = failed ? 'failed' : 'survived';
        state = rule.step(state, { height: advice.height, outcome, specimen: `${tyre}`, hit });
      }
      expect(made(into).map(([level, outcome]) => [heights[level], outcome])).toEqual(seen);
    }
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
      { level: 0, specimen: 0 },
      { level: 1, specimen: 1 },
      { level: 1, specimen: 0 },
    ];
    const into = emptyTrials(3);
    fixedWalk(hits)((level) => level === 1, into);
    expect(made(into)).toEqual([
      [0, 'o', 0],
      [1, 'x', 1],
      [1, 'x', 0],
    ]);
  });
});

describe('chosenWalk', () => {
  it('sets what the rule says, at the nearest level of the grid', () => {
    const limits = { min: 400, max: 600 };
    const sites = { perSpecimen: 1, goesOnAfterFailure: false };
    const rule = langlie({ limits, resolution: null, varied: 'height', stop: { drops: 4 }, ...sites });
    const heights = Array.from({ length: 201 }, (_, i) => 400 + i);
    const into = emptyTrials(9);
    const outcomes = [true, false, false, true];
    chosenWalk({ rule, levels: heights, mostDrops: 9 })(() => outcomes[into.size++]!, into);
    // Langlie by hand: 500; failed, halfway to 400: 450; survived, balanced with 500: 475; survived, nothing is balanced
    // with it, halfway to 600: 537.5, which the grid takes up.
    expect(made(into).map(([level]) => heights[level])).toEqual([500, 450, 475, 538]);
  });
});
