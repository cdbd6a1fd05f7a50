import { describe, expect, it } from 'vitest';
import type { ImpactProtocol } from '../../../src/documents/kinds.ts';
import type { Drop } from '../../../src/logs/drop.ts';
import { logOf, replayed, risesOf, risingProtocol, upAndDownProtocol } from '../invented.ts';

// Invented logs. What each rule would have asked for is worked out beside it; "more than half of ten moves or more" is a
// choice, common practice, no source.

const choosing = (changes: Partial<ImpactProtocol>) =>
  upAndDownProtocol({ start: null, step: null, ...changes });

/** Fourteen drops up and down from 500 mm by 25 mm: thirteen moves. */
const STAIRCASE = '500x 475o 500x 475x 450o 475o 500x 475o 500o 525x 500x 475o 500x 475o';
const EXCHANGED = STAIRCASE.replace(/[xo]/gu, (letter) => (letter === 'x' ? 'o' : 'x'));

function whole(protocol: ImpactProtocol, drops: readonly Drop[]) {
  const result = replayed(protocol, drops);
  return {
    status: result.conformance.status,
    refused: result.samples[0]!.refused,
    ofRun: result.deviations.filter(({ severity, scope }) => severity === 'invalidating' && scope === 'run'),
  };
}

describe('a history that the rule could not have made', () => {
  it.each<[string, ImpactProtocol, Drop[], string | null]>([
    // Each move goes against its outcome.
    ['up-and-down, outcomes exchanged', upAndDownProtocol(), logOf(EXCHANGED), 'DROP-04'],
    [
      'up-and-down, the height never moved',
      upAndDownProtocol(),
      logOf('500x 500o 500x 500o 500x 500x 500o 500x 500o 500x 500o'),
      'DROP-04',
    ],
    // After one survival the rule stays.
    [
      'transformed, raised after each survival',
      upAndDownProtocol({ method: 'transformed-up-and-down', survivalsToRaise: 2 }),
      logOf('500o 525o 550o 575o 600x 575o 600o 625o 650o 675o 700x'),
      'DROP-04',
    ],
    [
      'rising-height, lowered after each survival',
      risingProtocol({ limits: { min: null, max: null } }),
      risesOf('350o 325o 300o 275o 250o 225o 200o / 350o 325o 300o 275o 250o 225x'),
      'DROP-03',
    ],
    // Half the distance to the next level is 25 mm.
    [
      'fixed levels, at heights that are none of them',
      choosing({ method: 'fixed-level', levels: [400, 450, 500], perLevel: 12 }),
      logOf('600x 620x 640x 660x 680x 600o 620x 640o 660x 680x 450o'),
      'DROP-01',
    ],
    [
      'Langlie, made up and down',
      choosing({ method: 'langlie', limits: { min: 200, max: 800 } }),
      logOf(STAIRCASE),
      null,
    ],
    [
      'd-optimal, made up and down',
      choosing({
        method: 'd-optimal',
        limits: { min: 200, max: 800 },
        guess: { lowest: 300, highest: 700, spread: 40 },
      }),
      logOf('500x 475o 500x 475x 450o 475o 500x 475o 500o 525x 500x 475o'),
      null,
    ],
  ])('%s', (_, protocol, drops, code) => {
    const { status, refused, ofRun } = whole(protocol, drops);
    expect(status).toBe('invalid');
    expect(ofRun).toHaveLength(1);
    expect(ofRun[0]!.message).toMatch(/are none that .* asks for, the first on line \d+/u);
    if (code !== null) expect(ofRun[0]!.code).toBe(code);
    expect(refused).toBe(`${ofRun[0]!.code} invalidates the whole run: no estimate can be trusted.`);
  });

  it('says what settles it: outcomes the wrong way round, or another protocol', () => {
    expect(whole(upAndDownProtocol(), logOf(EXCHANGED)).ofRun[0]!.message).toContain(
      'check which words of the log mean failed and survived',
    );
    const langlie = choosing({ method: 'langlie', limits: { min: 200, max: 800 } });
    expect(whole(langlie, logOf(STAIRCASE)).ofRun[0]!.message).toContain('name the one that did');
  });

  it('is not seen in departures that are no more than half of the moves, nor in fewer than ten moves', () => {
    const slips = '500x 475o 450x 475x 450o 425o 500x 475o 450o 525x 500x 475o 500x 475o';
    const some = replayed(upAndDownProtocol(), logOf(slips));
    expect(some.deviations.length).toBeGreaterThan(3);
    expect(some.conformance.status).toBe('deviating');
    const few = logOf(EXCHANGED).slice(0, 10);
    expect(whole(upAndDownProtocol(), few)).toMatchObject({ status: 'deviating', refused: null, ofRun: [] });
    expect(whole(upAndDownProtocol(), logOf(STAIRCASE))).toMatchObject({ status: 'conforming' });
  });

  it('is not a step of another size, kept from one drop on, nor another start', () => {
    const byForty = '500x 460o 500x 460x 420o 460o 500x 460o 500o 540x 500x 460o';
    expect(whole(upAndDownProtocol(), logOf(byForty)).status).toBe('deviating');
    const shifted = logOf(STAIRCASE).map((drop) => ({ ...drop, height: drop.height + 110 }));
    expect(replayed(upAndDownProtocol(), shifted).samples[0]!.refused).toBeNull();
  });
});
