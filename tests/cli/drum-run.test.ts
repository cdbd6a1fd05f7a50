import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

const RUN = 'fixtures/drum-run/run.yaml';
const PROTOCOL = ['--protocol', 'fixtures/drum-run/protocol.yaml'];
const SAMPLES = 'fixtures/drum-run/samples.csv';

interface Sample {
  readonly time: number;
  readonly speed: number;
  readonly load: number;
  readonly distance: number;
}

/** The samples once more, read by hand: what the ledger must come to is added up from these. */
function samples(): Sample[] {
  const [, ...lines] = readFileSync(SAMPLES, 'utf8').trim().split('\n');
  return lines.map((line) => {
    const cells = line.split(',');
    return {
      time: Date.parse(cells[0]!) / 1000,
      speed: Number(cells[1]),
      load: Number(cells[2]),
      distance: Number(cells[5]),
    };
  });
}

/** km that the counter gained up to samples of which something holds. */
function gained(test: (row: Sample, before: Sample) => boolean): number {
  const rows = samples();
  return rows
    .slice(1)
    .reduce((sum, row, i) => sum + (test(row, rows[i]!) ? row.distance - rows[i]!.distance : 0), 0);
}

async function json(args: readonly string[], input?: string) {
  const { status, out, err } = await tirelab(
    ['analyze', '--json', ...args],
    input === undefined ? {} : { input },
  );
  expect(err).toBe('');
  return { status, result: JSON.parse(out) };
}

describe('the whole command on a short drum run', () => {
  it('keeps the ledger: what was logged, at condition, excluded, unverified', async () => {
    const { status, result } = await json([RUN]);
    expect(status).toBe(0);
    const rows = samples();
    const isGap = (row: Sample, before: Sample) => row.time - before.time > 15;
    const isHeavy = ({ load }: Sample) => load > 650 * 1.02;
    const { logged, atCondition, excluded, unverified } = result.distance;
    expect(logged).toBeCloseTo(rows.at(-1)!.distance - rows[0]!.distance, 9);
    expect(unverified).toBeCloseTo(gained(isGap), 9);
    expect(excluded).toBeCloseTo(
      gained((row, before) => !isGap(row, before) && (isHeavy(row) || row.speed <= 0.5)),
      9,
    );
    expect(atCondition + excluded + unverified).toBeCloseTo(logged, 9);
  });

  it('says each block, planned and run, with the share in tolerance of each channel', async () => {
    const { result } = await json([RUN]);
    const [runIn, main] = result.schedule;
    expect(runIn).toMatchObject({ block: 'run-in', planned: { distance: 2, time: null } });
    expect(runIn.logged.distance).toBeLessThanOrEqual(2);
    expect(main.logged.distance + runIn.logged.distance).toBeCloseTo(result.distance.logged, 9);
    const share = (block: typeof main, name: string) =>
      block.channels.find(({ channel }: { channel: string }) => channel === name)?.inTolerance;
    expect(share(runIn, 'load')).toBe(1);
    expect(share(main, 'load')).toBeGreaterThan(0.9);
    expect(share(main, 'load')).toBeLessThan(0.95);
    expect(share(main, 'pressure')).toBeNull();
  });

  it('finds what the log hides, each once and at its line', async () => {
    const { result } = await json([RUN]);
    const rows = samples();
    const heavy = rows.findIndex(({ load }) => load > 650 * 1.02) + 2;
    const gap = rows.findIndex((row, i) => i > 0 && row.time - rows[i - 1]!.time > 15) + 2;
    const stop = rows.findIndex(({ speed }) => speed === 0) + 2;
    expect(result.conformance.status).toBe('deviating');
    expect(
      result.conformance.deviations.map(({ code, line }: Record<string, unknown>) => [code, line]),
    ).toEqual([
      ['DRUM-02', heavy],
      // Two rows at standstill, each 5 s at 30 km/h behind the last that turned: 0.083 km.
      ['DRUM-04', stop],
      ['DRUM-19', gap],
      // The hot reading stands in line 10 of the inspections, the top-up in line 3 of the events.
      ['DRUM-24', 10],
      ['DRUM-09', 3],
    ]);
  });

  it('says the life as an interval, from kilometres at condition to every kilometre', async () => {
    const { result } = await json([RUN]);
    const { excluded, unverified } = result.distance;
    expect(result.lives).toHaveLength(1);
    expect(result.lives[0].lower).toBeCloseTo(9.5 - excluded - unverified, 9);
    expect(result.lives[0].upper).toBe(10);
  });

  it('reads the same from standard input, and without outcomes gives no life and a reason', async () => {
    const fromFile = await json([...PROTOCOL, SAMPLES]);
    const fromPipe = await json([...PROTOCOL, '-'], readFileSync(SAMPLES, 'utf8'));
    expect(fromPipe.result.distance).toEqual(fromFile.result.distance);
    expect(fromPipe.result.inputs.at(-1)).toMatchObject({ role: 'log', path: '-', rows: samples().length });
    expect(fromFile.status).toBe(0);
    expect(fromFile.result.verdict).toBeNull();
    for (const { value, why } of fromFile.result.estimates) {
      expect(value).toBeNull();
      expect(why).toMatch(/no outcomes/u);
    }
  });

  it('prints ledger, bars and cautions within 80 columns', async () => {
    const { out } = await tirelab(['analyze', RUN]);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    expect(out).toContain('at condition');
    expect(out).toContain('not kilometres on the road');
    expect(out).toMatch(/T-071 .*●/u);
  });

  it.each([
    ['a row that is no number', 'time,speed [km/h],load [N]\n2026-03-02T05:00:00Z,abc,650\n', 2],
    ['a time without an offset', 'time,speed [km/h],load [N]\n2026-03-02T05:00:00,30,650\n', 2],
  ])('refuses a log with %s, at its line', async (_, input, line) => {
    const { status, out } = await tirelab(['analyze', '--json', ...PROTOCOL, '-'], { input });
    expect(status).toBe(2);
    expect(JSON.parse(out).problems[0]).toMatchObject({ file: '-', line });
  });

  it('says so where a log is not there', async () => {
    const { status, err } = await tirelab(['analyze', ...PROTOCOL, 'fixtures/drum-run/gone.csv']);
    expect(status).toBe(2);
    expect(err).toContain('fixtures/drum-run/gone.csv: there is no such file');
  });
});
