import { describe, expect, it } from 'vitest';
import { VISIBILITY } from '../../src/conformance/visibility.ts';
import { WRITTEN_KINDS } from './by-another-hand.ts';
import { INJECTIONS } from './injections.ts';
import { falseAlarms, falseAlarmsElsewhere, tally } from './tally.ts';

// bench/mutator.ts does the same at 100 places; its table is bench/mutator.md.

describe('every visible deviation, put into a clean test', () => {
  it('has an injection', () => {
    const injected = new Set(INJECTIONS.map(({ code }) => code));
    const visible = VISIBILITY.filter(({ seen }) => !seen.includes('none')).map(({ code }) => code);
    expect(visible.filter((code) => !injected.has(code))).toEqual([]);
  });

  it.each(INJECTIONS.map((injection) => [`${injection.code}, ${injection.how}`, injection] as const))(
    '%s: told with its code at its line, and nothing else',
    async (_, injection) => {
      const { missed, alarms } = await tally(injection, 4, 1000);
      expect({ missed, alarms }).toEqual({ missed: [], alarms: [] });
    },
  );
});

describe('clean tests', () => {
  it.each(['up-and-down', 'rising-height', 'session'] as const)('of %s raise nothing', async (kind) => {
    expect(await falseAlarms(kind, 15, 2000)).toEqual([]);
  });

  it.each(WRITTEN_KINDS)('written by another hand raise nothing: %s', async (kind) => {
    expect(await falseAlarmsElsewhere(kind, 15, 2000)).toEqual([]);
  });
});
