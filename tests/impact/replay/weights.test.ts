import { describe, expect, it } from 'vitest';
import { mountingsOf } from '../../../src/impact/replay/mounting.ts';
import { type DropDetails, NO_DETAILS } from '../../../src/logs/drop.ts';
import type { Mounting } from '../../../src/logs/mountings.ts';
import type { Specimen } from '../../../src/logs/register.ts';
import {
  changed,
  found,
  logOf,
  quantity,
  replayed,
  risesOf,
  risingProtocol,
  upAndDownProtocol,
} from '../invented.ts';

// Limits and severities: common practice, no source. Heights and pressures invented.

const KEPT = '500x 475x 450o 475o 500x 475o 500o 525x 500o 525o 550x 525x 500o 525x 500x 475o 500x 475o';
const numbered = (text: string, at: number, gap: number) =>
  logOf(text, (i) => ({ number: i + 1 + (i >= at ? gap : 0) }));
const told = (result: ReturnType<typeof replayed>, code: string) =>
  result.deviations
    .filter((it) => it.code === code)
    .map(({ severity, line, message }) => ({ severity, line, message }));

describe('DROP-49, a gap in the numbers', () => {
  const heavy = upAndDownProtocol({ heavier: ['DROP-49'] });

  it('is minor as a rule, and says whether a failure may be missing', () => {
    expect(told(replayed(upAndDownProtocol(), numbered(KEPT, 5, 2)), 'DROP-49')).toEqual([
      {
        severity: 'minor',
        line: 7,
        message: expect.stringMatching(/gap of 2 drops.*may have been a failure/u),
      },
    ]);
  });

  it('invalidates the drop behind it where the protocol says so and a failure may be missing', () => {
    const result = replayed(heavy, numbered(KEPT, 5, 2));
    expect(told(result, 'DROP-49')).toMatchObject([{ severity: 'invalidating', line: 7 }]);
    expect(result.drops[5]).toMatchObject({ use: 'left-out', because: 'DROP-49' });
    expect(result.conformance.status).toBe('deviating');
  });

  it('stays minor where one number is missing and the height goes on from the drop before', () => {
    expect(told(replayed(heavy, numbered(KEPT, 5, 1)), 'DROP-49')).toEqual([
      { severity: 'minor', line: 7, message: expect.stringContaining('follows from the drop before') },
    ]);
  });

  it('does not stay minor where a failure in between explains a step of twice the size', () => {
    const drops = numbered('500x 475x 450o 475o 500o 525o 550x 500x 475o', 7, 1);
    expect(told(replayed(heavy, drops), 'DROP-49')).toMatchObject([{ severity: 'invalidating', line: 9 }]);
  });

  it('stays minor where the tyre was hit again', () => {
    const protocol = risingProtocol({ heavier: ['DROP-49'] });
    const rise = (at: number) =>
      risesOf('350o 375o 400x / 350o 375o 400x', (i) => ({ number: i + 1 + (i >= at ? 1 : 0) }));
    expect(told(replayed(protocol, rise(2)), 'DROP-49')).toMatchObject([{ severity: 'minor', line: 4 }]);
    expect(told(replayed(protocol, rise(3)), 'DROP-49')).toMatchObject([
      { severity: 'invalidating', line: 5 },
    ]);
  });

  it('stays minor for numbers that come twice', () => {
    expect(told(replayed(heavy, numbered(KEPT, 5, -1)), 'DROP-49')).toMatchObject([{ severity: 'minor' }]);
  });
});

describe('other departures that a protocol weighs heavier', () => {
  const pressed = (pressure: number) => changed(logOf(KEPT), { 7: { pressure } });
  const protocol = upAndDownProtocol({ pressure: quantity(2, 'bar', { kind: 'absolute', value: 0.05 }) });

  it('leave out the drop where the milder weight is minor', () => {
    expect(found(replayed(protocol, pressed(2.08)))).toEqual(['DROP-21@7 minor']);
    const result = replayed({ ...protocol, heavier: ['DROP-21'] }, pressed(2.08));
    expect(found(result)).toEqual(['DROP-21@7 invalidating']);
    expect(result.deviations[0]!.message).toMatch(/heavier than usual \(heavier\): the drop is left out/u);
    expect(result.counts.excluded).toBe(1);
  });

  it('leave out the specimen where the heavier weight is of the specimen', () => {
    const rows = ['T1', 'T2'].map((specimen): Specimen => {
      const other = { 'tube batch': specimen === 'T1' ? 'K3' : 'K4', tube: 'U' };
      return {
        file: 's',
        line: 2,
        specimen,
        construction: null,
        role: null,
        mass: null,
        other,
        measured: {},
      };
    });
    const drops = risesOf('350o 375o 400x / 350o 375o 400x');
    const use = (heavier: string[]) =>
      replayed(risingProtocol({ heavier }), drops, { specimens: rows }).drops.map((it) => it.use);
    expect(use([])).not.toContain('left-out');
    expect(use(['DROP-38']).slice(3)).toEqual(['left-out', 'left-out', 'left-out']);
  });
});

const details = (changes: Partial<DropDetails>): DropDetails => ({ ...NO_DETAILS, ...changes });

