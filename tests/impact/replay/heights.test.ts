import { describe, expect, it } from 'vitest';
import {
  changed,
  found,
  logOf,
  replayed,
  rigOf,
  risesOf,
  risingProtocol,
  upAndDownProtocol,
} from '../invented.ts';

// Limits and severities: CONTRACT (rules of the methods) and common practice, no source.

/** Keeps the path of 500 mm, step 25 mm: no deviation. */
const KEPT = '500x 475x 450o 475o 500x 475o 500o 525x';

describe('up-and-down heights', () => {
  const protocol = upAndDownProtocol();
  const of = (text: string) => found(replayed(protocol, logOf(text)));

  it('finds nothing where the path was kept', () => {
    const result = replayed(protocol, logOf(KEPT));
    expect(found(result)).toEqual([]);
    expect(result.conformance.status).toBe('conforming');
    expect(result.series[0]!.broken).toBeNull();
    expect(result.drops.map(({ ruleHeight }) => ruleHeight)).toEqual([
      500, 475, 450, 475, 500, 475, 500, 525,
    ]);
    expect(result.drops.map(({ level }) => level)).toEqual([0, -1, -2, -1, 0, -1, 0, 1]);
  });

  it('allows a height its tolerance of 1 mm', () => {
    expect(of('501x 474x 450o 475o 500x')).toEqual([]);
  });

  it('DROP-01: off by more than the tolerance, half a step at most, and the grid stays', () => {
    expect(of('500x 477x 450o 475o 500x 475o 500o 525x')).toEqual(['DROP-01@3 minor']);
    expect(of('500x 487x 450o 475o 500x')).toEqual(['DROP-01@3 minor']);
    expect(replayed(protocol, logOf('500x 477x 450o 475o 500x')).series[0]!.broken).toContain('DROP-01');
  });

  it('DROP-01: the log planned right and set wrongly, and the operator went on from either', () => {
    const plan = [500, 475, 450, 475, 500];
    const planned = (text: string, heights: number[]) =>
      found(
        replayed(
          protocol,
          logOf(text, (index) => ({ plannedHeight: heights[index]! })),
        ),
      );
    expect(planned('500x 500x 450o 475o 500x', plan)).toEqual(['DROP-01@3 minor']);
    expect(planned('500x 500x 475o 500o 525x', [500, 475, 475, 500, 525])).toEqual(['DROP-01@3 minor']);
  });

  it('DROP-01: the log planned another height than it set, though the one set was right', () => {
    const drops = logOf('500x 475x 450o 475o 500x', (index) => ({ plannedHeight: index === 2 ? 425 : null }));
    expect(found(replayed(protocol, drops))).toEqual(['DROP-01@4 minor']);
  });

  it('DROP-04: moved the wrong way, or not at all', () => {
    expect(of('500x 525x 500x 475o 500x')).toEqual(['DROP-04@3 minor']);
    expect(of('500x 475o 475o 500x 475o')).toEqual(['DROP-04@4 minor']);
    expect(replayed(protocol, logOf('500x 525x 500x 475o 500x')).series[0]!.broken).toContain('DROP-04');
  });

  it('DROP-05: right direction, wrong size', () => {
    expect(of('500x 450o 475o 500x 475o')).toEqual(['DROP-05@3 minor']);
  });

  it('DROP-05: one deviation where the step changes midway, from its first move', () => {
    expect(of('500x 475o 500x 480o 500x 480o 500o 520x 500o')).toEqual(['DROP-05@5 minor']);
    expect(of('500x 475o 500x 450o 500o 550x 500x 450o')).toEqual(['DROP-05@5 minor']);
  });

  it('DROP-05: twice where the step changes back', () => {
    expect(of('500x 475o 500x 480o 500x 480o 500x 475o 500o 525x 500o')).toEqual([
      'DROP-05@5 minor',
      'DROP-05@9 minor',
    ]);
  });

  it('two moves of another size are two slips, not a new step', () => {
    expect(of('500x 450o 500x 475o 500x')).toEqual(['DROP-05@3 minor', 'DROP-05@4 minor']);
  });

  it('DROP-06: starts off the plan, on a level or off all of them', () => {
    expect(of('600x 575o 600x 575x 550o')).toEqual(['DROP-06@2 minor']);
    expect(of('613x 588o 613x 588x 563o')).toEqual(['DROP-06@2 minor']);
    expect(of('510x 475o 500x 475o 500x')).toEqual(['DROP-01@2 minor']);
  });

  it('follows a ratio step without rounding: level k = start·(1 + r)^k', () => {
    const ratio = upAndDownProtocol({ start: 400, step: { kind: 'ratio', ratio: 0.05 } });
    // 400·1.05^k for k = 1, 2, −1 by hand: 420, 441, 380.952380952…
    const result = replayed(ratio, logOf('400o 420o 441x 420x 400x 380.95o'));
    expect(found(result)).toEqual([]);
    expect(result.drops[5]!.ruleHeight).toBeCloseTo(380.952380952, 8);
    expect(found(replayed(ratio, logOf('400o 420o 441x 420x 400x 383o 400x 380.95o')))).toEqual([
      'DROP-01@7 minor',
    ]);
  });

  it('stays at a limit, the narrower of protocol and rig, and says that the path is no count path', () => {
    const rig = rigOf({ limits: { min: null, max: 525 } });
    const result = replayed(protocol, logOf('500o 525o 525o 525x 500x'), { rig });
    expect(found(result)).toEqual(['DROP-09@run minor']);
    expect(result.series[0]!.broken).toContain('limit');
    expect(found(replayed(protocol, logOf('500o 525o 550x 525x 500o 525x'), { rig }))).toEqual([
      'DROP-05@4 minor',
    ]);
  });
});

