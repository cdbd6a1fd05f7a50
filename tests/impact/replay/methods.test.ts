import { describe, expect, it } from 'vitest';
import type { ImpactProtocol } from '../../../src/documents/kinds.ts';
import { InputError } from '../../../src/problem/problem.ts';
import { dropOf, found, logOf, replayed, upAndDownProtocol } from '../invented.ts';

// Invented logs; what each rule asks for is worked out beside it. Codes: the catalogue of deviations.

const protocolOf = (changes: Partial<ImpactProtocol>) =>
  upAndDownProtocol({ start: null, step: null, ...changes });

describe('a transformed up-and-down log', () => {
  const protocol = upAndDownProtocol({
    method: 'transformed-up-and-down',
    survivalsToRaise: 2,
    stop: { drops: 8 },
  });

  it('is clean where the level rises after two survivals and falls after each failure', () => {
    const result = replayed(protocol, logOf('500o 500o 525o 525x 500o 500x 475o 475o'));
    expect(found(result)).toEqual([]);
    expect(result.series[0]).toMatchObject({ broken: null, advice: { decision: 'stop' } });
  });

  it('shows a level that rose too soon, and one that stayed after a failure', () => {
    // After 500 o the level should stay; after 525 x it should go to 500.
    expect(found(replayed(protocol, logOf('500o 525o 525x 525x 500o 500o 525x 500o')))).toEqual([
      'DROP-04@3 minor',
      'DROP-04@5 minor',
    ]);
  });
});

describe('a fixed-level log', () => {
  const protocol = protocolOf({ method: 'fixed-level', levels: [400, 450, 500], perLevel: 2 });

  it('is clean in any order, and needs no stop rule', () => {
    const result = replayed(protocol, logOf('450o 500x 400o 500x 400o 450x'));
    expect(found(result)).toEqual([]);
    expect(result.notes.filter((note) => note.includes('stop rule'))).toEqual([]);
    expect(result.drops.map(({ level }) => level)).toEqual([1, 2, 0, 2, 0, 1]);
  });

  it('shows a height that is no level, a level with too many drops and one with too few', () => {
    const result = replayed(protocol, logOf('450o 450o 450x 400o 510x 400o'));
    expect(found(result)).toEqual(['DROP-56@4 minor', 'DROP-01@6 minor', 'DROP-10@run minor']);
    expect(result.deviations[2]!.message).toContain('1 of 2 drops at 500 mm');
  });
});

describe('a Langlie log', () => {
  const protocol = protocolOf({ method: 'langlie', limits: { min: 200, max: 1000 }, stop: { drops: 4 } });

  it('is clean where each height is the one asked for (SEN-31, first moves)', () => {
    expect(found(replayed(protocol, logOf('600x 400o 500o 750x')))).toEqual([]);
  });

  it('follows the heights as they were, and shows those that no rule asked for', () => {
    // 612 x: 406 is next (DROP-01 for 612 itself, 12 mm off the middle). 406 o: back to 612, 509; then 700 is no move.
    expect(found(replayed(protocol, logOf('612x 406o 700o 850x')))).toEqual([
      'DROP-01@2 minor',
      'DROP-05@4 minor',
    ]);
  });

  it('cannot be replayed without both limits', () => {
    const open = protocolOf({ method: 'langlie', limits: { min: null, max: 1000 } });
    expect(() => replayed(open, logOf('600x'))).toThrow(InputError);
  });
});

describe('a log of varied mass', () => {
  const protocol = upAndDownProtocol({
    vary: 'mass',
    mass: null,
    height: 640,
    start: 8,
    step: { kind: 'additive', size: 0.5 },
    limits: { min: 4, max: 14 },
  });
  const drops = (text: string) =>
    logOf(text).map((drop) => dropOf({ ...drop, mass: drop.height, height: 640 }));

  it('is clean where the mass moves by a step, from one height', () => {
    const result = replayed(protocol, drops('8x 7.5o 8o 8.5x 8o'));
    expect(found(result)).toEqual([]);
    expect(result.drops.map(({ level }) => level)).toEqual([0, -1, 0, 1, 0]);
    expect(result.series[0]!.advice).toMatchObject({ decision: 'height', height: 8.5 });
    expect(result.series[0]!.advice.why).toContain('raise one step to 8.5 kg');
  });

  it('judges the mass column against the planned mass and the height against the one height', () => {
    const log = drops('8x 7.6o 8.1o 8.5x').map((drop, i) => (i === 3 ? { ...drop, height: 650 } : drop));
    const result = replayed(protocol, log);
    // 7.6 kg for 7.5 kg and 8.1 kg for 8 kg, both beyond 0.5 % of 8 kg; 650 mm for 640 mm.
    expect(found(result)).toEqual(['DROP-11@3 minor', 'DROP-11@4 minor', 'DROP-01@5 minor']);
    expect(result.deviations[0]!.message).toContain('mass 7.6 kg, planned 7.5 kg');
  });

  it('asks for a mass of every drop', () => {
    expect(() => replayed(protocol, logOf('640x 640o'))).toThrow(/no falling mass/u);
  });
});
