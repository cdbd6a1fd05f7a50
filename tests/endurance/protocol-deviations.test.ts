import { describe, expect, it } from 'vitest';
import type { EnduranceProtocol } from '../../src/documents/kinds.ts';
import { eventDeviations } from '../../src/endurance/event-deviations.ts';
import { lifeOf } from '../../src/endurance/life/lives.ts';
import { type DrumRecords, protocolDeviations } from '../../src/endurance/protocol-deviations.ts';
import type { DrumSummary } from '../../src/endurance/summary.ts';
import type { RigCheck } from '../../src/logs/checks.ts';
import type { Inspection } from '../../src/logs/inspections.ts';
import type { Register } from '../../src/logs/register.ts';
import { block } from './drum-log.ts';

// Invented; the limits are those of the file under test (common practice, no source).
const HOUR = 3_600_000;
const LAST = Date.UTC(2026, 2, 16);
const protocol = (more: Partial<EnduranceProtocol> = {}) =>
  ({
    schedule: [block('main', { distance: 5000, speed: '30 km/h', load: '650 N' })],
    ...more,
  }) as EnduranceProtocol;
const RECORDS: DrumRecords = {
  protocol: protocol(),
  drum: null,
  summary: null,
  lives: [],
  inspections: [],
  events: [],
  checks: [],
  register: null,
  positions: 0,
  signs: [],
};
const summary = (more: object) =>
  ({ schedule: [], lastTime: LAST, kilometresPerRevolution: null, ...more }) as unknown as DrumSummary;
const life = (specimen: string, survived: number | null, failed: number | null) =>
  lifeOf({ file: 'outcomes.csv', line: 2, specimen, survived, failed, cause: null });
const look = (distance: number, more: Partial<Inspection> = {}) =>
  ({
    file: 'inspections.csv',
    line: 5,
    specimen: 'T-1',
    distance,
    kind: 'planned',
    photo: null,
    ...more,
  }) as Inspection;
const event = (word: string, time = LAST) => ({
  file: 'events.csv',
  line: 3,
  time,
  specimen: 'T-1',
  event: word,
  value: null,
});
const check = (more: Partial<RigCheck>) =>
  ({
    file: 'checks.csv',
    line: 4,
    passed: true,
    settled: null,
    value: 41,
    gauge: null,
    due: null,
    ...more,
  }) as RigCheck;
const told = (records: Partial<DrumRecords>) =>
  protocolDeviations({ ...RECORDS, ...records }).map(({ code, line }) => [code, line]);

