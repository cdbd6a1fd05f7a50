import { describe, expect, it } from 'vitest';
import { energyScale } from '../../../src/rig/energy.ts';
import {
  changed,
  constructionOf,
  found,
  logOf,
  quantity,
  replayed,
  risesOf,
  risingProtocol,
  upAndDownProtocol,
} from '../invented.ts';

// Rules: CONTRACT, "Rules of the methods"; limits and severities: common practice, no source.

const protocol = upAndDownProtocol();
/** 18 drops on the path, so that one or two left out are no fifth. */
const KEPT = '500x 475x 450o 475o 500x 475o 500o 525x 500o 525o 550x 525x 500o 525x 500x 475o 500x 475o';

describe('drops that the log calls invalid', () => {
  /** The drop of line 4 is invalid and repeated at its height on a new specimen. */
  const withInvalid = (reason: string | null) => {
    const drops = logOf(KEPT.replace('450o', '450x 450o'));
    return replayed(protocol, changed(drops, { 4: { valid: false, reason } }));
  };

  it('with a reason of the catalogue: that code, out of estimate and counts, repeated at its height', () => {
    const result = withInvalid('DROP-16');
    expect(found(result)).toEqual(['DROP-16@4 invalidating']);
    expect(result.deviations[0]).toMatchObject({ scope: 'drop', specimen: 'T03', drop: 3, count: 1 });
    expect(result.conformance.status).toBe('deviating');
    expect(result.counts).toMatchObject({ drops: 19, validDrops: 18, excluded: 1, unexplained: 0 });
    expect(result.drops[2]).toMatchObject({
      use: 'invalid',
      steers: false,
      ruleHeight: 450,
      because: 'DROP-16',
    });
    expect(result.series[0]!.progress.drops).toBe(18);
    expect(result.series[0]!.broken).toContain('line 4');
    expect(found(withInvalid('double hit (drop-16)'))).toEqual(['DROP-16@4 invalidating']);
  });

  it('without one: DROP-54, minor, and the drop is kept for the second estimate', () => {
    for (const reason of [null, '', 'looked odd', 'DROP-99', 'DROP-07', 'DROP-54']) {
      const result = withInvalid(reason);
      expect(found(result)).toEqual(['DROP-54@4 minor']);
      expect(result.counts).toMatchObject({ validDrops: 18, excluded: 1, unexplained: 1 });
    }
  });

  it('echoes a reason safely', () => {
    expect(withInvalid('a\u001b[31mb').deviations[0]!.message).toContain('"a\\u{1b}[31mb"');
  });

  it('DROP-44: an empty or not evaluable outcome is repeated and enters no count', () => {
    for (const word of ['450?', '450-']) {
      const result = replayed(protocol, logOf(KEPT.replace('450o', `${word} 450o`)));
      expect(found(result)).toEqual(['DROP-44@4 invalidating']);
      expect(result.counts).toMatchObject({ validDrops: 18, excluded: 1 });
      expect(result.conformance.status).toBe('deviating');
    }
  });

  it('is invalid as a run when more than a fifth of the drops are out, not at a fifth', () => {
    const out = (count: number) =>
      replayed(
        protocol,
        logOf('500x 475x 450o 475o 500x 475o 475o 475o 475o 475o', (index) => ({
          valid: index < 10 - count,
          reason: 'DROP-16',
        })),
      ).conformance;
    expect(out(2).status).toBe('deviating');
    expect(out(3).status).toBe('invalid');
    expect(out(3).why).toContain('3 of 10 drops');
  });
});

