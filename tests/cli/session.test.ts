import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { csv } from '../mutation/analysed.ts';
import { type CleanTest, cleanTest } from '../mutation/clean-test.ts';
import { tirelab } from './command.ts';

// The whole command on invented sessions: what CONTRACT asks of verdicts, provisional results and amendments.

const folder = mkdtempSync(join(tmpdir(), 'tirelab-session-'));
afterAll(() => rmSync(folder, { recursive: true }));

const SPECIFICATION = `format: tirelab.specification/1
id: invented
version: 1.0.0
criteria:
  - { id: median, protocol: PROTOCOL@1.0.0, quantity: medianFailureEnergy, atLeast: LIMIT }
  - { id: mass, quantity: mass, within: 900 g ± 10 % }
  - { id: hold, quantity: pressureLoss, atMost: 0.1 bar }
`;

async function analyse(test: CleanTest, more: { limit?: string; run?: string } = {}) {
  const put = (name: string, text: string) => writeFileSync(join(folder, name), text);
  const protocol = /^id: (.*)$/mu.exec(test.protocolText)![1]!;
  put('protocol.yaml', test.protocolText);
  put('drops.csv', csv(test.drops));
  put('specimens.csv', csv(test.specimens));
  put('mountings.csv', csv(test.mountings));
  put('checks.csv', csv(test.checks));
  if (test.amendments.rows.length > 0) put('amendments.csv', csv(test.amendments));
  put('spec.yaml', SPECIFICATION.replace('PROTOCOL', protocol).replace('LIMIT', more.limit ?? '30 J'));
  const amendments = test.amendments.rows.length > 0 ? 'amendments: amendments.csv\n' : '';
  put(
    'run.yaml',
    `format: tirelab.run/1\nid: r\nprotocol: protocol.yaml\nspecification: spec.yaml\nspecimens: specimens.csv\nmountings: mountings.csv\nchecks: checks.csv\nlogs: [drops.csv]\n${amendments}${more.run ?? ''}`,
  );
  const ran = await tirelab(['analyze', '--json', join(folder, 'run.yaml')]);
  return { ...ran, result: ran.status === 2 ? null : JSON.parse(ran.out) };
}

describe('two constructions in one session', () => {
  it('are estimated and judged one by one; the worst verdict is the run', async () => {
    const { status, result } = await analyse(cleanTest(5, 'session'), { limit: '47.2 J' });
    const medians = result.estimates.filter(
      ({ quantity, method }: { quantity: string; method: string }) =>
        quantity === 'medianFailureEnergy' && method === 'censored-likelihood',
    );
    expect(new Set(medians.map(({ construction }: { construction: string }) => construction))).toEqual(
      new Set(['C-114', 'C-115']),
    );
    expect(result.estimates[0].construction).toBe('C-114');
    expect(result.sample).toMatchObject({ drops: 40, specimens: 40 });
    const judged = result.criteria.filter(({ id }: { id: string }) => id === 'median');
    expect(judged.map(({ construction }: { construction: string }) => construction)).toEqual([
      'C-114',
      'C-115',
    ]);
    const verdicts = result.samples.map(({ verdict }: { verdict: string }) => verdict);
    const worst = verdicts.includes('fail')
      ? 'fail'
      : verdicts.includes('inconclusive')
        ? 'inconclusive'
        : 'pass';
    expect(result.verdict).toBe(worst);
    expect(status).toBe({ fail: 1, inconclusive: 3, pass: 0 }[worst]);
  });
});

