import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

// Statuses and streams: what the contract of the command line says, checked from outside.
const PASS = 'fixtures/demo/run.yaml';
const FAIL = 'fixtures/demo-fail/run.yaml';
const UNDECIDED = 'fixtures/demo-undecided/run.yaml';
const PROTOCOL = 'protocols/pinch-up-down.yaml';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tirelab-'));
  writeFileSync(
    join(folder, 'broken.yaml'),
    'format: tirelab.run/1\nid: x\nprotocol: none.yaml\nlogs: [a.csv]\n',
  );
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const lines = (text: string) => text.trimEnd().split('\n');

describe('several runs of analyze', () => {
  it('tells each in a line, in the order given, with the status of the worst', async () => {
    const { status, out, err } = await tirelab(['analyze', UNDECIDED, PASS, FAIL]);
    expect(status).toBe(1);
    expect(out).toContain('3 runs: 1 inconclusive, 1 pass, 1 fail.');
    expect(err).toBe('');
    const order = ['C-116@1', 'C-114@2', 'C-115@1'].map((name) => out.indexOf(name));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    for (const line of lines(out)) expect(line.length).toBeLessThanOrEqual(80);
    expect((await tirelab(['analyze', PASS, UNDECIDED])).status).toBe(3);
    expect((await tirelab(['analyze', PASS, PASS])).status).toBe(0);
  });

  it('gives each line of --ndjson the document of the run alone', async () => {
    const { out } = await tirelab(['analyze', '--ndjson', PASS, FAIL]);
    const alone = await Promise.all([PASS, FAIL].map((run) => tirelab(['analyze', '--json', run])));
    for (const [i, line] of lines(out).entries()) {
      const { file, ...document } = JSON.parse(line);
      expect(file).toBe([PASS, FAIL][i]);
      expect(document).toEqual(JSON.parse(alone[i]!.out));
    }
  });

  it('names a broken run with its path, goes on, and ends with 3', async () => {
    const broken = join(folder, 'broken.yaml');
    const { status, out, err } = await tirelab(['analyze', '--ndjson', broken, PASS]);
    expect(status).toBe(3);
    expect(err).toContain(`${broken}:3:11: "none.yaml": no such file`);
    const [first, second] = lines(out).map((line) => JSON.parse(line));
    expect(first).toMatchObject({ schema: 'tirelab.problems/1', file: broken });
    expect(first.problems.map(({ line }: { line: number }) => line)).toEqual([3, 4]);
    expect(second).toMatchObject({ schema: 'tirelab.result/1', file: PASS, verdict: 'pass' });
    expect((await tirelab(['analyze', broken, FAIL])).status).toBe(1);
    const document = JSON.parse((await tirelab(['analyze', '--json', broken, PASS])).out);
    expect(document).toMatchObject({ schema: 'tirelab.batch/1', count: { runs: 2, unreadable: 1 } });
    expect(document.runs.map((run: { result: unknown }) => run.result === null)).toEqual([true, false]);
  });

  it('evaluates nothing where no run can be read: status 2, and one document of problems', async () => {
    const { status, out } = await tirelab(['analyze', '--json', join(folder, 'broken.yaml'), 'none.yaml']);
    expect(status).toBe(2);
    expect(JSON.parse(out).schema).toBe('tirelab.problems/1');
    expect((await tirelab(['analyze', join(folder, '*.nothing')])).status).toBe(2);
    expect((await tirelab(['analyze'])).status).toBe(2);
    expect((await tirelab(['analyze', '--each', PASS])).status).toBe(2);
    expect((await tirelab(['analyze', '--ndjson', '--protocol', PROTOCOL, '-'])).status).toBe(2);
  });

  it('takes patterns, lists and logs that are tests of their own', async () => {
    const byPattern = await tirelab(['analyze', '--csv', 'fixtures/demo*/run.yaml']);
    const listed = await tirelab(['analyze', '--csv', '--files-from', '-'], {
      input: `${FAIL}\n${UNDECIDED}\n${PASS}\n`,
    });
    expect(listed.out).toBe(byPattern.out);
    const logs = ['fixtures/demo/drops.csv', 'fixtures/demo-fail/drops.csv'];
    const each = await tirelab(['analyze', '--csv', '--protocol', PROTOCOL, '--each', ...logs]);
    expect(lines(each.out)).toHaveLength(3);
    const joined = await tirelab(['analyze', '--csv', '--protocol', PROTOCOL, ...logs]);
    expect(lines(joined.out)).toHaveLength(2);
    expect(lines(joined.out)[1]!.split(',')[9]).toBe('60');
  });

  it('writes rows whose numbers are those of the document', async () => {
    const { out } = await tirelab(['analyze', '--csv', PASS]);
    const [head, row] = lines(out).map((line) => line.split(','));
    const cell = (name: string) => row![head!.indexOf(name)];
    const document = JSON.parse((await tirelab(['analyze', '--json', PASS])).out);
    const [median] = document.estimates;
    expect(Number(cell('value'))).toBe(median.value);
    expect(Number(cell('lower'))).toBe(median.interval.lower);
    expect(cell('interval')).toBe(median.interval.method);
    expect(cell('verdict')).toBe('pass');
  });

  it('writes to a file that appears whole or not at all', async () => {
    const to = join(folder, 'results.ndjson');
    expect((await tirelab(['analyze', '--ndjson', PASS, FAIL, '-o', to])).status).toBe(1);
    expect(lines(readFileSync(to, 'utf8'))).toHaveLength(2);
    expect((await tirelab(['analyze', '--ndjson', PASS, FAIL, '-o', to])).status).toBe(2);
  });

  it('gives profile intervals alone when asked, with their method', async () => {
    const args = ['analyze', '--json', '--intervals', 'profile-likelihood', PASS];
    const document = JSON.parse((await tirelab(args)).out);
    expect(document.intervals).toBe('profile-likelihood');
    const stored = join(folder, 'profile.json');
    await tirelab([...args, '-o', stored]);
    expect((await tirelab(['verify', stored])).status).toBe(0);
    const methods = document.estimates.map((one: { interval: { method: string } }) => one.interval.method);
    expect(methods).not.toContain('calibrated');
    const both = JSON.parse((await tirelab(['analyze', '--json', PASS])).out);
    const profiled = both.estimates.find(
      (one: { quantity: string; interval: { method: string } }) =>
        one.quantity === 'medianFailureEnergy' && one.interval.method === 'profile-likelihood',
    );
    expect(document.estimates[0].interval).toEqual(profiled.interval);
  });

  it('guards a spreadsheet against names that begin as formulas', async () => {
    const odd = join(folder, 'odd');
    mkdirSync(odd);
    const run = readFileSync(PASS, 'utf8')
      .replace('id: demo', 'id: "=HYPERLINK(1)"')
      .replaceAll('../../', `${process.cwd()}/`)
      .replace('specimens: specimens.csv', `specimens: ${process.cwd()}/fixtures/demo/specimens.csv`)
      .replace('[drops.csv]', `[${process.cwd()}/fixtures/demo/drops.csv]`);
    writeFileSync(join(odd, 'run.yaml'), run);
    const { out, err } = await tirelab(['analyze', '--csv', join(odd, 'run.yaml')]);
    expect(err).toBe('');
    expect(lines(out)[1]!.split(',')[4]).toBe("'=HYPERLINK(1)");
  });
});
