import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

// Invented logs that followed `tirelab next` (fixtures/methods/generate.mjs): they show the program, and prove nothing
// about its numbers.
const FOLDERS = readdirSync('fixtures/methods', { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);

describe('a log of each method', () => {
  it.each(FOLDERS)('%s followed its rule, and is printed on 80 columns', async (folder) => {
    const { status, out } = await tirelab(['analyze', `fixtures/methods/${folder}/run.yaml`]);
    expect(status).toBe(0);
    expect(out).toContain('None: the protocol was kept.');
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  it('draws masses where these were varied', async () => {
    const { out } = await tirelab(['analyze', 'fixtures/methods/pinch-varied-mass/run.yaml']);
    expect(out).toMatch(/8\.30 kg +52\.1 J .* of /u);
    expect(out).toMatch(/median failure mass +8\.065 kg/u);
  });

  it('gives the median as a mass where masses were varied, from one height', async () => {
    const log = 'fixtures/methods/pinch-varied-mass/run.yaml';
    const { estimates } = JSON.parse((await tirelab(['analyze', '--json', log])).out);
    const median = estimates[0];
    const mass = estimates.find(({ quantity }: { quantity: string }) => quantity === 'medianFailureMass');
    expect(mass.unit).toBe('kg');
    // E = m·g·h, h = 640 mm by the protocol, standard gravity.
    expect(mass.value).toBeCloseTo(median.value / (9.80665 * 0.64), 10);
    expect(mass.interval.lower).toBeCloseTo(median.interval.lower / (9.80665 * 0.64), 10);
  });
});

describe('--estimators', () => {
  const log = 'fixtures/methods/pinch-falling-dart/run.yaml';

  it('adds what is asked for, and leaves the rest as it was', async () => {
    const plain = JSON.parse((await tirelab(['analyze', '--json', log])).out);
    const more = JSON.parse((await tirelab(['analyze', '--json', '--estimators', 'all', log])).out);
    const methods = new Set(more.estimates.map(({ method }: { method: string }) => method));
    expect([...methods]).toEqual(
      expect.arrayContaining([
        'mean-of-levels',
        'isotonic',
        'spearman-karber',
        'nonparametric',
        'tolerance-factor',
      ]),
    );
    expect(more.estimates.slice(0, plain.estimates.length)).toEqual(plain.estimates);
    expect(plain.goodness).toBeNull();
    expect(more.goodness.laws).toHaveLength(4);
  });

  it('refuses an unknown name with the nearest one', async () => {
    const { status, err } = await tirelab(['analyze', '--estimators', 'isotnic', log]);
    expect(status).toBe(2);
    expect(err).toMatch(/isotonic/u);
  });
});
