import { describe, expect, it } from 'vitest';
import type { ImpactProtocol } from '../../../src/documents/kinds.ts';
import { ASSUMED_SHARE, repeatable } from '../../../src/impact/estimates/repeatable.ts';
import { observe } from '../../../src/impact/observations.ts';
import type { Drop } from '../../../src/logs/drop.ts';
import { energyScale } from '../../../src/rig/energy.ts';
import { emptyTrials } from '../../../src/statistics/calibration/experiment.ts';
import { logOf, quantity, replayed, risesOf, risingProtocol, upAndDownProtocol } from '../invented.ts';

const UP_AND_DOWN = '500o 525o 550x 525o 550o 575x 550x 525x 500o 525o 550x 525x';
/** J for a mm of 8 kg under standard gravity: 8 · 9.80665 / 1000. */
const JOULE = 0.0784532;

function madeOf(protocol: ImpactProtocol, drops: readonly Drop[]) {
  const replay = replayed(protocol, drops);
  const { of } = energyScale(protocol, null, drops, new Set());
  return repeatable(protocol, replay, observe(replay, of), of);
}

function experimentOf(protocol: ImpactProtocol, drops: readonly Drop[]) {
  const made = madeOf(protocol, drops);
  if (made.kind !== 'repeatable') throw new Error(made.why);
  return made;
}

describe('repeatable', () => {
  it('takes a plain up-and-down test to the table: n, start and step in joule', () => {
    const { tabulated, experiment, remark } = experimentOf(upAndDownProtocol(), logOf(UP_AND_DOWN));
    expect(tabulated!.drops).toBe(12);
    expect(tabulated!.start).toBeCloseTo(500 * JOULE, 9);
    expect(tabulated!.step).toBeCloseTo(25 * JOULE, 9);
    expect(experiment.step).toBeCloseTo(25 * JOULE, 9);
    expect(remark).toBeNull();
  });

  it('takes a ratio step and lognormal strength to it on the logarithm', () => {
    const protocol = upAndDownProtocol({ step: { kind: 'ratio', ratio: 0.05 }, distribution: 'lognormal' });
    const heights = [500, 525, 551.25, 525, 551.25, 578.8125, 551.25, 525, 500, 525];
    const drops = logOf(heights.map((h, i) => `${h}${'ooxooxxxoo'[i]}`).join(' '));
    const { tabulated } = experimentOf(protocol, drops);
    expect(tabulated!.start).toBeCloseTo(Math.log(500 * JOULE), 9);
    expect(tabulated!.step).toBeCloseTo(Math.log(1.05), 9);
  });

  it.each<[string, Partial<ImpactProtocol>]>([
    ['a law whose levels are not equally spaced', { distribution: 'lognormal' }],
    ['a law that is not normal', { distribution: 'logistic' }],
    ['a limit of the rig within reach', { limits: { min: 100, max: 600 } }],
    ['a stop by the rarer outcome', { stop: { drops: 10, rarer: 5, atMost: 20 } }],
  ])('simulates %s', (_, changes) => {
    const { tabulated, experiment } = experimentOf(upAndDownProtocol(changes), logOf(UP_AND_DOWN));
    expect(tabulated).toBeNull();
    expect(experiment.isSequential).toBe(true);
  });

  it('assumes a share between tyres where one is hit more than once', () => {
    const protocol = upAndDownProtocol({
      sites: { perSpecimen: 4, spacing: null, each: 'new-spot', avoid: [] },
      afterFailure: 'new-site',
    });
    const drops = logOf(UP_AND_DOWN, (index) => ({ specimen: `T${index % 3}` }));
    const { tabulated, experiment } = experimentOf(protocol, drops);
    expect(tabulated).toBeNull();
    expect(experiment.share).toBe(ASSUMED_SHARE);
  });

  it('says that a path that was left is taken as kept', () => {
    const { remark } = experimentOf(upAndDownProtocol(), logOf(UP_AND_DOWN.replace('575x', '600x')));
    expect(remark).toContain('as if the path had been kept');
  });

  it('reads rises as one threshold a tyre, from the start to well above the highest', () => {
    const rises = risesOf('350o 375o 400x / 350o 375x / 350x');
    const { experiment } = experimentOf(risingProtocol(), rises);
    expect(experiment).toMatchObject({ reading: 'rises', isSequential: false, mostSpecimens: 3 });
    expect(experiment.levels[0]).toBeCloseTo(350 * JOULE, 9);
    expect(experiment.levels[2]).toBeCloseTo(400 * JOULE, 9);
  });

  it.each([
    ['langlie', {}],
    ['d-optimal', { guess: { lowest: 480, highest: 600, spread: 30 } }],
  ] as const)('asks the rule itself where it chooses its levels: %s', (method, more) => {
    const protocol = upAndDownProtocol({ method, limits: { min: 400, max: 700 }, ...more });
    const { experiment, tabulated } = experimentOf(protocol, logOf(UP_AND_DOWN));
    expect(tabulated).toBeNull();
    expect(experiment).toMatchObject({ reading: 'hits', isSequential: true, mostDrops: 12 });
    expect(experiment.levels[0]).toBeCloseTo(400 * JOULE, 9);
    expect(experiment.levels.at(-1)).toBeCloseTo(700 * JOULE, 9);
    // Failures from 525 mm up, survivals up to 550 mm: a quarter of the 25 mm in which both occur.
    expect(experiment.step).toBeCloseTo((25 / 4) * JOULE, 9);
    const into = emptyTrials(12);
    experiment.walk(() => into.size++ % 2 === 0, into);
    expect(into.size).toBe(12);
    // Langlie starts in the middle of the range, D-optimal in the middle of the guess.
    const start = method === 'langlie' ? 550 : 540;
    expect(Math.abs(experiment.levels[into.level[0]!]! / JOULE - start)).toBeLessThan(0.5);
  });

  it.each<[string, Partial<ImpactProtocol>, (index: number) => Partial<Drop>, string]>([
    ['several masses', {}, (index) => ({ mass: index < 6 ? 8 : 9 }), 'several masses'],
  ])('refuses %s and says why', (_, changes, each, why) => {
    const protocol = upAndDownProtocol({ mass: quantity(8, 'kg'), ...changes });
    const made = madeOf(protocol, logOf(UP_AND_DOWN, each));
    expect(made).toMatchObject({ kind: 'not-repeatable' });
    expect(made.kind === 'not-repeatable' && made.why).toContain(why);
  });
});