describe('specimens', () => {
  const register = (names: readonly string[], construction: string | null = 'C-1') =>
    names.map((specimen, index) => ({
      file: 'specimens.csv',
      line: index + 2,
      specimen,
      construction,
      role: null,
      mass: null,
      other: {},
      measured: {},
    }));
  const drops = logOf(KEPT);
  const names = drops.map(({ specimen }) => specimen);
  const constructions = [constructionOf('C-1')];

  it('finds nothing for registered ones', () => {
    const named = { specimens: register(names), constructions };
    expect(found(replayed(protocol, drops, named))).toEqual([]);
    expect(found(replayed(protocol, drops, { specimens: register(names, 'C-1@1'), constructions }))).toEqual(
      [],
    );
  });

  it('DROP-52: once for one that is not registered, and all its drops are out', () => {
    const twice = upAndDownProtocol({
      sites: { ...protocol.sites, perSpecimen: 2 },
      afterFailure: 'new-site',
    });
    const reused = changed(drops, { 5: { specimen: 'X' }, 6: { specimen: 'X' } });
    const result = replayed(twice, reused, { specimens: register(names), constructions });
    expect(found(result)).toEqual(['DROP-52@5 invalidating']);
    expect(result.deviations[0]!.scope).toBe('specimen');
    expect(result.counts).toMatchObject({ validDrops: 16, excluded: 2 });
    expect(result.drops[3]).toMatchObject({ use: 'left-out', steers: true });
    // Nor does an unexplained exclusion bring a stranger back.
    const excluded = changed(reused, { 5: { specimen: 'X', valid: false } });
    expect(replayed(twice, excluded, { specimens: register(names), constructions }).counts.unexplained).toBe(
      0,
    );
  });

  it('DROP-52: registered under a construction that the run does not name', () => {
    const specimens = register(names).map((row) =>
      row.specimen === 'T04' ? { ...row, construction: 'C-2' } : row,
    );
    const result = replayed(protocol, drops, { specimens, constructions });
    expect(found(result)).toEqual(['DROP-52@5 invalidating']);
    expect(result.deviations[0]!.message).toContain('"C-2"');
    expect(
      found(replayed(protocol, drops, { specimens: register(names, 'C-1@2'), constructions })).length,
    ).toBe(18);
  });

  it('DROP-33: more hits than planned, one by default; the extra hit stays in the path', () => {
    const result = replayed(protocol, changed(drops, { 6: { specimen: 'T04' } }));
    expect(found(result)).toEqual(['DROP-33@6 invalidating']);
    expect(result.drops[4]).toMatchObject({ use: 'left-out', steers: true, because: 'DROP-33' });
    expect(result.counts.validDrops).toBe(17);
    const two = upAndDownProtocol({ sites: { ...protocol.sites, perSpecimen: 2 } });
    expect(found(replayed(two, changed(drops, { 6: { specimen: 'T04' } })))).toEqual([]);
  });

  it('DROP-33: an invalid drop and its repeat on one specimen are one hit', () => {
    const repeated = changed(logOf(KEPT.replace('450o', '450x 450o')), {
      4: { specimen: 'T03', valid: false, reason: 'DROP-16' },
      5: { specimen: 'T03' },
    });
    expect(found(replayed(protocol, repeated))).toEqual(['DROP-16@4 invalidating']);
  });

  it('DROP-34: rows after a failure are ignored, and no deviation beyond a note', () => {
    const rising = risingProtocol();
    const result = replayed(rising, risesOf('350o 375x 400x / 350o 375x'));
    expect(found(result)).toEqual(['DROP-34@4 note']);
    expect(result.conformance.status).toBe('conforming');
    expect(result.counts).toMatchObject({ drops: 5, validDrops: 4, failures: 2, excluded: 0 });
    const three = upAndDownProtocol({ sites: { ...protocol.sites, perSpecimen: 3 } });
    const again = replayed(three, changed(drops, { 4: { specimen: 'T02' } }));
    expect(found(again)).toEqual(['DROP-34@4 note']);
    // A single look that is ignored is missing from the estimate.
    expect(again.conformance.status).toBe('deviating');
    expect(again.counts.excluded).toBe(1);
  });

  it('a failed specimen hit again up-and-down is one hit too many, and out', () => {
    const result = replayed(protocol, changed(drops, { 4: { specimen: 'T02' } }));
    expect(found(result)).toEqual(['DROP-34@4 note', 'DROP-33@4 invalidating']);
    expect(result.drops[2]).toMatchObject({ use: 'left-out', steers: true });
    expect(result.counts).toMatchObject({ validDrops: 17, excluded: 1 });
    const one = replayed(
      protocol,
      drops.map((drop) => ({ ...drop, specimen: 'T' })),
    );
    expect(one.counts.validDrops).toBe(1);
    expect(one.conformance.status).toBe('invalid');
  });

  it('DROP-34: not where a failed specimen is hit again at a new site by plan', () => {
    const again = upAndDownProtocol({
      sites: { ...protocol.sites, perSpecimen: 3 },
      afterFailure: 'new-site',
    });
    expect(found(replayed(again, changed(drops, { 4: { specimen: 'T02' } })))).toEqual([]);
  });

  it('is invalid as a run when more than a third of the specimens are out', () => {
    const specimens = register(names.slice(0, 11));
    const conformance = replayed(protocol, drops, { specimens, constructions }).conformance;
    expect(conformance.status).toBe('invalid');
    expect(conformance.why).toContain('7 of 18 specimens');
  });
});

