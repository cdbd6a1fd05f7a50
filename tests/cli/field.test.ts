import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

const folder = mkdtempSync(join(tmpdir(), 'field-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function field(input: string, ...options: string[]) {
  const { status, out, err } = await tirelab(['field', '-', '--json', ...options], { input });
  return { status, result: out === '' ? null : JSON.parse(out), err, out };
}

/** A stored result of one construction with its median. */
function lab(construction: string, energy: number): string[] {
  const [id, revision] = construction.split('@');
  const path = join(folder, `${id}.json`);
  const estimates = [{ quantity: 'medianFailureEnergy', value: energy }];
  const constructions = [{ id, revision }];
  writeFileSync(
    path,
    JSON.stringify({ schema: 'tirelab.result/1', kind: 'impact', constructions, estimates, inputs: [] }),
  );
  return ['--lab', path];
}

const HEAD = 'rider,construction,distance [km],flats,cause\n';

describe('tirelab field', () => {
  it('gives rates with exact limits and ratios as R has them', async () => {
    const table = `${HEAD}P1,A@1,800,11,pinch\nP2,B@1,3011,21,pinch\nP2,C@1,1000,,\n`;
    const { status, result } = await field(table);
    expect(status).toBe(0);
    const [a, , c] = result.constructions;
    expect(a.rates[0].rate).toBeCloseTo(13.75, 12);
    // No event: 3.689 per unit of exposure, two-sided 95 % (Garwood 1936; −ln 0.025).
    expect(c.rates[0]).toMatchObject({ flats: 0, rate: 0, lower: 0 });
    expect(c.rates[0].upper).toBeCloseTo(3.6889, 4);
    // poisson.test(c(11, 21), c(800, 3011)) of R 4.2.2.
    const [ratio] = result.ratios;
    expect(ratio).toMatchObject({ first: 'A@1', second: 'B@1' });
    expect(ratio.ratio).toBeCloseTo(1.971488095, 8);
    expect(ratio.lower).toBeCloseTo(0.8584264, 6);
    expect(ratio.upper).toBeCloseTo(4.2772659, 6);
    expect(ratio.p).toBeCloseTo(0.0796686, 6);
    // Holm (1979): the smallest of three p is multiplied by three.
    const ps = result.ratios.map(({ p }: { p: number }) => p);
    const least = ps.indexOf(Math.min(...ps));
    expect(result.ratios[least].holm).toBeCloseTo(Math.min(1, 3 * ps[least]), 12);
  });

  it('counts kilometres by an odometer, and compares the cause that is asked for', async () => {
    const table = `rider,construction,odometer [km],cause
P1,A@1,1000,
P1,A@1,1250,pinch
P1,A@1,1500,valve
P2,A@1,0,
P2,A@1,500,cut
`;
    const { result } = await field(table, '--cause', 'cut');
    const [a] = result.constructions;
    expect(a).toMatchObject({ distance: 1000, riders: 2 });
    expect(a.rates.map(({ cause, flats }: { cause: string; flats: number }) => [cause, flats])).toEqual([
      ['all', 3],
      ['pinch', 1],
      ['cut', 1],
      ['valve', 1],
    ]);
    expect(result.cause).toBe('cut');
  });

  it('says that riders differ by more than chance, and widens the limits', async () => {
    // By hand: 12 and 0 flats over equal km, 6 expected each: Pearson 12 on one degree; p of chi-squared 12 is 5.3e-4 (tables).
    const { result } = await field(`${HEAD}P1,A,500,12,thorn\nP2,A,500,,\n`, '--cause', 'all');
    const [{ dispersion, rates }] = result.constructions;
    expect(dispersion.ratio).toBeCloseTo(12, 9);
    expect(dispersion.p).toBeCloseTo(5.32e-4, 5);
    expect(dispersion.lower).toBeLessThan(rates[0].lower);
    expect(dispersion.upper).toBeGreaterThan(rates[0].upper);
    expect(dispersion.why).toContain('differ by more than chance');
  });

  it.each([
    [3, 1 / 6],
    [4, 1 / 24],
    [5, 1 / 120],
  ])('says that %i constructions agree by chance 1 in n!', async (n, chance) => {
    const names = ['A@1', 'B@1', 'C@1', 'D@1', 'E@1'].slice(0, n);
    const rows = names.map((name, i) => `P1,${name},1000,${2 * (n - i)},pinch`);
    const results = names.flatMap((name, i) => lab(name, 40 + i));
    const { result } = await field(`${HEAD}${rows.join('\n')}\n`, ...results);
    const { agreement } = result;
    expect(agreement.tau).toBe(1);
    expect(agreement.chance).toBeCloseTo(chance, 12);
    expect(agreement.chanceOfFullAgreement).toBeCloseTo(chance, 12);
    // A line only where there are three degrees of freedom; here the points lie on it: 2 flats fewer for each joule.
    if (n < 5) expect(agreement.regression).toBeNull();
    else expect(agreement.regression.slope).toBeCloseTo(-2, 9);
  });

  it('names what is confounded, and no rider anywhere', async () => {
    const table = `rider,construction,terrain,distance [km],flats,cause
Secret-One,A@1,rock,500,2,pinch
Secret-Two,B@1,forest,500,1,pinch
`;
    const { result, out } = await field(table);
    const of = (name: string) =>
      result.circumstances.find(({ circumstance }: { circumstance: string }) => circumstance === name);
    expect(of('riders')).toMatchObject({ standing: 'confounded' });
    expect(of('riders').why).toContain('0 of 2 riders');
    expect(of('terrain').standing).toBe('confounded');
    expect(of('pressure').standing).toBe('not-recorded');
    const text = await tirelab(['field', '-'], { input: table });
    expect(out + text.out + text.err).not.toContain('Secret');
    const broken = table.replace('500,1,pinch', '-5,1,pinch').replace('rock', 'rock"');
    const told = await field(broken);
    expect(told.status).toBe(2);
    expect(told.out + told.err).not.toContain('Secret');
  });

  it.each([
    [
      'an odometer that goes back',
      'rider,construction,odometer [km],cause\nP1,A,100,\nP1,A,90,\n',
      'distance-goes-back',
      3,
    ],
    ['a distance below nought', `${HEAD}P1,A,-3,,\n`, 'out-of-range', 2],
    ['a cause of no known word', `${HEAD}P1,A,10,1,nail\n`, 'unknown-word', 2],
    ['a construction without kilometres', `${HEAD}P1,A,0,,\n`, 'no-distance', 2],
  ])('refuses %s', async (_, input, code, line) => {
    const { status, result } = await field(input);
    expect(status).toBe(2);
    expect(result.problems[0]).toMatchObject({ code, line });
  });

  it('keeps its text within the page', async () => {
    const { out, status } = await tirelab(['field', 'fixtures/field/rides.csv']);
    expect(status).toBe(0);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });
});
