import { describe, expect, it } from 'vitest';
import { type EndsTold, foundLives } from '../../../src/endurance/life/found-lives.ts';
import { lifeOf } from '../../../src/endurance/life/lives.ts';

const look = (specimen: string, distance: number, kind = 'planned', finding: string | null = null) => ({
  file: 'inspections.csv',
  line: 2,
  specimen,
  distance,
  kind,
  zone: null,
  finding,
  point: null,
  treadDepth: null,
  state: null,
  photo: null,
});
const event = (specimen: string | null, time: number, word: string, value: string | null = null) => ({
  file: 'events.csv',
  line: 3,
  time,
  specimen,
  event: word,
  value,
});
/** 30 km an hour, of which 29 at the condition. */
const reached = (hours: number) => ({ run: 30 * hours, atCondition: 29 * hours, isLogged: hours <= 200 });
const found = (told: Partial<EndsTold>) =>
  foundLives({ inspections: [], events: [], known: new Set(), reached: () => reached, ...told }).map(
    ({ outcome, notAtCondition }) => {
      const { specimen, failed, lower, upper, cause } = lifeOf(
        outcome,
        notAtCondition === null ? null : { notAtCondition },
      );
      return { specimen, failed, lower, upper, cause };
    },
  );

describe('foundLives', () => {
  it('is exact where an event says when, with the lower end at the condition', () => {
    expect(found({ events: [event('T-1', 100, 'failed', 'casing')] })).toEqual([
      { specimen: 'T-1', failed: true, lower: 2900, upper: 3000, cause: 'casing' },
    ]);
  });

  it('is an interval between the looks where an inspection found it', () => {
    const inspections = [look('T-1', 1000), look('T-1', 2000), look('T-1', 2500, 'failed', 'bead')];
    expect(found({ inspections })).toEqual([
      { specimen: 'T-1', failed: true, lower: 2000, upper: 2500, cause: 'bead' },
    ]);
  });

  it('is a suspension where it was taken off, and where another part failed', () => {
    expect(found({ events: [event('T-1', 100, 'taken off', 'position needed')] })).toMatchObject([
      { failed: false, lower: 2900, upper: Infinity },
    ]);
    expect(found({ inspections: [look('T-2', 4000, 'taken off')] })).toMatchObject([
      { failed: false, lower: 4000 },
    ]);
    expect(
      found({ inspections: [look('T-1', 3000), look('T-1', 3200, 'failed', 'valve torn')] }),
    ).toMatchObject([{ failed: false, lower: 3000, upper: Infinity }]);
  });

  it('takes an event of the whole drum for the tyre that is alone, and for none of several', () => {
    const events = [event(null, 100, 'failed', 'casing')];
    expect(found({ inspections: [look('T-1', 1000)], events })).toMatchObject([
      { specimen: 'T-1', upper: 3000 },
    ]);
    expect(found({ inspections: [look('T-1', 1000), look('T-2', 1000)], events })).toEqual([]);
  });

  it('says nothing of tyres that run on, that have an outcome, or whose end the log does not reach', () => {
    expect(found({ inspections: [look('T-1', 1000), look('T-1', 2000)] })).toEqual([]);
    expect(found({ events: [event('T-1', 100, 'failed')], known: new Set(['T-1']) })).toEqual([]);
    expect(found({ events: [event('T-1', 300, 'failed')] })).toEqual([]);
    expect(found({ events: [event('T-1', 100, 'failed')], reached: () => null })).toEqual([]);
  });
});
