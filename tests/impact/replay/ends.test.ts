import { describe, expect, it } from 'vitest';
import { nextAdvice } from '../../../src/impact/replay/replay.ts';
import {
  changed,
  found,
  logOf,
  quantity,
  replayed,
  rigOf,
  risesOf,
  risingProtocol,
  upAndDownProtocol,
} from '../invented.ts';

// Rules: CONTRACT, "Rules of the methods".

const KEPT = '500x 475x 450o 475o 500x 475o 500o 525x';

describe('the end of an up-and-down series', () => {
  const of = (text: string, stop: object | null = null) => replayed(upAndDownProtocol({ stop }), logOf(text));

  it('DROP-09: no change of outcome, or one reversal, is only a bound, and no invalid run', () => {
    expect(found(of('500o 525o 550o 575o'))).toEqual(['DROP-09@run minor']);
    expect(of('500o 525o 550o 575o').deviations[0]!.message).toContain('all of which survived');
    expect(found(of('500o 525o 550x 525x'))).toEqual(['DROP-09@run minor']);
    expect(of('500o 525o 550x 525x').conformance.status).toBe('deviating');
    expect(found(of('500o 525x 500o'))).toEqual([]);
  });

  it('DROP-10: fewer drops than the stop rule asks', () => {
    const result = of(KEPT, { drops: 30 });
    expect(found(result)).toEqual(['DROP-10@run minor']);
    expect(result.deviations[0]).toMatchObject({ scope: 'run', specimen: null, drop: null });
    expect(result.deviations[0]!.message).toContain('8 of 30 valid drops');
    expect(found(of(KEPT, { drops: 8 }))).toEqual([]);
    expect(found(of(KEPT, { specimens: 9 }))).toEqual(['DROP-10@run minor']);
    expect(found(of(KEPT, { specimens: 8 }))).toEqual([]);
    // x x o o x o o x changes four times.
    expect(found(of(KEPT, { reversals: 5 }))).toEqual(['DROP-10@run minor']);
    expect(found(of(KEPT, { reversals: 4 }))).toEqual([]);
  });

  it('DROP-10: an invalid drop enters no count', () => {
    const drops = changed(logOf('500x 475x 475x 450o 475o 500x 475o 500o 525x'), {
      3: { valid: false, reason: 'DROP-16' },
    });
    expect(found(replayed(upAndDownProtocol({ stop: { drops: 9 } }), drops))).toContain('DROP-10@run minor');
    expect(found(replayed(upAndDownProtocol({ stop: { drops: 8 } }), drops))).toEqual([
      'DROP-16@3 invalidating',
    ]);
  });

  it('DROP-56: drops beyond the stop, told once at the first', () => {
    const result = of(KEPT, { drops: 6 });
    expect(found(result)).toEqual(['DROP-56@8 minor']);
    expect(result.deviations[0]!.message).toContain('2 drops');
    expect(result.counts.validDrops).toBe(8);
  });

  it('goes on after `drops` until the rarer outcome was seen often enough, atMost so far', () => {
    // Eight drops, four failed: the rarer outcome four times.
    expect(found(of(KEPT, { drops: 6, rarer: 4, atMost: 20 }))).toEqual([]);
    expect(found(of(KEPT, { drops: 6, rarer: 5, atMost: 20 }))).toEqual(['DROP-10@run minor']);
    expect(found(of(KEPT, { drops: 4, rarer: 5, atMost: 7 }))).toEqual(['DROP-56@9 minor']);
  });

  it('without a stop rule it is said, and nothing is checked', () => {
    expect(of(KEPT).notes.join()).toContain('no stop rule');
    expect(of(KEPT, { drops: 8 }).notes).toEqual([]);
  });

  it('keeps series of one log apart', () => {
    const one = logOf(KEPT, () => ({ series: 'A' }));
    const other = logOf('500o 525o 550x 525x 500o 525x 500o 525x', (index) => ({
      series: 'B',
      specimen: `U${index}`,
    }));
    const mixed = one
      .flatMap((drop, index) => [drop, other[index]!])
      .map((drop, index) => ({ ...drop, line: index + 2 }));
    const protocol = upAndDownProtocol({ stop: { drops: 8 } });
    expect(found(replayed(protocol, mixed))).toEqual([]);
    // As one series the same rows would be a muddle.
    expect(
      found(
        replayed(
          protocol,
          mixed.map((drop) => ({ ...drop, series: null })),
        ),
      ).length,
    ).toBeGreaterThan(4);
    expect(replayed(protocol, mixed).series.map(({ name }) => name)).toEqual(['A', 'B']);
  });
});

