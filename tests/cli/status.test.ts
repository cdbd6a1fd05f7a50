import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

const folder = mkdtempSync(join(tmpdir(), 'drum-status-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/**
 * 30 km/h for two hours from 05:00, one row a minute: 60 km of 90, at whole kilometres a minute of half a km.
 *
 * @param rules keys of the protocol, and of the run, each a line
 */
function running(rules = '', tables = '') {
  const rows = Array.from({ length: 121 }, (_, minute) => {
    const time = new Date(Date.UTC(2026, 2, 2, 5, minute)).toISOString();
    return `${time},30.00,650.0,${(minute * 0.5).toFixed(3)}\n`;
  });
  writeFileSync(join(folder, 'log.csv'), `time,speed [km/h],load [N],distance [km]\n${rows.join('')}`);
  writeFileSync(
    join(folder, 'protocol.yaml'),
    `format: tirelab.protocol/1
id: short
version: 1.0.0
kind: endurance
sampling: 0.0166666666666667 Hz
schedule:
  - { block: first, distance: 45 km, speed: 30 km/h ± 2 %, load: 650 N ± 2 % }
  - { block: second, distance: 45 km, speed: 30 km/h ± 2 %, load: 650 N ± 2 % }
${rules}`,
  );
  const run = join(folder, 'run.yaml');
  writeFileSync(run, `format: tirelab.run/1\nid: r-1\nprotocol: protocol.yaml\nlogs: [log.csv]\n${tables}`);
  return run;
}

async function json(args: readonly string[], env: Record<string, string> = {}) {
  const { status, out } = await tirelab(['status', '--json', ...args], { env });
  return { status, result: JSON.parse(out) };
}

describe('tirelab status', () => {
  it('says how far a run is, and when its blocks end', async () => {
    const { status, result } = await json([running(), '--as-of', '2026-03-02']);
    expect(status).toBe(0);
    const [run] = result.runs;
    expect(result).toMatchObject({ schema: 'tirelab.status/1', asOf: '2026-03-02' });
    expect(run).toMatchObject({ run: 'r-1', planned: 90, block: 'second', lastTime: '2026-03-02T07:00:00Z' });
    expect(run.distance.logged).toBeCloseTo(60, 6);
    // 60 km in two hours of the calendar; 30 km are left, an hour at 30 km/h.
    expect(run.pace).toBeCloseTo(30, 6);
    expect(run.forecasts).toMatchObject([
      { what: 'end of first', at: 45, standing: 'reached', earliest: null },
      {
        what: 'end of second',
        at: 90,
        standing: 'due',
        earliest: '2026-03-02T08:00:00Z',
        atPace: '2026-03-02T08:00:00Z',
      },
    ]);
  });

  it('takes the day from SOURCE_DATE_EPOCH, and what comes after it is not due', async () => {
    // 2026-03-01T12:00:00Z.
    const { result } = await json([running()], { SOURCE_DATE_EPOCH: '1772366400' });
    expect(result.asOf).toBe('2026-03-01');
    expect(result.runs[0].forecasts[1].standing).toBe('later');
  });

  it('says in words what is due', async () => {
    const { out } = await tirelab(['status', running(), '--as-of', '2026-03-02']);
    expect(out).toContain('Due by the end of 2026-03-02: r-1: end of second.');
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  it('forecasts the limit of wear with its interval, from the inspections', async () => {
    const { result } = await json(['fixtures/drum-run/run.yaml', '--as-of', '2026-03-02']);
    const life = result.runs[0].wear.find(({ quantity }: { quantity: string }) => quantity === 'wearLife');
    expect(life.interval.lower).toBeLessThan(life.value);
    expect(life.interval.upper).toBeGreaterThan(life.value);
    expect(result.runs[0].lastInspection.distance).toBe(10);
    expect(result.runs[0].lastEvents[0]).toMatchObject({ event: 'top-up', specimen: 'T-071' });
  });

  it('says which looks at the tyres are due, and which were done', async () => {
    writeFileSync(join(folder, 'looks.csv'), 'specimen,distance [km]\nT-1,24.5\n');
    const run = running('inspections: { at: [25 km], every: 40 km }\n', 'inspections: looks.csv\n');
    const { result } = await json([run, '--as-of', '2026-03-02']);
    const looks = result.runs[0].forecasts.filter(({ what }: { what: string }) => what.startsWith('look'));
    // The one at 25 km was done half a kilometre early; that at 40 km is past; 80 km are 40 min away.
    expect(looks).toMatchObject([
      { what: 'look at 40 km', standing: 'due', earliest: null },
      { what: 'look at 80 km', standing: 'due', earliest: '2026-03-02T07:40:00Z' },
    ]);
  });

  it('says whether the test may be started again, and what was noted since the tyres were looked at', async () => {
    writeFileSync(join(folder, 'looks.csv'), 'specimen,distance [km]\nT-1,40\n');
    const events = ['2026-03-02T05:30:00Z,,trip,arm', '2026-03-02T06:45:00Z,,trip,arm'];
    writeFileSync(join(folder, 'events.csv'), `time,specimen,event,value\n${events.join('\n')}\n`);
    const tables = 'inspections: looks.csv\nevents: events.csv\n';
    const allowed = await json([
      running('pauses: { allowed: 0, from: 1 h }\n', tables),
      '--as-of',
      '2026-03-02',
    ]);
    expect(allowed.result.runs[0]).toMatchObject({
      interruptions: 0,
      restart: { allowed: true },
      eventsSinceLook: 1,
    });
    // Two hours of standing in the middle.
    const log = readFileSync(join(folder, 'log.csv'), 'utf8').trimEnd().split('\n');
    const later = log.slice(61).map((line) => line.replace(/T0(\d)/u, (_, hour) => `T0${Number(hour) + 2}`));
    const standing = Array.from({ length: 120 }, (_, minute) => {
      return `${new Date(Date.UTC(2026, 2, 2, 6, minute)).toISOString()},0.00,650.0,29.500`;
    });
    writeFileSync(join(folder, 'log.csv'), [...log.slice(0, 61), ...standing, ...later, ''].join('\n'));
    const { result } = await json([join(folder, 'run.yaml'), '--as-of', '2026-03-02']);
    expect(result.runs[0]).toMatchObject({ interruptions: 1, restart: { allowed: false } });
  });

  it('tells of a broken run, and how the others stand', async () => {
    const { status, out, err } = await tirelab(['status', '--json', running(), 'fixtures/none.yaml']);
    const result = JSON.parse(out);
    expect(status).toBe(2);
    expect(result.runs).toHaveLength(1);
    expect(result.unread).toMatchObject([{ path: 'fixtures/none.yaml' }]);
    expect(err).toContain('fixtures/none.yaml');
  });

  it('refuses a drop test and a date that is none', async () => {
    const drop = await tirelab(['status', 'fixtures/demo/run.yaml']);
    expect(drop.status).toBe(2);
    expect(drop.err).toContain('only drum tests');
    const date = await tirelab(['status', running(), '--as-of', '2026-02-30']);
    expect(date.status).toBe(2);
    expect(date.err).toContain('expected a date');
    expect(readFileSync(join(folder, 'run.yaml'), 'utf8')).toContain('r-1');
  });
});
