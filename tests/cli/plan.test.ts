import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

const P = 'protocols/pinch-up-down.yaml';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tirelab-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const plan = async (...args: string[]) => {
  const { status, out, err } = await tirelab(['plan', ...args, '--tests', '500', '--json']);
  return { status, err, ...JSON.parse(out) };
};

describe('tirelab plan', () => {
  it('gives levels with energies (m·g·h) and speeds (√(2gh))', async () => {
    const { status, schema, levels } = await plan(P);
    expect([status, schema]).toEqual([0, 'tirelab.plan/1']);
    const start = levels.find(({ isStart }: { isStart: boolean }) => isStart);
    expect(start.height).toBe(500);
    expect(start.energy).toBeCloseTo(8 * 9.80665 * 0.5, 10);
    expect(start.impactSpeed).toBeCloseTo(3.13156, 5);
    const heights = levels.map(({ height }: { height: number }) => height);
    expect(heights.slice(0, 3)).toEqual([300, 325, 350]);
  });

  it('counts hours by the minutes stated', async () => {
    const { asWritten } = await plan(P, '--per-drop', '6 min', '--per-tyre', '0.2 h');
    expect(asWritten.found.effort).toEqual({ drops: 30, specimens: 30, hours: 9 });
  });

  it('lays a run sheet out in blocks of one specimen of each construction, by a seed', async () => {
    const table = join(folder, 'specimens.csv');
    const rows = ['A1,A,900', 'A2,A,910', 'A3,A,905', 'B1,B,880', 'B2,B,870', 'B3,B,890'];
    writeFileSync(table, `specimen,construction,mass [g]\n${rows.join('\n')}\n`);
    const sheetOf = async (seed: string) => (await plan(P, '--specimens', table, '--seed', seed)).sheet;
    const sheet = await sheetOf('1');
    expect(sheet.map(({ order }: { order: number }) => order)).toEqual([1, 2, 3, 4, 5, 6]);
    const byBlock = (block: number) =>
      sheet
        .filter((row: { block: number }) => row.block === block)
        .map(({ specimen }: { specimen: string }) => specimen)
        .sort();
    // The heaviest of each construction meet, the next, the lightest.
    expect([byBlock(1), byBlock(2), byBlock(3)].sort()).toEqual([
      ['A1', 'B2'],
      ['A2', 'B3'],
      ['A3', 'B1'],
    ]);
    expect(await sheetOf('1')).toEqual(sheet);
    const others = await Promise.all(['2', '3', '4', '5'].map(sheetOf));
    expect(others.some((other) => JSON.stringify(other) !== JSON.stringify(sheet))).toBe(true);
  });

  it('keeps sites out of what the protocol avoids, each once on a tyre', async () => {
    const { sheet } = await plan('protocols/pinch-rising-height.yaml', '--specimens', '3');
    const sites = sheet
      .filter(({ specimen }: { specimen: string }) => specimen === 'T-02')
      .map(({ site }: { site: number }) => site);
    expect(sites).toHaveLength(8);
    expect(new Set(sites).size).toBe(8);
    for (const site of sites) expect(Math.min(site, 360 - site)).toBeGreaterThan(20);
  });

  it('writes the sheet as a log that can be filled in and read', async () => {
    const path = join(folder, 'sheet.csv');
    const { status } = await tirelab(['plan', P, '--specimens', '3', '--sheet', path, '--tests', '100']);
    expect(status).toBe(0);
    const [head, first] = readFileSync(path, 'utf8').split('\n');
    expect(head).toMatch(
      /^drop,block,construction,specimen,site \[deg\],planned height \[mm\],height \[mm\],/u,
    );
    const filled = join(folder, 'filled.csv');
    const cells = first!.split(',');
    cells[head!.split(',').indexOf('height [mm]')] = '500';
    cells[head!.split(',').indexOf('outcome')] = 'failed';
    writeFileSync(filled, `${head}\n${cells.join(',')}\n`);
    const { out } = await tirelab(['next', '--protocol', P, '--json', filled]);
    expect(JSON.parse(out)).toMatchObject({ decision: 'height', height: 475 });
    expect((await tirelab(['plan', P, '--sheet', path, '--tests', '100'])).status).toBe(2);
  });

  it('proposes start and step by earlier results: 50 J and 3 J of 27 drops under 8 kg', async () => {
    const path = join(folder, 'earlier.json');
    const estimates = [
      { quantity: 'medianFailureEnergy', value: 50, unit: 'J', drops: 27 },
      { quantity: 'energySpread', value: 3, unit: 'J', drops: 27 },
    ];
    writeFileSync(path, JSON.stringify({ schema: 'tirelab.result/1', kind: 'impact', estimates }));
    const { proposal } = await plan(P, '--from', path);
    // 50 J/(8 kg · g) = 637.3 mm, 3 J · 27/24 = 3.375 J: 43.0 mm; to 5 mm.
    expect(proposal).toMatchObject({ median: 50, spread: 3.375, start: 635, step: 45 });
    writeFileSync(path, '{"schema":"other/1"}');
    expect(await plan(P, '--from', path)).toMatchObject({ status: 2 });
  });

  it('asks what the tyres withstand where a rising-height protocol does not tell', async () => {
    const { status, asWritten } = await plan('protocols/pinch-rising-height.yaml');
    expect([status, asWritten.found]).toEqual([0, null]);
    expect(asWritten.why).toContain('--median');
  });

  it('answers precision, gain and what is at hand; fewer tyres see less', async () => {
    const { precision, gain, atHand } = await plan(
      P,
      '--spread',
      '4 J',
      '--precision',
      '2 J',
      '--gain',
      '10 %',
      '--specimens',
      '20',
    );
    expect(precision.found.within.value).toBeLessThanOrEqual(2);
    expect(gain.found.power.value).toBeGreaterThanOrEqual(0.8);
    expect(gain.found.effort.drops).toBe(2 * gain.found.size);
    expect(atHand.found.gain).toBeGreaterThan(0.1);
  });

  for (const [what, args, message] of [
    ['a power of all', ['--power', '100 %'], /--power: found "100 %", expected between/],
    ['a power below nought', ['--power', '-5 %'], /--power/],
    ['a gain of nought', ['--gain', '0 %'], /--gain: found "0 %", expected more than nought/],
    ['a precision without a unit', ['--precision', '2'], /--precision: found "2" without a unit/],
    ['a spread of nought', ['--spread', '0 J'], /--spread: found "0 J"/],
    ['a truth beyond the rig', ['--median', '2000 mm'], /expected a median that the rig reaches/],
    ['no tyre', ['--specimens', '0'], /--specimens: found "0"/],
  ] as const) {
    it(`refuses ${what}`, async () => {
      const { status, out, err } = await tirelab(['plan', P, ...args]);
      expect([status, out]).toEqual([2, '']);
      expect(err).toMatch(message);
    });
  }

  it('stays within 80 columns, cautions and all', async () => {
    const { out } = await tirelab(['plan', P, '--gain', '20 %', '--specimens', '10', '--tests', '200']);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(out).toContain('ISO 4210, ISO 5775');
    expect(out).toContain('never reach under it');
  });
});