describe('the end of rises', () => {
  it('counts specimens for the stop, whatever the last drop was', () => {
    const of = (text: string, specimens: number) =>
      found(replayed(risingProtocol({ stop: { specimens } }), risesOf(text)));
    expect(of('350o 375x / 350o 375o 400x', 2)).toEqual([]);
    expect(of('350o 375x / 350o 375o 400x', 3)).toEqual(['DROP-10@run minor']);
    expect(of('350o 375x / 350o 375x / 350o 375x', 2)).toEqual(['DROP-56@6 minor']);
  });
});

describe('the end of rises on several sites', () => {
  it('a further site of the last specimen is not beyond a stop that counts specimens', () => {
    const perSite = risingProtocol({
      sites: { perSpecimen: 2, spacing: 90, each: 'series-per-site', avoid: [] },
      afterFailure: 'new-site',
      stop: { specimens: 1 },
    });
    const log = risesOf('350o 375x 350o 375o 400x', (index) => ({ site: index < 2 ? 0 : 180 }));
    expect(found(replayed(perSite, log))).toEqual([]);
  });
});

describe('the advice after a log', () => {
  const advise = (text: string, of = upAndDownProtocol()) => nextAdvice(replayed(of, logOf(text)));

  it('is the next level, the stop, or the start', () => {
    expect(advise('500x 475o')).toMatchObject({ decision: 'height', height: 500, specimen: 'new' });
    expect(advise('500x 475x')).toMatchObject({ decision: 'height', height: 450 });
    expect(advise('500x 475o', upAndDownProtocol({ stop: { drops: 2 } }))).toMatchObject({
      decision: 'stop',
    });
    expect(advise('500x 475o 500-')).toMatchObject({ decision: 'height', height: 500 });
  });

  it('is for the series of the last drop', () => {
    const drops = logOf('500x 500o 475x', (index) => ({ series: index === 1 ? 'B' : 'A' }));
    expect(nextAdvice(replayed(upAndDownProtocol(), drops))).toMatchObject({ height: 450 });
  });

  it('in a rise: the same specimen, then a new one, also after an invalid hit that destroyed it', () => {
    const rise = (text: string, last: object = {}) => {
      const drops = risesOf(text);
      return nextAdvice(replayed(risingProtocol(), changed(drops, { [drops.length + 1]: last })));
    };
    expect(rise('350o 375o')).toMatchObject({ height: 400, specimen: 'same' });
    expect(rise('350o 375x')).toMatchObject({ height: 350, specimen: 'new' });
    expect(rise('350o 375x', { valid: false, reason: 'DROP-16' })).toMatchObject({
      height: 350,
      specimen: 'new',
    });
    expect(rise('350o 375o', { valid: false, reason: 'DROP-16' })).toMatchObject({
      height: 375,
      specimen: 'same',
    });
  });
});

describe('stated masses', () => {
  it('DROP-11 for the run where rig and protocol disagree', () => {
    const rig = rigOf({ mass: quantity(10, 'kg') });
    const result = replayed(upAndDownProtocol(), logOf(KEPT), { rig });
    expect(found(result)).toEqual(['DROP-11@run minor']);
    expect(result.deviations[0]!.scope).toBe('run');
    const same = replayed(upAndDownProtocol(), logOf(KEPT), { rig: rigOf({ mass: quantity(8.02, 'kg') }) });
    expect(found(same)).toEqual([]);
  });
});