describe('drop numbers (DROP-49)', () => {
  const numbered = (
    numbers: readonly (number | null)[],
    series: (index: number) => string | null = () => null,
  ) => {
    const path = KEPT.split(' ').slice(0, numbers.length).join(' ');
    return found(
      replayed(
        protocol,
        logOf(path, (index) => ({ number: numbers[index]!, series: series(index) })),
      ),
    );
  };
  const only49 = (all: string[]) => all.filter((each) => each.startsWith('DROP-49'));

  it('takes any first number, as of a rig that counts its hits', () => {
    expect(numbered([1, 2, 3, 4, 5, 6])).toEqual([]);
    expect(numbered([104, 105, 106, 107, 108, 109])).toEqual([]);
    expect(numbered([null, null, null, null, null, null])).toEqual([]);
  });

  it('finds a missing, a doubled, a blank number, one going back, a slip', () => {
    expect(numbered([1, 2, 3, 5, 6, 7])).toEqual(['DROP-49@5 minor']);
    expect(numbered([1, 2, 3, 3, 4, 5])).toEqual(['DROP-49@5 minor']);
    expect(numbered([1, 2, 3, 3, 5, 6])).toEqual(['DROP-49@5 minor']);
    expect(numbered([1, 2, 3, null, 5, 6])).toEqual(['DROP-49@5 minor']);
    expect(numbered([1, 2, 3, 2, 5, 6])).toEqual(['DROP-49@5 minor']);
    expect(numbered([1, 2, 3, 40, 5, 6])).toEqual(['DROP-49@5 minor']);
  });

  it('takes numbers from 1 within each series where the log counts so', () => {
    const series = (index: number) => (index % 2 === 0 ? 'A' : 'B');
    const both = (numbers: number[]) => only49(numbered(numbers, series));
    expect(both([1, 1, 2, 2, 3, 3, 4, 4])).toEqual([]);
    expect(both([1, 1, 2, 2, 4, 3, 5, 4])).toEqual(['DROP-49@6 minor']);
    expect(both([1, 2, 3, 4, 5, 6, 7, 8])).toEqual([]);
  });
});

