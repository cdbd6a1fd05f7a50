import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { afterAll, describe, expect, it } from 'vitest';
import { analyzeImpact } from '../../src/jobs/analyze-impact.ts';
import { documentsOf } from '../../src/jobs/documents-of.ts';
import { readImpactTest } from '../../src/jobs/impact-test.ts';
import { InputError } from '../../src/problem/problem.ts';

// Energies by hand, E = m·g·h; masses, days and heights invented.

const folder = mkdtempSync(join(tmpdir(), 'configurations-'));
afterAll(() => rmSync(folder, { recursive: true }));

const PROTOCOL = `format: tirelab.protocol/1
id: p
version: "1"
kind: impact
method: up-and-down
mass: 8 kg
start: 500 mm
step: 25 mm
limits: { min: 300 mm, max: 700 mm }
`;

/** A test of files by their names; a log is `drops.csv` unless the run says otherwise. */
async function analysed(files: Readonly<Record<string, string>>, logs = 'logs: [drops.csv]') {
  const run = `format: tirelab.run/1\nid: r\nprotocol: p.yaml\nrig: rig.yaml\n${logs}\n`;
  const all = { 'p.yaml': PROTOCOL, 'run.yaml': run, ...files };
  for (const [name, text] of Object.entries(all)) writeFileSync(join(folder, name), text);
  const request = { kind: 'run', path: join(folder, 'run.yaml') } as const;
  return analyzeImpact(await readImpactTest(documentsOf(request, Readable.from([]))));
}

const problemsOf = async (files: Readonly<Record<string, string>>) => {
  const error = await analysed(files).then(
    () => null,
    (thrown: unknown) => thrown,
  );
  expect(error).toBeInstanceOf(InputError);
  return (error as InputError).problems;
};

const DATED = `format: tirelab.rig/1
id: d
gravity: 10 m/s2
configurations:
  - { config: a, to: 2026-03-09, mass: 8 kg }
  - { config: b, from: 2026-03-10, to: 2026-03-11, mass: 9 kg }
`;
const row = (day: string, specimen: string, height: number, outcome: string) =>
  `${day}T09:00:00+01:00,${specimen},${height},${outcome}\n`;
const HEAD = 'time,specimen,height [mm],outcome\n';

describe('a rig whose mass was changed within a series', () => {
  const drops = HEAD + row('2026-03-09', 'T-1', 500, 'survived') + row('2026-03-10', 'T-2', 525, 'failed');

  it('splits it: each drop goes by the configuration of its day', async () => {
    const result = await analysed({ 'rig.yaml': DATED, 'drops.csv': drops });
    expect(result.path.map(({ energy }) => energy)).toEqual([8 * 10 * 0.5, 9 * 10 * 0.525]);
    expect(result.samples.map(({ rig, drops: count }) => [rig, count])).toEqual([
      ['d@a', 1],
      ['d@b', 1],
    ]);
    expect(result.conformance.deviations).toContainEqual(
      expect.objectContaining({ code: 'DROP-19', line: 3, severity: 'invalidating', scope: 'comparison' }),
    );
    expect(result.rig).toEqual({ id: 'd', config: 'a' });
    expect(result.energy.rigs).toMatchObject([
      { rig: 'd@a', mass: 8, massFrom: 'rig', gravity: 10 },
      { rig: 'd@b', mass: 9, massFrom: 'rig', gravity: 10 },
    ]);
  });

  it('goes by the configuration that the row names, whatever its day', async () => {
    const named = 'specimen,height [mm],outcome,rig\nT-1,500,failed,d@b\n';
    const result = await analysed({ 'rig.yaml': DATED, 'drops.csv': named });
    expect(result.path[0]!.energy).toBe(9 * 10 * 0.5);
    expect(result.rig).toEqual({ id: 'd', config: 'b' });
  });

  it('is refused where no configuration holds on the day, or no day is told', async () => {
    const late = drops + row('2026-03-12', 'T-3', 500, 'failed') + row('2026-03-13', 'T-4', 475, 'failed');
    expect(await problemsOf({ 'rig.yaml': DATED, 'drops.csv': late })).toMatchObject([
      {
        code: 'no-configuration',
        line: 4,
        message: expect.stringMatching(/2026-03-12.*2 drops of the log/u),
      },
    ]);
    const untimed = 'specimen,height [mm],outcome\nT-1,500,failed\n';
    expect(await problemsOf({ 'rig.yaml': DATED, 'drops.csv': untimed })).toMatchObject([
      { code: 'which-configuration', line: 2 },
    ]);
  });
});

