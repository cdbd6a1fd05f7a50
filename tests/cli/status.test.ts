import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

const folder = mkdtempSync(join(tmpdir(), 'drum-status-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** 30 km/h for two hours from 05:00, one row a minute: 60 km of 90, at whole kilometres a minute of half a km. */
function running() {
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
`,
  );
  const run = join(folder, 'run.yaml');
  writeFileSync(run, 'format: tirelab.run/1\nid: r-1\nprotocol: protocol.yaml\nlogs: [log.csv]\n');
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