describe('conditions', () => {
  const banded = upAndDownProtocol({
    pressure: quantity(2, 'bar', { kind: 'absolute', value: 0.05 }),
    temperature: quantity(23, '°C'),
  });
  const drops = logOf(KEPT, () => ({ pressure: 2, temperature: 23 }));
  const withDrop = (change: object, of = banded) => {
    const result = replayed(of, changed(drops, { 5: change }));
    return [found(result), result.drops[3]!.use] as const;
  };

  it('DROP-21: out of the band minor, beyond twice its width out', () => {
    expect(withDrop({ pressure: 2.05 })).toEqual([[], 'used']);
    expect(withDrop({ pressure: 1.95 })).toEqual([[], 'used']);
    expect(withDrop({ pressure: 2.051 })).toEqual([['DROP-21@5 minor'], 'used']);
    expect(withDrop({ pressure: 1.9 })).toEqual([['DROP-21@5 minor'], 'used']);
    expect(withDrop({ pressure: 1.89 })).toEqual([['DROP-21@5 invalidating'], 'left-out']);
  });

  it('DROP-21: by the tyre size of the construction', () => {
    const bySize = upAndDownProtocol({
      pressure: { '62-622': quantity(1.6, 'bar'), '50-622': quantity(2, 'bar') },
    });
    const of = (size: string | null) =>
      replayed(bySize, drops, { constructions: [constructionOf('C-1', '1', size)] });
    expect(found(of('50-622'))).toEqual([]);
    expect(found(of('62-622')).length).toBe(18);
    expect(of(null).notes.join()).toContain('by tyre size');
  });

  it('DROP-25: beyond 2 K minor, beyond 5 K out', () => {
    expect(withDrop({ temperature: 25 })).toEqual([[], 'used']);
    expect(withDrop({ temperature: 20.9 })).toEqual([['DROP-25@5 minor'], 'used']);
    expect(withDrop({ temperature: 28 })).toEqual([['DROP-25@5 minor'], 'used']);
    expect(withDrop({ temperature: 28.1 })).toEqual([['DROP-25@5 invalidating'], 'left-out']);
    const wide = { ...banded, temperature: quantity(23, '°C', { kind: 'absolute', value: 8 }) };
    expect(withDrop({ temperature: 30 }, wide)).toEqual([[], 'used']);
    expect(withDrop({ temperature: 31.1 }, wide)).toEqual([['DROP-25@5 invalidating'], 'left-out']);
  });

  it('says what was planned and not recorded', () => {
    const bare = replayed(banded, logOf(KEPT));
    expect(found(bare)).toEqual([]);
    expect(bare.notes.filter((note) => note.includes('not recorded'))).toHaveLength(2);
  });

  it("DROP-11: a mass off by more than 0.5 %, minor, and the log's mass counts", () => {
    expect(withDrop({ mass: 8.04 })).toEqual([[], 'used']);
    expect(withDrop({ mass: 8.05 })).toEqual([['DROP-11@5 minor'], 'used']);
    const tight = { ...banded, mass: quantity(8, 'kg', { kind: 'absolute', value: 0.01 }) };
    expect(withDrop({ mass: 8.02 }, tight)).toEqual([['DROP-11@5 minor'], 'used']);
  });

  // v = √(2·9.80665·0.475 m) = 3.0522 m/s, by hand.
  it('DROP-12 and DROP-13: too slow for a free fall, and too fast', () => {
    const free = 3.0522;
    expect(withDrop({ velocity: free })).toEqual([[], 'used']);
    expect(withDrop({ velocity: 0.981 * free })).toEqual([[], 'used']);
    expect(withDrop({ velocity: 0.975 * free })).toEqual([['DROP-12@5 minor'], 'used']);
    expect(withDrop({ velocity: 0.969 * free })).toEqual([['DROP-12@5 invalidating'], 'left-out']);
    expect(withDrop({ velocity: 1.009 * free })).toEqual([[], 'used']);
    expect(withDrop({ velocity: 1.011 * free })).toEqual([['DROP-13@5 invalidating'], 'left-out']);
  });

  it('DROP-14: velocities missing from a log that has them, a note up to a tenth', () => {
    const speeds = drops.map((drop) => ({
      ...drop,
      velocity: Math.sqrt(2 * 9.80665 * (drop.height / 1000)),
    }));
    const columns = new Set(['velocity']);
    const without = (...lines: number[]) =>
      found(
        replayed(
          banded,
          changed(speeds, Object.fromEntries(lines.map((line) => [line, { velocity: null }]))),
          {
            columns,
          },
        ),
      );
    expect(without()).toEqual([]);
    expect(without(5)).toEqual(['DROP-14@5 note']);
    expect(without(5, 6)).toEqual(['DROP-14@5 minor']);
    const kinetic = upAndDownProtocol({ energy: 'kinetic' });
    // What is measured needs no free fall to be believed.
    const slow = replayed(kinetic, changed(speeds, { 5: { velocity: 2.8 } }), { columns });
    expect(found(slow)).toEqual(['DROP-12@5 minor']);
    expect(slow.drops[3]!.use).toBe('used');
    const result = replayed(kinetic, changed(speeds, { 5: { velocity: null } }), { columns });
    expect(found(result)).toEqual(['DROP-14@5 invalidating']);
    expect(energyScale(kinetic, null, speeds, columns).of(result.drops[3]!.drop)).toBeNull();
  });
});

