import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

const P = 'protocols/pinch-up-down.yaml';
const S = 'shared/specifications/trail-casing.yaml';
const TYRES = ['--median', '48 J', '--spread', '4 J'];

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tirelab-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const simulate = (...args: string[]) => tirelab(['simulate', ...args]);

describe('tirelab simulate', () => {
  it('gives a document with bias, coverage and effort, each with its Monte Carlo error', async () => {
    const { status, out, err } = await simulate(P, ...TYRES, '--tests', '400', '--json');
    expect([status, err]).toEqual([0, '']);
    const found = JSON.parse(out);
    expect(found.schema).toBe('tirelab.simulation/1');
    expect(found).toMatchObject({
      tests: 400,
      seed: 1,
      assumed: { law: 'normal', spread: 4, spreadUnit: 'J' },
    });
    const [point] = found.points;
    expect(point.drops.mean).toEqual({ value: 30, error: 0 });
    const [median] = point.estimates;
    expect(median).toMatchObject({
      quantity: 'medianFailureEnergy',
      method: 'censored-likelihood',
      truth: 48,
    });
    // 1.42 · 4 J/√30 = 1.04 J (SEN-11), with the Monte Carlo error of 400 tests.
    expect(Math.abs(median.standardDeviation.value - 1.04)).toBeLessThan(
      4 * median.standardDeviation.error + 0.05,
    );
    expect(median.intervals[0].coverage.error).toBeGreaterThan(0);
  });

  it('takes a height for an energy: 500 mm under 8 kg are 39.2266 J (m·g·h)', async () => {
    const { out } = await simulate(P, '--median', '500 mm', '--spread', '4 J', '--tests', '10', '--json');
    expect(JSON.parse(out).points[0].median).toBeCloseTo(39.2266, 10);
  });

  it('draws the operating characteristic with the limit, in HTML and in Markdown, in both languages', async () => {
    const args = [P, '--spec', S, '--medians', '36 J..60 J/4', '--spread', '4 J', '--tests', '100'];
    const { status, out } = await simulate(...args, '--format', 'html');
    expect(status).toBe(0);
    expect(out.match(/<svg/g)).toHaveLength(1);
    // The limit of the specification on the median.
    expect(out).toContain('limit 45 J');
    const german = (await simulate(...args, '--format', 'markdown', '--language', 'de')).out;
    expect(german).toContain('# Simulierte Prüfungen');
    expect(german).toContain('4 wahren Medianen');
    const one = (await simulate(P, '--spec', S, ...TYRES, '--tests', '100', '--format', 'html')).out;
    expect(one).not.toContain('<svg');
    expect(one).toContain('all together');
  });

  it('shows a chance to pass that rises with the median', async () => {
    const args = [P, '--spec', S, '--medians', '36 J..60 J/4', '--spread', '4 J', '--tests', '300', '--json'];
    const points = JSON.parse((await simulate(...args)).out).points;
    expect(points.map(({ median }: { median: number }) => median)).toEqual([36, 44, 52, 60]);
    const pass = points.map(
      ({ verdicts }: never) =>
        (verdicts as { overall: { pass?: { value: number } } }).overall.pass?.value ?? 0,
    );
    expect(pass.toSorted((a: number, b: number) => a - b)).toEqual(pass);
    expect(pass[0]).toBe(0);
    expect(pass[3]).toBeGreaterThan(0.9);
  });

  it('runs every method of the ready protocols', async () => {
    for (const name of [
      'pinch-up-down',
      'pinch-rising-height',
      'pinch-screening',
      'pinch-wide-low-pressure',
    ]) {
      const { status, err } = await simulate(
        `protocols/${name}.yaml`,
        '--median',
        '60 J',
        '--spread',
        '10 %',
        '--tests',
        '20',
      );
      expect([name, status, err]).toEqual([name, 0, '']);
    }
  });

  it('stays within 80 columns, without a control character', async () => {
    for (const args of [TYRES, ['--medians', '40 J..50 J/3', '--spread', '4 J', '--spec', S]]) {
      const { out } = await simulate(P, ...args, '--tests', '50');
      expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
      expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/u);
    }
  });

  for (const [what, args, message] of [
    [
      'a spread of nought',
      ['--median', '48 J', '--spread', '0 J'],
      /--spread: found "0 J", expected more than nought/,
    ],
    ['a negative spread', ['--median', '48 J', '--spread', '-4 J'], /--spread: found "-4 J"/],
    ['no spread', ['--median', '48 J'], /--spread: is missing/],
    ['no median', ['--spread', '4 J'], /--median: is missing/],
    ['a share above one', [...TYRES, '--between', '120 %'], /--between: found "120 %", expected a share/],
    ['damage of all strength', [...TYRES, '--damage', '100 %'], /--damage: found "100 %"/],
    [
      'a truth beyond the rig',
      ['--median', '1300 mm', '--spread', '4 J'],
      /expected a median that the rig reaches/,
    ],
    [
      'a unit of another kind',
      ['--median', '48 bar', '--spread', '4 J'],
      /--median: found "48 bar", which is a pressure/,
    ],
    ['medians that fall', ['--medians', '60 J..40 J/4', '--spread', '4 J'], /--medians: found/],
    ['a number of tests that is none', [...TYRES, '--tests', 'many'], /whole number/],
  ] as const) {
    it(`refuses ${what}`, async () => {
      const { status, out, err } = await simulate(P, ...args);
      expect([status, out]).toEqual([2, '']);
      expect(err).toMatch(message);
    });
  }

  it('refuses a protocol that cannot stop', async () => {
    const path = join(folder, 'endless.yaml');
    const head =
      'format: tirelab.protocol/1\nid: p\nversion: 1.0.0\nkind: impact\nmethod: up-and-down\nmass: 8 kg\nstart: 500 mm\nstep: 25 mm\n';
    writeFileSync(path, head);
    const { status, err } = await simulate(path, ...TYRES);
    expect(status).toBe(2);
    expect(err).toMatch(/found no stop rule, expected one/);
  });

  it('refuses a drum protocol', async () => {
    const { status, err } = await simulate('protocols/drum-two-block.yaml', ...TYRES);
    expect([status, err]).toEqual([2, expect.stringContaining('only drop tests')]);
  });
});

describe('tirelab simulate in a real shell', () => {
  const bin = ['bin/tirelab.js', 'simulate', P, '--spec', S, ...TYRES];

  it('gives the same bytes for any number of workers', () => {
    const bytes = ['1', '3'].map((workers) =>
      spawnSync('node', [...bin, '--tests', '4000', '--json', '--workers', workers], { encoding: 'utf8' }),
    );
    expect(bytes[0]!.status).toBe(0);
    expect(bytes[1]!.stdout).toBe(bytes[0]!.stdout);
    expect(bytes.map(({ stderr }) => stderr)).toEqual(['', '']);
  }, 120_000);

  it('ends with 130 and leaves no file when it is interrupted', async () => {
    const out = join(folder, 'cut.json');
    const child = spawn('node', [...bin, '--tests', '2000000', '--json', '-o', out], { stdio: 'ignore' });
    await new Promise((resolve) => setTimeout(resolve, 4000));
    child.kill('SIGINT');
    const status = await new Promise((resolve) => child.on('exit', resolve));
    expect(status).toBe(130);
    expect(existsSync(out)).toBe(false);
    expect(readdirSync(folder).filter((name) => name.endsWith('.tmp'))).toEqual([]);
  }, 120_000);
});
