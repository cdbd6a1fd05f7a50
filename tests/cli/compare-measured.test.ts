import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';
import { dropLog, inventedRun } from './invented-runs.ts';

// Published comparisons of measured values through the whole command. Sources stand in the reference files.
const folder = mkdtempSync(join(tmpdir(), 'tirelab-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function published(path: string) {
  const { data, expected } = JSON.parse(readFileSync(`tests/reference/${path}`, 'utf8'));
  const value = (name: string) => {
    const found = expected.find((one: { name: string }) => one.name === name);
    if (!found) throw new Error(`no ${name}`);
    return found.value;
  };
  return { data, value };
}

let folders = 0;

/** A run for each group, whose table of specimens has the values and whatever stands beside them. */
function runsOf(
  groups: Record<string, readonly number[]>,
  beside: Record<string, readonly (readonly (string | number)[])[]> = {},
) {
  const own = join(folder, String(folders++));
  return Object.entries(groups).map(([id, values], g) =>
    inventedRun(own, {
      id,
      protocol: ['method: up-and-down', 'failure: cut', 'mass: 8 kg', 'start: 500 mm', 'step: 25 mm'],
      log: dropLog([{ specimen: `${id}-0`, height: 500, failed: true }]),
      specimens: `${['specimen', 'result', ...Object.keys(beside)].join(',')}\n${values
        .map((value, i) =>
          [`${id}-${i}`, value, ...Object.values(beside).map((columns) => columns[g]![i])].join(','),
        )
        .join('\n')}\n`,
    }),
  );
}

async function compared(runs: readonly string[], ...more: string[]) {
  const { status, out, err } = await tirelab(['compare', '--json', '--measured', 'result', ...more, ...runs]);
  expect(err).toBe('');
  expect(status).toBe(0);
  return JSON.parse(out);
}

const counted = (n: number) => Array.from({ length: n }, (_, i) => `p${i + 1}`);

describe('compare --measured', () => {
  it('SEN-03: two drop testers, unpaired and paired', async () => {
    const { data, value } = published('sen-03/SEN-03-compare-two-rigs-2019.json');
    const [pair] = (await compared(runsOf({ old: data.old, new: data.new }))).pairs;
    expect(pair.separate.value).toBeCloseTo(value('mean difference new-old'), 6);
    const [low, high] = value('Welch 95% CI');
    expect(pair.separate.lower).toBeCloseTo(low, 6);
    expect(pair.separate.upper).toBeCloseTo(high, 6);
    expect(pair.separate.p).toBeCloseTo(value('Welch p'), 8);
    expect(pair.separate.degrees).toBeCloseTo(value('Welch df'), 4);
    // Each result less the reference of its own group, as in the paper's Table 3.
    const less = (tests: number[], groups: Record<string, number>) =>
      tests.map((result, i) => {
        const at = Object.entries(groups).find(([range]) => {
          const [from, to = from] = range.split('-').map(Number);
          return i + 1 >= from! && i + 1 <= to!;
        })!;
        return Number((result - at[1]).toFixed(6));
      });
    const { new_test, new_ref_by_group, old_test, old_ref_by_group } = data.paired;
    const groups = { old: less(old_test, old_ref_by_group), new: less(new_test, new_ref_by_group) };
    const numbers = counted(18);
    const [paired] = (await compared(runsOf(groups, { block: [numbers, numbers] }), '--paired-by', 'block'))
      .pairs;
    expect(paired.paired.value).toBeCloseTo(value('paired mean difference'), 6);
    const [least, most] = value('paired 95% CI');
    expect(paired.paired.lower).toBeCloseTo(least, 6);
    expect(paired.paired.upper).toBeCloseTo(most, 6);
    expect(paired.paired.p).toBeCloseTo(value('paired p'), 5);
  });

  it('CMP-01: all pairs of four by Tukey, Bonferroni and Holm', async () => {
    const { data, value } = published('cmp-01/CMP-01-nist-tukey.json');
    const groups = Object.fromEntries(
      data.groups.map((values: number[], i: number) => [`G${i + 1}`, values]),
    );
    const document = await compared(runsOf(groups));
    const [overall] = document.overall;
    expect(overall.f).toBeCloseTo(value('F'), 6);
    expect(overall.p).toBeCloseTo(value('p'), 8);
    const pair = (a: number, b: number) =>
      document.pairs.find(
        (one: { first: number; second: number }) => one.first === a - 1 && one.second === b - 1,
      );
    expect(pair(1, 2).common.lower).toBeCloseTo(value('Tukey 2-1 lower'), 4);
    expect(pair(1, 2).common.upper).toBeCloseTo(value('Tukey 2-1 upper'), 4);
    expect(pair(1, 3).common.lower).toBeCloseTo(value('Tukey 3-1 lower'), 4);
    for (const [a, b] of [
      [1, 2],
      [1, 4],
      [2, 4],
      [3, 4],
    ] as const) {
      const { p, holm, bonferroni, tukey } = pair(a, b).common;
      const found = { 'raw p': p, 'Holm p': holm, 'Bonferroni p': bonferroni, 'Tukey adjusted p': tukey };
      for (const [kind, one] of Object.entries(found))
        expect(one, `${a}-${b} ${kind}`).toBeCloseTo(value(`pair ${a}-${b} ${kind}`), 6);
    }
  });

  it('CMP-04: unpaired and paired on the same ten', async () => {
    const { data, value } = published('cmp-04/CMP-04-student-sleep.json');
    const groups = { two: data.group2, one: data.group1 };
    const numbers = counted(10);
    const [pair] = (await compared(runsOf(groups, { patient: [numbers, numbers] }), '--paired-by', 'patient'))
      .pairs;
    expect(pair.separate.t).toBeCloseTo(value('t Welch'), 9);
    expect(pair.separate.degrees).toBeCloseTo(value('df'), 8);
    expect(pair.separate.lower).toBeCloseTo(value('CI lower'), 9);
    expect(pair.paired.t).toBeCloseTo(value('t paired'), 9);
    expect(pair.paired.p).toBeCloseTo(value('p paired'), 9);
  });

  it('CMP-05: pairs, and their signs drawn by lot', async () => {
    const { data, value } = published('cmp-05/CMP-05-shoes-paired.json');
    const numbers = counted(10);
    const runs = runsOf({ A: data.A, B: data.B }, { boy: [numbers, numbers] });
    const [pair] = (await compared(runs, '--paired-by', 'boy')).pairs;
    expect(pair.paired.value).toBeCloseTo(value('mean difference'), 9);
    expect(pair.paired.t).toBeCloseTo(value('t paired'), 9);
    expect(pair.paired.lower).toBeCloseTo(value('CI lower'), 9);
    expect(pair.randomisation.pOneSided).toBe(value('one-sided p (>=)'));
    expect(pair.randomisation.pTwoSided).toBe(value('two-sided p (>=)'));
  });

  it('CMP-06: brands in blocks of cars and positions', async () => {
    const { data, value } = published('cmp-06/CMP-06-tyre-brands-blocked.json');
    const cells = data.brand.flatMap((row: string[], position: number) =>
      row.map((brand, car) => ({ brand, car, position, loss: data.rows_position_cols_car[position][car] })),
    );
    const brands = ['A', 'B', 'C', 'D'].map((brand) =>
      cells.filter((cell: { brand: string }) => cell.brand === brand),
    );
    const groups = Object.fromEntries(
      brands.map((own, i) => ['ABCD'[i]!, own.map((cell: { loss: number }) => cell.loss)]),
    );
    const beside = {
      car: brands.map((own) => own.map((cell: { car: number }) => cell.car)),
      position: brands.map((own) => own.map((cell: { position: number }) => cell.position)),
    };
    const runs = runsOf(groups, beside);
    const square = await compared(runs, '--blocks', 'car,position');
    const effect = (document: { blocked: { name: string }[] }, name: string) =>
      document.blocked.find((one) => one.name === name) as unknown as {
        sumOfSquares: number;
        f: number;
        p: number;
      };
    expect(effect(square, 'construction').sumOfSquares).toBeCloseTo(value('SS brands'), 9);
    expect(effect(square, 'car').sumOfSquares).toBeCloseTo(value('SS cars'), 9);
    expect(effect(square, 'position').sumOfSquares).toBeCloseTo(value('SS positions'), 9);
    expect(effect(square, 'error').sumOfSquares).toBeCloseTo(value('SS error Latin'), 9);
    expect(effect(square, 'construction').f).toBeCloseTo(value('F brands Latin (3, 6)'), 9);
    const blocks = await compared(runs, '--blocks', 'car');
    expect(effect(blocks, 'construction').f).toBeCloseTo(value('F brands RCB (3, 9)'), 9);
    expect(effect(blocks, 'construction').p).toBeCloseTo(value('p brands RCB'), 9);
    expect(square.overall[0].f).toBeCloseTo(value('F brands unblocked (3, 12)'), 9);
  });

  it('CMP-08: three groups with and without equal spreads', async () => {
    const { data, value } = published('cmp-08/CMP-08-welch-anova.json');
    const { overall } = await compared(runsOf(data.groups));
    expect(overall[0].f).toBeCloseTo(value('F'), 9);
    expect(overall[0].p).toBeCloseTo(value('p'), 9);
    expect(overall[1].f).toBeCloseTo(value('Welch F'), 9);
    expect(overall[1].below).toBeCloseTo(value('Welch df2'), 7);
    expect(overall[1].p).toBeCloseTo(value('Welch p'), 9);
  });

  it('says what is missing, at its line, and refuses what differs', async () => {
    const [good] = runsOf({ A: [1, 2, 3] });
    const [bad] = runsOf({ B: ['x' as unknown as number, 2, 3] });
    const { status, err } = await tirelab(['compare', '--measured', 'result', good!, bad!]);
    expect(status).toBe(2);
    expect(err).toContain('specimens.csv:2: result: found "x", expected a number for each candidate');
    const [c, d] = runsOf(
      { C: [1, 2, 3], D: [2, 3, 5] },
      {
        batch: [
          ['b1', 'b1', 'b1'],
          ['b2', 'b2', 'b2'],
        ],
      },
    );
    const refused = await tirelab(['compare', '--measured', 'result', c!, d!]);
    expect(refused.status).toBe(3);
    expect(refused.out).toContain('goes together with the construction');
    const put = await tirelab(['compare', '--measured', 'result', '--despite', 'batch=one melt', c!, d!]);
    expect(put.status).toBe(0);
    expect(put.out).toContain('one melt');
    for (const line of put.out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });
});