describe('a mass that was found to be another by at most 1 %', () => {
  const proven = `format: tirelab.rig/1
id: d
gravity: 10 m/s2
mass: 8 kg
provenMass: { mass: 8.06 kg, by: W-17, on: 2026-04-02 }
`;

  it.each([
    ['is used where the log has none', 'specimen,height [mm],outcome\nT-1,500,failed\nT-2,475,survived\n'],
    [
      'is used where the log repeats the wrong one',
      'specimen,height [mm],outcome,mass [kg]\nT-1,500,failed,8.000\nT-2,475,survived,8.000\n',
    ],
  ])('%s, and listed', async (_, drops) => {
    const result = await analysed({ 'rig.yaml': proven, 'drops.csv': drops });
    expect(result.path.map(({ energy }) => energy)).toEqual([8.06 * 10 * 0.5, 8.06 * 10 * 0.475].map(near));
    expect(result.energy).toMatchObject({ mass: 8.06, massFrom: 'rig' });
    expect(result.massCorrections).toEqual([
      {
        rig: 'd',
        from: 'rig',
        stated: 8,
        used: { least: 8.06, most: 8.06 },
        drops: 2,
        file: join(folder, 'drops.csv'),
        firstLine: 2,
        lastLine: 3,
        by: 'W-17',
        on: '2026-04-02',
      },
    ]);
    // 0.75 % off the planned mass is beyond the usual 0.5 %: the rig is not as planned, and the test goes on.
    const told = result.conformance.deviations.filter(({ code }) => code === 'DROP-11');
    expect(told).toMatchObject([{ severity: 'minor', scope: 'run' }]);
  });

  it('is listed where the log weighed it; a larger difference is a departure only', async () => {
    const drops = 'specimen,height [mm],outcome,mass [kg]\nT-1,500,failed,8.03\nT-2,475,failed,8.2\n';
    const rig = 'format: tirelab.rig/1\nid: d\nmass: 8 kg\n';
    const result = await analysed({ 'rig.yaml': rig, 'drops.csv': drops });
    expect(result.massCorrections).toMatchObject([
      { from: 'log', stated: 8, used: { least: 8.03, most: 8.03 }, drops: 1, firstLine: 2, by: null },
    ]);
    expect(result.conformance.deviations).toContainEqual(
      expect.objectContaining({ code: 'DROP-11', line: 3 }),
    );
  });

  it('lists nothing where every mass is the stated one', async () => {
    const rig = 'format: tirelab.rig/1\nid: d\nmass: 8 kg\n';
    const drops = 'specimen,height [mm],outcome,mass [kg]\nT-1,500,failed,8.000\n';
    const result = await analysed({ 'rig.yaml': rig, 'drops.csv': drops });
    expect(result.massCorrections).toBeUndefined();
    expect(result.energy.rigs).toBeUndefined();
  });
});

describe('two rigs in one test', () => {
  const at = (id: string, gravity: number, most: number) =>
    `format: tirelab.rig/1\nid: ${id}\nmass: 8 kg\ngravity: ${gravity} m/s2\nlimits: { max: ${most} mm }\n`;

  it('have each the gravity of their place and the heights that they can reach', async () => {
    const climb = (id: string) =>
      ['500,survived', '525,survived', '525,survived'].map((rest, i) => `${id}-${i},${rest}\n`).join('');
    const head = 'specimen,height [mm],outcome\n';
    const result = await analysed(
      {
        'rig.yaml': at('low', 9.78, 525),
        'other.yaml': at('high', 9.83, 600),
        'drops.csv': head + climb('L'),
        'more.csv': head + climb('H'),
      },
      'logs: [drops.csv, { file: more.csv, rig: other.yaml }]',
    );
    const energies = result.path.map(({ energy }) => energy);
    expect(energies[0]).toBeCloseTo(8 * 9.78 * 0.5, 12);
    expect(energies[3]).toBeCloseTo(8 * 9.83 * 0.5, 12);
    // At 525 mm the first rig is at its end and stays there (CONTRACT, rules of the methods); the second is not, and
    // should have gone up.
    const path = result.conformance.deviations.filter(({ code }) => code === 'DROP-04' || code === 'DROP-05');
    expect(path.map(({ file }) => file)).toEqual([join(folder, 'more.csv')]);
    expect(result.energy.rigs).toMatchObject([
      { rig: 'low', gravity: 9.78, limits: { max: 525 } },
      { rig: 'high', gravity: 9.83, limits: { max: 600 } },
    ]);
  });
});

function near(value: number) {
  return expect.closeTo(value, 10);
}
