import { describe, expect, it } from 'vitest';
import gauge from '../reference/grr-01/GRR-01-msa.json' with { type: 'json' };
import coal from '../reference/ils-02/ILS-02-iso5725-coal.json' with { type: 'json' };
import { expectNumber, titleOf } from '../reference/published.ts';
import { tirelab } from './command.ts';

async function study(input: string) {
  const { status, out, err } = await tirelab(['repeatability', '-', '--json'], { input });
  return { status, result: JSON.parse(out), err };
}

describe('tirelab repeatability', () => {
  it(titleOf(gauge), async () => {
    const { appraisers, readings_op_trial_part: readings } = gauge.data;
    const rows = readings.flatMap((trials, o) =>
      trials.flatMap((parts) => parts.map((value, p) => `P${p + 1},${appraisers[o]},${value}`)),
    );
    const { status, result } = await study(`part,operator,value\n${rows.join('\n')}\n`);
    expect(status).toBe(0);
    const { anova, components, pooled, distinctCategories, parts, operators, trials } = result.study;
    expect({ parts, operators, trials, pooled }).toEqual({
      parts: 10,
      operators: 3,
      trials: 3,
      pooled: true,
    });
    const line = (source: string) => anova.find((one: { source: string }) => one.source === source);
    const of = (name: string) => components.find((one: { of: string }) => one.of === name);
    expectNumber(gauge, 'SS part', line('part').sumOfSquares);
    expectNumber(gauge, 'SS operator', line('operator').sumOfSquares);
    expectNumber(gauge, 'SS interaction', line('part × operator').sumOfSquares);
    expectNumber(gauge, 'SS repeatability', line('repeatability').sumOfSquares);
    expectNumber(gauge, 'p interaction', line('part × operator').p);
    expectNumber(gauge, 'variance repeatability', of('repeatability').variance);
    expectNumber(gauge, 'variance reproducibility (operator)', of('operator').variance);
    expectNumber(gauge, 'variance total gauge R&R', of('gauge').variance);
    expectNumber(gauge, 'variance part', of('part').variance);
    expectNumber(gauge, 'SD total', of('total').deviation);
    expectNumber(gauge, '% study variation total gauge R&R', 100 * of('gauge').share);
    expectNumber(gauge, 'ndc untruncated sqrt2*PV/GRR', distinctCategories);
    for (const name of ['repeatability', 'operator', 'gauge', 'part']) {
      expect(of(name).interval.lower).toBeLessThan(of(name).deviation);
      expect(of(name).interval.upper).toBeGreaterThan(of(name).deviation);
    }
    expectNumber(gauge, 'average-range: Rbar', result.study.averageRange.meanRange);
  });

  it(titleOf(coal), async () => {
    const rows = coal.data.labs.flatMap((values, i) => values.map((value) => `${i + 1},${value}`));
    const { result } = await study(`laboratory,value [%]\n${rows.join('\n')}\n`);
    const [level] = result.study.levels;
    const of = (name: string) => level.components.find((one: { of: string }) => one.of === name);
    expectNumber(coal, 'm', level.mean);
    expectNumber(coal, 's_r', of('repeatability').deviation);
    expectNumber(coal, 's_L', of('between').deviation);
    expectNumber(coal, 's_R', of('reproducibility').deviation);
    expect(level.repeatabilityLimit).toBeCloseTo(2.8 * of('repeatability').deviation, 12);
    expect(level.tests.map(({ finding }: { finding: string }) => finding)).toEqual(['none', 'none']);
    expect(level.laboratories).toHaveLength(8);
  });

  it('names the laboratory that the tests of Cochran and Grubbs speak against', async () => {
    // As tests/statistics/interlaboratory/scrutiny.test.ts by hand: C = 32/35, beyond 0.838 at 1 % (ISO 5725-2, table 4, from memory).
    const rows = [10, 11, 12, 13, 14, 15, 16].flatMap((centre, i) =>
      (i === 5 ? [centre - 4, centre + 4] : [centre - 0.5, centre + 0.5]).map((value) => `L${i},${value}`),
    );
    const { result } = await study(`laboratory,value\n${rows.join('\n')}\n`);
    const [cochran] = result.study.levels[0].tests;
    expect(cochran).toMatchObject({ test: 'Cochran', laboratory: 'L5', finding: 'outlier' });
    expect(cochran.statistic).toBeCloseTo(32 / 35, 12);
  });

  it('gives the agreement of two readers beyond chance', async () => {
    // Fleiss, Statistical Methods for Rates and Proportions (1981), tables 13.1 and 13.3 (from memory): kappa 0.676, error 0.087.
    const counts = [
      [75, 1, 4],
      [5, 4, 1],
      [0, 0, 10],
    ];
    const words = ['none', 'cut', 'pinch'];
    const rows = counts.flatMap((row, i) =>
      row.flatMap((count, j) => Array.from({ length: count }, () => `${words[i]},${words[j]}`)),
    );
    const { result } = await study(`first reading,second reading\n${rows.join('\n')}\n`);
    expect(result.study.kappa).toBeCloseTo(0.676, 3);
    expect(result.study.standardError).toBeCloseTo(0.087, 2);
    expect(result.study.table).toEqual(counts);
  });

  it('reads the second reading of a drop log', async () => {
    const { out } = await tirelab(['repeatability', 'fixtures/deviations/DROP-30/drops.csv']);
    expect(out).toMatch(/Two readers of \d+ specimens: kappa 1\.00/);
  });

  it.each(['gauge', 'laboratories', 'readers'])('keeps the text of %s within the page', async (name) => {
    const { out, status } = await tirelab(['repeatability', `fixtures/repeatability/${name}.csv`]);
    expect(status).toBe(0);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  it.each([
    ['a study that is not full', 'part,operator,value\nA,x,1\nA,y,2\nB,x,1\n', 'study-not-evaluable'],
    ['laboratories without a replicate', 'laboratory,value\nA,1\nB,2\n', 'study-not-evaluable'],
    ['readers without a common specimen', 'first reading,second reading\ncut,\n', 'study-not-evaluable'],
    ['a value that is none', 'part,operator,value\nA,x,soft\n', 'not-a-number'],
    ['a header that tells nothing', 'tyre,mass [g]\nA,1\n', 'missing-column'],
  ])('refuses %s', async (_, input, code) => {
    const { status, result } = await study(input);
    expect(status).toBe(2);
    expect(result.problems[0].code).toBe(code);
  });
});
