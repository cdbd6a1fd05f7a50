import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

const folder = mkdtempSync(join(tmpdir(), 'rig-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const RIG = 'shared/rigs/drop-2.yaml';

async function check(table: string, rig = RIG) {
  const { status, out, err } = await tirelab(['rig', rig, '-', '--json'], { input: table });
  return { status, result: JSON.parse(out), err };
}

describe('tirelab rig', () => {
  it('finds velocity ratio, height scale and mass, and says which share of the energy arrives', async () => {
    const args = ['rig', RIG, 'fixtures/rig-check/readings.csv', '--height', '500', '--pressure', '2'];
    const { status, out } = await tirelab([...args, '--json']);
    expect(status).toBe(0);
    const { properties, efficiency, gravity, uncertainty } = JSON.parse(out);
    const [ratio, scale, mass] = properties;
    // By hand: v/√(2gh) of the five falls; flag over time is 10 mm/3.24 ms, the gate 10 mm above contact.
    const free = (height: number) => Math.sqrt((2 * gravity * height) / 1000);
    const speeds = [
      [2.6, 350],
      [3.108, 500],
      [10 / 3.24, 490],
      [4.392, 1000],
      [4.401, 1000],
    ] as const;
    const mean = speeds.reduce((sum, [v, h]) => sum + v / free(h), 0) / 5;
    expect(ratio.mean).toBeCloseTo(mean, 12);
    // Efficiency of energy is the square of that of speed.
    expect(efficiency).toBeCloseTo(mean * mean, 12);
    // Mean of 0.4, 0.6, 0.3 mm; t of 2 degrees at 97.5 % is 4.303 (tables of Student's law).
    expect(scale.mean).toBeCloseTo(1.3 / 3, 9);
    const deviation = Math.sqrt((0.4 ** 2 + 0.6 ** 2 + 0.3 ** 2 - 1.3 ** 2 / 3) / 2);
    expect(scale.interval.upper - scale.mean).toBeCloseTo((4.3027 * deviation) / Math.sqrt(3), 4);
    expect(mass).toMatchObject({ readings: 2, standing: 'good' });
    expect(uncertainty.at.height).toBeCloseTo(500, 9);
    expect(uncertainty.at.pressure).toBe(2);
    const { out: text } = await tirelab(args);
    expect(text).toContain('% of the energy arrives');
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  it('is status 1 for a rig that rubs', async () => {
    // 3.01 m/s after 500 mm are 0.961 of a free fall: below the 0.98 of common practice.
    const { status, result } = await check('height [mm],velocity [m/s]\n500,3.01\n500,3.01\n');
    expect(status).toBe(1);
    expect(result.properties[0].why).toContain('clean and oil the guide');
  });

  it.each([
    ['above free fall', '350,2.70', 'above-free-fall', /nothing falls faster/],
    ['far below it', '350,1.80', 'velocity-ratio', /at least 0\.7/],
    ['without a height', ',2.60', 'no-fall', /no height/],
  ])('refuses a speed %s', async (_, row, code, message) => {
    const { status, result, err } = await check(`height [mm],velocity [m/s]\n${row}\n`);
    expect(status).toBe(2);
    expect(result.problems[0]).toMatchObject({ code, line: 2 });
    expect(err).toMatch(message);
  });

  it('refuses a latitude beyond 90°, and a table without readings', async () => {
    const path = join(folder, 'rig.yaml');
    writeFileSync(
      path,
      'format: tirelab.rig/1\nid: r\nmass: 8 kg\nsite: { latitude: 91 deg, altitude: 0 m }\n',
    );
    const { status, err } = await tirelab(['rig', path]);
    expect(status).toBe(2);
    expect(err).toMatch(/rig\.yaml:4:\d+: .*90 deg/);
    expect((await check('time,height [mm]\n2026-03-02T08:00Z,350\n')).result.problems[0].code).toBe(
      'no-readings',
    );
  });

  it('makes a result provisional where its check of the day is out of limits', async () => {
    writeFileSync(
      join(folder, 'checks.csv'),
      'time,check,result,value,lower,upper\n2026-03-09T07:30:00+01:00,daily,passed,,,\n2026-03-09T07:35:00+01:00,velocity,,0.955,0.98,1\n',
    );
    const root = process.cwd();
    writeFileSync(
      join(folder, 'run.yaml'),
      `format: tirelab.run/1\nid: r\nprotocol: ${root}/protocols/pinch-up-down.yaml\nchecks: checks.csv\nlogs: [drops.csv]\n`,
    );
    const rows = [500, 525, 500, 525].map(
      (height, i) =>
        `${i + 1},2026-03-09T08:0${i}:00+01:00,T-${i},${height},8,${i % 2 === 0 ? 'survived' : 'failed'}`,
    );
    writeFileSync(
      join(folder, 'drops.csv'),
      `drop,time,specimen,height [mm],mass [kg],outcome\n${rows.join('\n')}\n`,
    );
    const { out } = await tirelab(['analyze', join(folder, 'run.yaml'), '--json']);
    expect(JSON.parse(out).provisional.join(' ')).toContain('the velocity check of 2026-03-09 read 0.955');
  });
});