describe('measured criteria', () => {
  it('look at every candidate in the register, and at further quantities', async () => {
    const test = cleanTest(7, 'up-and-down');
    for (const row of test.specimens.rows) row['pressure loss [bar]'] = '0.04';
    test.specimens.rows[3]!['pressure loss [bar]'] = '0.2';
    test.specimens.rows[4]!['mass [g]'] = '1200';
    test.specimens.rows[4]!.role = 'spare';
    const { status, result } = await analyse({
      ...test,
      specimens: { ...test.specimens, columns: [...test.specimens.columns, 'pressure loss [bar]'] },
    });
    const verdicts = Object.fromEntries(
      result.criteria.map(({ id, verdict }: { id: string; verdict: string }) => [id, verdict]),
    );
    // The heavy tyre is a spare, and no candidate: the mass is met; one tyre leaks.
    expect(verdicts).toMatchObject({ mass: 'pass', hold: 'fail' });
    expect(status).toBe(1);
  });
});

describe('a reference out of its limits', () => {
  const out = () => {
    const test = cleanTest(9, 'up-and-down');
    test.checks.rows.find(({ check }) => check === 'reference')!.value = '30';
    return test;
  };

  it('gives provisional numbers and a verdict that is invalid', async () => {
    const { status, result } = await analyse(out());
    expect(result.provisional).toHaveLength(1);
    expect(result.estimates[0].value).not.toBeNull();
    expect(result.criteria[0]).toMatchObject({ verdict: 'invalid' });
    expect(result.criteria[0].why).toContain('provisional until settled');
    expect(result.verdict).toBe('invalid');
    expect(status).toBe(3);
  });

  it('until it is settled', async () => {
    const test = out();
    test.checks.rows.find(({ check }) => check === 'reference')!.settled = 'gate moved and set back (QM)';
    const { status, result } = await analyse(test);
    expect(result.provisional).toBeUndefined();
    expect(result.conformance.deviations).toEqual([
      expect.objectContaining({ code: 'DROP-30', severity: 'note' }),
    ]);
    expect([status, result.verdict]).toEqual([0, 'pass']);
  });
});

describe('amendments', () => {
  const row = (changes: Record<string, string>) => ({
    line: '3',
    what: 'valid',
    old: 'yes',
    new: 'no',
    reason: 'DROP-16',
    by: 'T2',
    on: '2026-03-12',
    ...changes,
  });

  it('show both states, and the estimate with, without and before', async () => {
    const test = cleanTest(11, 'up-and-down');
    test.amendments.rows.push(row({}));
    const { result } = await analyse(test);
    expect(result.amendments).toEqual([
      expect.objectContaining({
        logLine: 3,
        what: 'valid',
        old: 'yes',
        new: 'no',
        reason: 'DROP-16',
        by: 'T2',
      }),
    ]);
    const variants = new Set(result.estimates.map(({ variant }: { variant?: string }) => variant));
    expect([...variants]).toEqual(expect.arrayContaining(['with-exclusions', 'before-amendments']));
    expect(result.sample).toMatchObject({ drops: 30, validDrops: 29 });
  });

  it('that leave a drop out for its result are refused', async () => {
    const test = cleanTest(11, 'up-and-down');
    test.amendments.rows.push(row({ reason: 'DROP-07' }));
    const { status, out } = await analyse(test);
    expect(status).toBe(2);
    expect(JSON.parse(out).problems).toEqual([
      expect.objectContaining({ code: 'exclusion-by-result', line: 2, file: join(folder, 'amendments.csv') }),
    ]);
  });
});

describe('a retest', () => {
  it('names the run that it repeats, why, and who approved it', async () => {
    const run = 'replaces: { run: run.yaml, reason: DROP-20, approver: QM }\n';
    const { result } = await analyse(cleanTest(13, 'up-and-down'), { run });
    expect(result.replaces).toMatchObject({ run: 'r', reason: 'DROP-20', approver: 'QM' });
  });

  it('is refused where the result was the reason', async () => {
    const run = 'replaces: { run: run.yaml, reason: DROP-09, approver: QM }\n';
    const { status, out } = await analyse(cleanTest(13, 'up-and-down'), { run });
    expect(status).toBe(2);
    expect(out).toContain('retest-by-result');
  });
});
