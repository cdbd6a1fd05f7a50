import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { drumDeviations } from '../../src/endurance/deviations.ts';
import { passDrumLogs } from '../../src/endurance/drum-pass.ts';
import { summarise } from '../../src/endurance/summary.ts';
import { PLAIN_SAMPLES } from '../../src/logs/samples/dialect.ts';
import { block } from './drum-log.ts';

const schedule = [block('main', { distance: 10, speed: '36 km/h ± 2 %', load: '650 N ± 2 %' })];

async function read(name: string) {
  const path = fileURLToPath(new URL(`../../fixtures/drum/${name}`, import.meta.url));
  const pass = await passDrumLogs([path], { dialect: PLAIN_SAMPLES, schedule, sampling: null });
  const summary = summarise(pass);
  return { pass, summary, codes: drumDeviations(pass, summary).map(({ code, line }) => [code, line]) };
}

describe('fixtures/drum', () => {
  it('restart.csv: one test, nothing counted twice, nothing dropped unsaid', async () => {
    const { pass, summary, codes } = await read('restart.csv');
    // 240 rows at one second, 10 m from each to the next; one of them twice.
    expect(pass.logs[0]!.rows).toBe(241);
    expect(summary.distance).toEqual({ logged: 2.39, atCondition: 2.39, excluded: 0, unverified: 0 });
    expect(summary.schedule[0]!.loggedTime).toBe(239);
    expect(pass.logs[0]!.tallies).toEqual([
      { code: 'blank-line', count: 1, firstLine: 123, lastLine: 123 },
      { code: 'repeated-header', count: 1, firstLine: 124, lastLine: 124 },
      { code: 'truncated-line', count: 1, firstLine: 245, lastLine: 245 },
    ]);
    expect(pass.ledger.events.byKind.get('duplicate')).toMatchObject({ count: 1, last: { line: 122 } });
    expect(codes).toEqual([]);
  });

  it('hour-twice.csv: the clock steps back an hour, the counter orders the rows', async () => {
    const { summary, codes } = await read('hour-twice.csv');
    expect(codes).toEqual([['DRUM-21', 62]]);
    expect(summary.distance).toEqual({ logged: 1.79, atCondition: 1.79, excluded: 0, unverified: 0 });
    expect(summary.schedule[0]!.loggedTime).toBe(179);
  });
});