describe('sites', () => {
  const sites = { perSpecimen: 4, spacing: 45, each: 'new-spot', avoid: [{ center: 0, half: 20 }] } as const;
  const spaced = upAndDownProtocol({ sites });
  const at = (second: number, of = spaced) =>
    found(
      replayed(
        of,
        changed(
          logOf(KEPT, () => ({ site: 90 })),
          { 6: { specimen: 'T04', site: second } },
        ),
      ),
    );

  it('DROP-31: nearer than 30° is the same site, round the tyre', () => {
    expect(at(90)).toEqual(['DROP-31@6 invalidating']);
    expect(at(119)).toEqual(['DROP-31@6 invalidating']);
    expect(at(135)).toEqual([]);
    const roundTheTyre = upAndDownProtocol({ sites: { ...sites, avoid: [] } });
    const wrap = changed(
      logOf(KEPT, () => ({ site: 350 })),
      { 6: { specimen: 'T04', site: 10 } },
    );
    expect(found(replayed(roundTheTyre, wrap))).toEqual(['DROP-31@6 invalidating']);
  });

  it('DROP-31: without a spacing within 5°; with a narrow one, nearer than it', () => {
    const free = upAndDownProtocol({ sites: { ...sites, spacing: null } });
    expect(at(95, free)).toEqual(['DROP-31@6 invalidating']);
    expect(at(96, free)).toEqual([]);
    const narrow = upAndDownProtocol({ sites: { ...sites, spacing: 20 } });
    expect(at(109, narrow)).toEqual(['DROP-31@6 invalidating']);
    expect(at(110, narrow)).toEqual([]);
  });

  it('DROP-32: nearer than the spacing, or in an avoided stretch', () => {
    expect(at(130)).toEqual(['DROP-32@6 minor']);
    expect(at(345)).toEqual(['DROP-32@6 minor']);
    expect(at(15)).toEqual(['DROP-32@6 minor']);
    expect(at(21)).toEqual([]);
  });

  it('DROP-31: only a note where the hit before was left out by the log', () => {
    const drops = changed(
      logOf(KEPT.replace('450o', '450x 450o'), () => ({ site: 90 })),
      {
        4: { specimen: 'T03', valid: false, reason: 'DROP-16' },
        5: { specimen: 'T03' },
      },
    );
    expect(found(replayed(spaced, drops))).toEqual(['DROP-16@4 invalidating', 'DROP-31@5 note']);
  });

  it('same-spot: one place again and again is the plan', () => {
    const spot = risingProtocol({ sites: { perSpecimen: 1, spacing: null, each: 'same-spot', avoid: [] } });
    expect(
      found(
        replayed(
          spot,
          risesOf('350o 375o 400x / 350o 375x', () => ({ site: 90 })),
        ),
      ),
    ).toEqual([]);
    const newSpot = risingProtocol();
    expect(
      found(
        replayed(
          newSpot,
          risesOf('350o 375o 400x / 350o 375x', () => ({ site: 90 })),
        ),
      ),
    ).toEqual(['DROP-31@3 invalidating', 'DROP-31@4 invalidating', 'DROP-31@6 invalidating']);
  });

  it('series-per-site: each site of a specimen rises from the start', () => {
    const perSite = risingProtocol({
      sites: { perSpecimen: 2, spacing: 90, each: 'series-per-site', avoid: [] },
      afterFailure: 'new-site',
    });
    const log = risesOf('350o 375x 350o 375o 400x', (index) => ({ site: index < 2 ? 0 : 180 }));
    expect(found(replayed(perSite, log))).toEqual([]);
    expect(found(replayed(perSite, changed(log, { 6: { site: 0 } })))).toEqual(['DROP-34@6 note']);
    const third = risesOf('350o 375x 350o 375x 350o 375x', (index) => ({ site: 90 * Math.floor(index / 2) }));
    const result = replayed(perSite, third);
    expect(found(result)).toEqual(['DROP-33@6 invalidating']);
    expect(result.drops.map(({ use }) => use)).toEqual([
      'used',
      'used',
      'used',
      'used',
      'left-out',
      'left-out',
    ]);
  });
});
