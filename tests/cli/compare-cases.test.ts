import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';
import { dropLog, inventedRun, levelDrops } from './invented-runs.ts';

// Published cases through the whole command: files in, document out. Sources stand in the reference files.
const folder = mkdtempSync(join(tmpdir(), 'tirelab-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const reference = (path: string) => JSON.parse(readFileSync(`tests/reference/${path}`, 'utf8'));
const expected = (of: { expected: { name: string; value: number }[] }, name: string) => {
  const found = of.expected.find((one) => one.name === name);
  if (!found) throw new Error(`no ${name}`);
  return found.value;
};

describe('CMP-13: two dose-response lines (Collett 1991; Venables & Ripley, MASS, 4th ed., p. 190-194)', () => {
  const budworm = reference('cmp-13/CMP-13-lr-probit.json');
  const { log2_dose: doses, dead_of_20: dead, male } = budworm.data;
  const runOf = (sex: 0 | 1, id: string) => {
    const rows = doses.flatMap((dose: number, i: number) =>
      male[i] === sex ? [[100 * 2 ** dose, dead[i], 20]] : [],
    );
    return inventedRun(folder, {
      id,
      protocol: [
        'method: fixed-level',
        'failure: dead within three days',
        'mass: 8 kg',
        'levels: [100 mm, 200 mm, 400 mm, 800 mm, 1600 mm, 3200 mm]',
        'perLevel: 20',
        'distribution: lognormal',
      ],
      log: dropLog(levelDrops(id, rows)),
    });
  };
  it('gives the likelihood ratios of equal slopes and of equal location, and the 50 % point', async () => {
    const runs = [runOf(0, 'female'), runOf(1, 'male')];
    const { status, out, err } = await tirelab(['compare', '--json', ...runs]);
    expect(err).toBe('');
    expect(status).toBe(0);
    const [pair] = JSON.parse(out).pairs;
    expect(pair.equalSpreads.statistic).toBeCloseTo(expected(budworm, 'probit LR equal slopes'), 6);
    expect(pair.p).toBeCloseTo(expected(budworm, 'probit p equal location'), 8);
    const common = pair.differences.find(
      (one: { probability: number; spreads: string }) => one.probability === 0.5 && one.spreads === 'common',
    );
    const perDose = (8 * 9.80665 * 100) / 1000;
    expect(Math.log2(common.values[0] / perDose)).toBeCloseTo(
      expected(budworm, 'probit female log2 ED50'),
      5,
    );
  });
});

describe('KM-01: lives of two groups (Miller, Survival Analysis, 1981, p. 49)', () => {
  const aml = reference('km-01/KM-01-aml.json');
  const R = reference('comparison/laws.json').lives;
  const runOf = (id: string, { t, s }: { t: number[]; s: number[] }) =>
    inventedRun(folder, {
      id,
      kind: 'endurance',
      protocol: [
        'schedule: [{ block: main, distance: 200 km, speed: 25 km/h, load: 600 N, pressure: 2.5 bar }]',
        'distribution: weibull',
      ],
      log: `specimen,survived [km],failed [km],cause\n${t
        .map((time, i) => `${id}-${i},${time},${s[i] === 1 ? time : ''},${s[i] === 1 ? 'casing' : ''}`)
        .join('\n')}\n`,
    });
  it('gives the log-rank test as printed, and the Weibull ratio of survreg', async () => {
    const runs = [runOf('maintained', aml.data.maintained), runOf('not', aml.data.nonmaintained)];
    const { status, out, err } = await tirelab(['compare', '--json', ...runs]);
    expect(err).toBe('');
    expect(status).toBe(0);
    const document = JSON.parse(out);
    expect(document).toMatchObject({ kind: 'endurance', unit: 'km' });
    const [pair] = document.pairs;
    expect(pair.logRank.statistic).toBeCloseTo(expected(aml, 'log-rank chi-square'), 9);
    expect(pair.logRank.p).toBeCloseTo(expected(aml, 'log-rank p'), 9);
    const [common] = pair.differences;
    expect(common.ratio.value / R.weibull.effect[0]).toBeCloseTo(1, 6);
    expect(common.ratio.lower / R.weibull.effect[1]).toBeCloseTo(1, 5);
    expect(pair.p / R.weibull.p).toBeCloseTo(1, 5);
  });
});