describe('protocolDeviations', () => {
  it('finds nothing where nothing is', () => {
    expect(told({})).toEqual([]);
  });

  it('DRUM-06: the drum by counter and revolutions against the rig, 0.5 % apart', () => {
    const drum = { diameter: 1, cleats: 0, positions: [] };
    // π m a revolution.
    const at = (share: number) =>
      told({ drum, summary: summary({ kilometresPerRevolution: (share * Math.PI) / 1000 }) });
    expect(at(1.004)).toEqual([]);
    expect(at(1.006)).toEqual([['DRUM-06', null]]);
  });

  it('DRUM-16: the tyre against its limit', () => {
    const hot = (max: number) =>
      told({
        protocol: protocol({ stop: { pressureBelow: null, loadBelow: null, tyreAbove: 80 } }),
        summary: summary({
          schedule: [
            {
              channels: [{ channel: 'tyre temperature', max }],
              distance: { logged: 1 },
              plannedDistance: null,
            },
          ],
        }),
      });
    expect(hot(80)).toEqual([]);
    expect(hot(80.5)).toEqual([['DRUM-16', null]]);
  });

  it('DRUM-22: a planned look that nobody took, told at the next one', () => {
    const planned = protocol({ inspections: { at: [1000, 2000], every: null } });
    expect(told({ protocol: planned, inspections: [look(1000), look(2050), look(3000)] })).toEqual([]);
    expect(told({ protocol: planned, inspections: [look(1000), look(2500)] })).toEqual([['DRUM-22', 5]]);
  });

  it('DRUM-29 and DRUM-30: a sign hours and kilometres before the failure', () => {
    const signs = [{ kind: 'load jumps' as const, time: LAST - 5 * HOUR, km: 900 }];
    expect(told({ signs, lives: [life('T-1', 990, 1000)], events: [event('failed')] })).toEqual([
      ['DRUM-29', 3],
      ['DRUM-30', 2],
    ]);
    expect(
      told({ signs, lives: [life('T-1', 900, 900.5)], events: [event('failed', LAST - 4.5 * HOUR)] }),
    ).toEqual([]);
  });

  it('DRUM-32: all off at the first failure', () => {
    const lives = [life('T-1', 999, 1000), life('T-2', 1000, null), life('T-3', 1000, null)];
    expect(told({ lives })).toEqual([['DRUM-32', null]]);
    expect(told({ lives: [...lives.slice(0, 2), life('T-3', 1500, null)] })).toEqual([]);
  });

  it('DRUM-34: a tyre with a past', () => {
    const register = (history: string) =>
      ({
        specimens: [{ file: 'specimens.csv', line: 2, specimen: 'T-1', other: { history } }],
      }) as unknown as Register;
    expect(told({ register: register('virgin'), lives: [life('T-1', 10, null)] })).toEqual([]);
    expect(told({ register: register('drop test'), lives: [life('T-1', 10, null)] })).toEqual([
      ['DRUM-34', 2],
    ]);
  });

  it('DRUM-39: a block cut short', () => {
    const blocks = (first: number) =>
      told({
        summary: summary({
          schedule: [
            { block: 'run-in', channels: [], plannedDistance: 100, distance: { logged: first } },
            { block: 'main', channels: [], plannedDistance: 4900, distance: { logged: 10 } },
          ],
        }),
      });
    expect(blocks(96)).toEqual([]);
    expect(blocks(94)).toEqual([['DRUM-39', null]]);
  });

  it('DRUM-41, DRUM-42: gauges out of date, a reference out of its limits', () => {
    const log = summary({});
    expect(
      told({
        summary: log,
        checks: [check({ kind: 'gauge', due: LAST + HOUR }), check({ kind: 'reference' })],
      }),
    ).toEqual([]);
    expect(told({ summary: log, checks: [check({ kind: 'gauge', due: LAST - HOUR })] })).toEqual([
      ['DRUM-41', 4],
    ]);
    expect(told({ summary: log, checks: [check({ kind: 'reference', passed: false })] })).toEqual([
      ['DRUM-42', 4],
    ]);
  });

  it('DRUM-43, DRUM-47: several positions, a failure without its photo', () => {
    expect(told({ positions: 2 })).toEqual([['DRUM-43', null]]);
    const inspections = [look(1000, { photo: 'a.jpg' }), look(1200, { kind: 'failed' })];
    expect(told({ inspections, lives: [life('T-1', 1000, 1200)] })).toEqual([['DRUM-47', 5]]);
  });
});

it.each([
  ['cleat lost', 'DRUM-07'],
  ['cleats changed', 'DRUM-08'],
  ['top-up', 'DRUM-09'],
  ['sensor moved', 'DRUM-14'],
  ['fan', 'DRUM-15'],
  ['remounted', 'DRUM-26'],
  ['moved', 'DRUM-27'],
  ['taken off', 'DRUM-31'],
  ['schedule changed', 'DRUM-33'],
  ['misaligned', 'DRUM-35'],
  ['surface', 'DRUM-36'],
  ['debris', 'DRUM-37'],
  ['no warm-up', 'DRUM-38'],
  ['override', 'DRUM-48'],
])('the event "%s" is %s', (word, code) => {
  expect(eventDeviations([event(word)]).map((it) => [it.code, it.line])).toEqual([[code, 3]]);
});
