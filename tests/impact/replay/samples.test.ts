import { describe, expect, it } from 'vitest';
import { NO_DETAILS } from '../../../src/logs/drop.ts';
import type { Specimen } from '../../../src/logs/register.ts';
import {
  constructionOf,
  found,
  logOf,
  replayed,
  risesOf,
  risingProtocol,
  upAndDownProtocol,
} from '../invented.ts';

// Series of several constructions in one log: each by its own rule. Moves by hand, from 500 mm by 25 mm.

const row = (specimen: string, construction: string, role: string | null = null): Specimen => ({
  file: 'specimens.csv',
  line: 2,
  specimen,
  construction,
  role,
  mass: null,
  other: {},
  measured: {},
});

/** A and B in turn, each a staircase of its own. */
const MIXED = logOf('500o 500x 525x 475o 500o 500x');
const AB = MIXED.map(({ specimen }, i) => row(specimen, i % 2 === 0 ? 'A' : 'B'));

describe('a session of two constructions', () => {
  it('replays each by its own rule, and pools nothing', () => {
    const result = replayed(upAndDownProtocol(), MIXED, { specimens: AB });
    expect(found(result)).toEqual([]);
    expect(result.samples.map(({ name, counts }) => [name, counts.drops, counts.failures])).toEqual([
      ['A', 3, 1],
      ['B', 3, 2],
    ]);
    expect(result.samples[0]!.drops.map(({ drop }) => drop.line)).toEqual([2, 4, 6]);
  });

  it('puts the constructions in the order of the run', () => {
    const constructions = [constructionOf('B'), constructionOf('A')];
    const result = replayed(upAndDownProtocol(), MIXED, { specimens: AB, constructions });
    expect(result.samples.map(({ key }) => key.construction)).toEqual(['B@1', 'A@1']);
  });

  it('sets spare and reference tyres aside: in no series, in no count', () => {
    const spare = AB.map((it) => (it.construction === 'B' ? { ...it, role: 'spare' } : it));
    const result = replayed(upAndDownProtocol(), MIXED, { specimens: spare });
    expect(found(result)).toEqual([]);
    expect(result.samples).toHaveLength(1);
    expect(result.counts).toMatchObject({ drops: 3, validDrops: 3, excluded: 0, specimens: 3 });
    expect(result.notes.join()).toContain('3 drops on reference or spare tyres are set aside');
  });

  it('makes a reference construction that the run names a sample that is last', () => {
    const reference = AB.map((it) => (it.construction === 'A' ? { ...it, role: 'reference' } : it));
    const constructions = [constructionOf('A'), constructionOf('B')];
    const result = replayed(upAndDownProtocol(), MIXED, { specimens: reference, constructions });
    expect(result.samples.map(({ key }) => [key.construction, key.role])).toEqual([
      ['B@1', 'candidate'],
      ['A@1', 'reference'],
    ]);
  });
});

describe('a rig in two configurations', () => {
  const details = (rig: string) => ({ ...NO_DETAILS, rig });
  const columns = new Set(['rig']);

  it('parts the series for the estimate, and tells the change once', () => {
    const log = logOf('500o 525x 500o 525x', (i) => ({ details: details(i < 2 ? 'r@1' : 'r@2') }));
    const result = replayed(upAndDownProtocol(), log, { columns });
    expect(found(result)).toEqual(['DROP-19@4 invalidating']);
    expect(result.samples.map(({ name, refused }) => [name, refused])).toEqual([
      ['r@1', null],
      ['r@2', null],
    ]);
    expect(result.conformance.status).toBe('invalid');
  });

  it('of two rigs side by side each has its own series', () => {
    const log = logOf('500o 500x 525x 475o 500o 500x', (i) => ({
      details: details(i % 2 === 0 ? 'r@1' : 's@1'),
    }));
    const result = replayed(upAndDownProtocol(), log, { columns });
    expect(found(result)).toEqual([]);
    expect(result.samples).toHaveLength(2);
  });
});

describe('a failure that is not of the tyre (DROP-41, DROP-42)', () => {
  it('ends a rise at its last survived height', () => {
    const log = risesOf('350o 375o 400x / 350o 375x', (i) => ({ damage: i === 2 ? 'bead-burp' : null }));
    const result = replayed(risingProtocol(), log);
    expect(found(result)).toEqual(['DROP-41@4 invalidating']);
    expect(result.drops[2]).toMatchObject({ use: 'left-out', because: 'DROP-41' });
  });

  it('counts where the tyre gave way too', () => {
    const log = logOf('500o 525x', (i) => ({ damage: i === 1 ? 'tube-valve; casing-cut@sidewall' : null }));
    expect(replayed(upAndDownProtocol(), log).counts.failures).toBe(1);
  });

  it("goes by the protocol's own failure modes", () => {
    const log = logOf('500o 525x', (i) => ({ damage: i === 1 ? 'casing-cut-tread' : null }));
    const result = replayed(upAndDownProtocol({ failureModes: ['pinch-two-cuts'] }), log);
    expect(found(result)).toContain('DROP-44@3 invalidating');
  });
});

describe('an outcome that was amended (DROP-43)', () => {
  it('stands in the estimate, while the rule goes by what the operator saw', () => {
    const log = logOf('500o 525o 550x');
    const amended = log.map((drop) => (drop.line === 3 ? { ...drop, outcome: 'failed' as const } : drop));
    const acted = new Map([[amended[1]!, 'survived' as const]]);
    const result = replayed(upAndDownProtocol(), amended, { acted });
    expect(found(result)).toContain('DROP-43@3 note');
    expect(found(result).filter((it) => /DROP-0[1-5]/u.test(it))).toEqual([]);
    expect(result.counts.failures).toBe(2);
    expect(result.series[0]!.broken).toContain('amended');
  });

  it('ends a rise where the slow leak began', () => {
    const log = risesOf('350o 375o 400x');
    const amended = log.map((drop) => (drop.line === 3 ? { ...drop, outcome: 'failed' as const } : drop));
    const acted = new Map([[amended[1]!, 'survived' as const]]);
    const result = replayed(risingProtocol(), amended, { acted });
    expect(result.drops.map(({ use }) => use)).toEqual(['used', 'used', 'ignored']);
  });
});