describe('rising heights', () => {
  const protocol = risingProtocol();
  const of = (text: string) => found(replayed(protocol, risesOf(text)));
  const CLEAN = '350o 375o 400x / 350o 375x / 350o 375o 400o 425x';

  it('finds nothing in clean rises', () => {
    expect(of(CLEAN)).toEqual([]);
  });

  it('reads interleaved rises', () => {
    const order = ['A', 'B', 'A', 'B', 'C', 'B', 'C'];
    const mixed = logOf('350o 350o 375x 375o 350o 400x 375x', (index) => ({ specimen: order[index]! }));
    expect(found(replayed(protocol, mixed))).toEqual([]);
    expect(found(replayed(protocol, changed(mixed, { 5: { height: 400 } })))).toEqual([
      'DROP-02@5 minor',
      'DROP-02@7 minor',
    ]);
  });

  it('DROP-01, DROP-02, DROP-03', () => {
    expect(of('350o 378o 400x / 350o 375x')).toEqual(['DROP-01@3 minor']);
    expect(of('350o 400o 425x / 350o 375x')).toEqual(['DROP-02@3 minor']);
    expect(of('350o 375o 375o 400x / 350o 375x')).toEqual(['DROP-02@4 minor']);
    expect(of('350o 375o 350o 375o 400x / 350o 375x')).toEqual(['DROP-03@4 minor']);
  });

  it('DROP-06: a specimen off its start, whose own levels hold for it alone', () => {
    expect(of('310o 335o 360x / 350o 375x')).toEqual(['DROP-06@2 minor']);
  });

  it('DROP-07: the first hit fails, and for the run when more than a fifth do', () => {
    const rest = Array.from({ length: 5 }, () => '350o 375x').join(' / ');
    expect(of(`350x / ${rest}`)).toEqual(['DROP-07@2 minor']);
    const result = replayed(protocol, risesOf('350x / 350o 375x / 350o 375x'));
    expect(found(result)).toEqual(['DROP-07@2 minor', 'DROP-07@run minor']);
    expect(result.deviations[0]!.scope).toBe('specimen');
    expect(result.deviations[1]!.scope).toBe('run');
  });

  it('DROP-08: a note for a specimen that survives the top, which keeps the test conforming', () => {
    const low = risingProtocol({ limits: { min: null, max: 410 } });
    const result = replayed(low, risesOf('350o 375o 400o / 350o 375x'));
    expect(found(result)).toEqual(['DROP-08@4 note']);
    expect(result.conformance.status).toBe('conforming');
    // Another hit at the top is as right, and tells nothing new.
    expect(found(replayed(low, risesOf('350o 375o 400o 400o / 350o 375x')))).toEqual(['DROP-08@4 note']);
  });

  it('a rise broken off is a note', () => {
    const result = replayed(protocol, risesOf('350o 375o / 350o 375x'));
    expect(found(result)).toEqual([]);
    expect(result.notes.join()).toContain('"T1"');
  });

  it('a repeat of a drop that a check left out is as right as going on', () => {
    const banded = risingProtocol({
      pressure: { value: 2, unit: 'bar', tolerance: { kind: 'absolute', value: 0.05 }, text: '' },
    });
    const drops = risesOf('350o 375o 375o 400x / 350o 375x', () => ({ pressure: 2 }));
    expect(found(replayed(banded, changed(drops, { 3: { pressure: 1.5 } })))).toEqual([
      'DROP-21@3 invalidating',
    ]);
  });
});