describe('the pressure after a hit', () => {
  const left = (line: number, pressureAfter: number, damage: string | null = null) =>
    changed(
      logOf(KEPT, () => ({ pressure: 2 })),
      { [line]: { details: details({ pressureAfter }), damage } },
    );
  const protocol = upAndDownProtocol();

  it('is DROP-45 where a survival lost more than twice the tolerance of the pressure', () => {
    expect(found(replayed(protocol, left(4, 1.9)))).toEqual([]);
    const result = replayed(protocol, left(4, 1.89));
    expect(found(result)).toEqual(['DROP-45@4 minor']);
    expect(result.deviations[0]!.message).toMatch(
      /survived, and 2 bar before the hit and 1\.89 bar after it/u,
    );
  });

  it('goes by the loss of the protocol where it states one', () => {
    const strict = upAndDownProtocol({ leakCheck: { method: null, hold: 60, loss: 0.02 } });
    expect(found(replayed(strict, left(4, 1.97)))).toEqual(['DROP-45@4 minor']);
    // Line 2 failed: without a loss and without a damage, nothing shows it.
    expect(found(replayed(strict, left(2, 1.99)))).toEqual(['DROP-45@2 minor']);
    expect(found(replayed(strict, left(2, 1.99, 'casing-cut')))).toEqual([]);
    expect(found(replayed(strict, left(2, 0.2)))).toEqual([]);
  });

  it('says nothing where a burp explains the loss', () => {
    expect(found(replayed(protocol, left(4, 1.5, 'bead-burp')))).toEqual([]);
  });
});

describe('the leak check', () => {
  const asked = upAndDownProtocol({ leakCheck: { method: 'water-bath', hold: null, loss: null } });
  const columns = new Set(['leakCheck']);
  const checked = (words: (line: number) => string | null) =>
    logOf(KEPT).map((drop) => ({ ...drop, details: details({ leakCheck: words(drop.line) }) }));

  it('is DROP-46, minor, where it is done in another way than planned or at first', () => {
    const late = checked((line) => (line < 6 ? 'water-bath' : 'by-ear'));
    for (const protocol of [asked, upAndDownProtocol()]) {
      expect(found(replayed(protocol, late, { columns }))).toEqual(['DROP-46@6 minor']);
    }
    expect(
      found(
        replayed(
          asked,
          checked(() => 'by-ear'),
          { columns },
        ),
      ),
    ).toEqual(['DROP-46@2 minor']);
  });

  it('is missed in a note where the protocol asks for it', () => {
    const some = replayed(
      asked,
      checked((line) => (line === 4 ? null : 'water-bath')),
      { columns },
    );
    expect(some.notes).toContainEqual(expect.stringMatching(/not noted for 1 of 9 survivals/u));
    expect(replayed(asked, logOf(KEPT)).notes).toContainEqual(
      expect.stringMatching(/not noted for any survival/u),
    );
    expect(replayed(upAndDownProtocol(), logOf(KEPT)).notes.join()).not.toMatch(/leak check/u);
  });
});

describe('the torque of the axle nuts', () => {
  const mounting = (specimen: string, torque: number, fromDrop: number | null = null): Mounting => ({
    file: 'm',
    line: 2,
    specimen,
    fromDrop,
    rim: null,
    rimWidth: null,
    rimType: null,
    tube: null,
    tubeMaterial: null,
    tubeBatch: null,
    sealant: null,
    insert: null,
    torque,
    zeroSet: null,
  });
  const notes = (mountings: readonly Mounting[], protocol = risingProtocol()) =>
    replayed(protocol, risesOf('350o 375o 400x / 350o 375o 400x / 350o 375x'), { mountings }).notes.filter(
      (it) => it.includes('Axle'),
    );

  it('is noted where it differs from most, or from the plan, from a drop on', () => {
    expect(mountingsOf([mounting('T1', 15)]).all).toHaveLength(1);
    expect(notes([mounting('T1', 15), mounting('T2', 16), mounting('T3', 15)])).toEqual([]);
    expect(notes([mounting('T1', 15), mounting('T2', 9), mounting('T3', 15), mounting('T1', 20, 2)])).toEqual(
      ['Axle nuts tightened otherwise: "T1" from drop 2 20 N·m, "T2" 9 N·m; most others 15 N·m.'],
    );
    const planned = risingProtocol({
      mounting: {
        rimWidth: null,
        rimType: null,
        tube: null,
        sealant: null,
        insert: null,
        torque: quantity(9, 'Nm', { kind: 'absolute', value: 1 }),
      },
    });
    expect(notes([mounting('T1', 15), mounting('T2', 9)], planned)).toEqual([
      'Axle nuts tightened otherwise: "T1" 15 N·m; planned 9 N·m.',
    ]);
  });
});

describe('remarks', () => {
  it('that tell of something odd are shown, and leave nothing out', () => {
    const remarks: Readonly<Record<number, string>> = {
      3: 'nochmal, war schief',
      4: 'new tyre, fine',
      6: 'Reifen gewechselt!!',
    };
    const drops = logOf(KEPT).map((drop) => ({ ...drop, remark: remarks[drop.line] ?? null }));
    const result = replayed(upAndDownProtocol(), drops);
    expect(result.notes).toContainEqual(
      expect.stringContaining('2 drops that count, to be read: line 3 "nochmal, war schief", line 6 "Reifen'),
    );
    expect(result.counts.excluded).toBe(0);
  });
});
