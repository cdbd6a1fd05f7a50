import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

const folder = mkdtempSync(join(tmpdir(), 'uncertainty-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const RIG = 'fixtures/uncertainty/rig.yaml';
const SPECIFICATION = 'fixtures/uncertainty/specification.yaml';
const LOG = 'fixtures/demo/drops.csv';

async function analyze(rig: string, ...options: string[]) {
  const args = ['analyze', '--json', '--protocol', 'protocols/pinch-up-down.yaml', '--rig', rig, ...options];
  const { status, out, err } = await tirelab([...args, LOG]);
  return { status, result: JSON.parse(out), err };
}

function rigWith(name: string, entries: readonly string[]): string {
  const path = join(folder, `${name}.yaml`);
  const head = 'format: tirelab.rig/1\nid: drop-4\nmass: 8.000 kg\ngravity: 9.812 m/s2\n';
  writeFileSync(path, `${head}${entries.length > 0 ? `uncertainty:\n${entries.join('\n')}\n` : ''}`);
  return path;
}

describe('the uncertainty of the rig', () => {
  it('is the propagated one of m·g·h and of the conditions, beside the drops and never lessened by them', async () => {
    const { result } = await analyze(RIG);
    const { uncertainty } = result;
    const [median] = uncertainty.estimates;
    const height = (1000 * median.value) / (8 * 9.812);
    // By hand from the fixture: relative variances of a product add (JCGM 100, 5.1.6); ± a is a/√3 (4.3.7); U over k (4.3.3).
    const parts = [
      [0.004 / 8, Number.POSITIVE_INFINITY],
      [0.001 / 9.812, 8], // 25 % are 8 degrees (JCGM 100, G.4.2)
      [1 / Math.sqrt(3) / height, Number.POSITIVE_INFINITY],
      [0.008, 9],
      [0.01 / 2, Number.POSITIVE_INFINITY],
      [0.005 / Math.sqrt(3), Number.POSITIVE_INFINITY],
    ] as const;
    const relative = Math.hypot(...parts.map(([u]) => u));
    expect(median.common).toBeCloseTo(relative * median.value, 9);
    // Welch and Satterthwaite (JCGM 100, G.2b).
    const degrees = relative ** 4 / parts.reduce((sum, [u, nu]) => sum + u ** 4 / nu, 0);
    expect(uncertainty.common.degrees).toBeCloseTo(degrees, 6);
    const { standardError } = result.estimates[0];
    expect(median.standardError).toBe(standardError);
    // 19 settings scattered by 0.5 mm are in the standard error already.
    expect(median.combined).toBeCloseTo(Math.hypot(standardError, median.common), 9);
    expect(uncertainty.drop.standardUncertainty).toBeCloseTo((median.value * 0.5) / height, 9);
    expect(median.interval.lower).toBeLessThan(result.estimates[0].interval.lower);
    expect(median.interval.upper).toBeGreaterThan(result.estimates[0].interval.upper);
    expect(uncertainty.check).toMatchObject({ agrees: true, trials: 50_000 });
    // The estimates themselves stay those of the drops.
    const bare = await analyze(rigWith('bare', []));
    expect(bare.result.estimates).toEqual(result.estimates);
    expect(bare.result).not.toHaveProperty('uncertainty');
  });

  it('flags where drawing parts from the law of propagation', async () => {
    // One rectangular source: 95 % of it lie within 0.95·a = 1.645 u, not within 1.960 u (JCGM 101, table 1).
    const rig = rigWith('flat', ['  - { of: loss, source: guide, within: 6 %, degrees: infinite }']);
    const { result } = await analyze(rig);
    const { check } = result.uncertainty;
    expect(check.agrees).toBe(false);
    expect((check.drawn.upper - check.energy) / check.energy).toBeCloseTo(0.95 * 0.06, 3);
    expect(result.notes.join(' ')).toContain('state the drawn one');
  });

  it('widens a guard band that is a multiple of the uncertainty, and no other decision', async () => {
    const at = async (limit: number, rig: string, rule = 'guard-band') => {
      const path = join(folder, 'specification.yaml');
      const text = readFileSync(SPECIFICATION, 'utf8')
        .replace('49 J', `${limit} J`)
        .replace('guard-band', rule);
      writeFileSync(path, text);
      return (await analyze(rig, '--spec', path)).result.criteria[0];
    };
    const { value, standardError } = (await analyze(rigWith('bare', []))).result.estimates[0];
    const { common } = (await analyze(RIG)).result.uncertainty.estimates[0];
    // z of 95 % is 1.6449 (tables of the normal law); a limit between both guard bands tells them apart.
    const narrow = value - 1.6449 * standardError;
    const wide = value - 1.6449 * Math.hypot(standardError, common);
    const limit = Number(((narrow + wide) / 2).toFixed(3));
    expect((await at(limit, rigWith('bare', []))).verdict).toBe('pass');
    const judged = await at(limit, RIG);
    expect(judged.verdict).toBe('fail');
    expect(judged.why).toContain('uncertainty of the rig included');
    expect((await at(limit, RIG, 'simple-acceptance')).verdict).toBe('pass');
  });

  it('cancels from a comparison on one rig, and not from one of two rigs', async () => {
    const runs = ['fixtures/demo/run.yaml', 'fixtures/demo-fail/run.yaml'];
    const despite = ['day=both in one week', 'mass=follows the cloth'].flatMap((one) => ['--despite', one]);
    const compared = await tirelab(['compare', ...runs, ...despite, '--json']);
    // By hand from shared/rigs/drop-2.yaml: √(0.05² + 0.01² + 0.1² + 0.8² + 0.5²) % are 0.95 %.
    expect(JSON.parse(compared.out).notes.join(' ')).toMatch(
      /rig \(0\.9[56] % of an energy\).* cancels from a ratio/,
    );
  });

  it('says in the text what the drops and what the rig bring', async () => {
    const args = ['analyze', '--protocol', 'protocols/pinch-up-down.yaml', '--rig', RIG, LOG];
    const { out } = await tirelab(args);
    expect(out).toContain('Uncertainty of the rig');
    expect(out).toContain('cancels from the ratio');
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  it.each([
    ['of nought', '{ of: mass, source: balance, standard: 0 g, degrees: 9 }', 'bad-uncertainty', 6],
    ['without degrees of freedom', '{ of: mass, source: balance, standard: 4 g }', 'degrees-of-freedom', 6],
    [
      'with half a degree',
      '{ of: mass, source: balance, standard: 4 g, degrees: 0.5 }',
      'degrees-of-freedom',
      6,
    ],
    ['of another unit', '{ of: mass, source: balance, standard: 4 mm, degrees: 9 }', 'bad-uncertainty', 6],
    [
      'expanded by nobody knows what',
      '{ of: mass, source: balance, expanded: 4 g, degrees: 9 }',
      'missing-key',
      6,
    ],
    ['stated twice', '{ of: mass, source: b, standard: 4 g, within: 8 g, degrees: 9 }', 'one-of', 6],
    [
      'of a pressure without its effect',
      '{ of: pressure, source: g, standard: 0.01 bar, degrees: 9 }',
      'missing-key',
      6,
    ],
    [
      'of a mass with an effect',
      '{ of: mass, source: b, standard: 4 g, degrees: 9, sensitivity: 1 }',
      'key-out-of-place',
      6,
    ],
    ['of a word that is none', '{ of: colour, source: b, standard: 4 g, degrees: 9 }', 'unknown-word', 6],
  ])('refuses an uncertainty %s', async (_, entry, code, line) => {
    const { status, result } = await analyze(rigWith('bad', [`  - ${entry}`]));
    expect(status).toBe(2);
    expect(result.problems).toHaveLength(1);
    expect(result.problems[0]).toMatchObject({ code, line });
  });
});
