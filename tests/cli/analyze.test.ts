import { mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { estimateOf, tirelab } from './command.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tirelab-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const PROTOCOL = `format: tirelab.protocol/1
id: pinch-up-down
version: 1.0.0
kind: impact
method: up-and-down
mass: 8.000 kg
start: 500 mm
step: 25 mm
`;
const HEADER = 'specimen,height [mm],outcome\n';

/** A log whose heights start at 500 mm and move 25 mm by the rule; `o` survived, `x` failed. */
function logOf(outcomes: string): string {
  let height = 500;
  const rows = [...outcomes].map((mark, i) => {
    const row = `T${i + 1},${height},${mark === 'x' ? 'failed' : 'survived'}`;
    height += mark === 'x' ? -25 : 25;
    return row;
  });
  return `${HEADER}${rows.join('\n')}\n`;
}

async function analyseText(log: string, more: readonly string[] = [], protocol = PROTOCOL) {
  const files = ['--protocol', file('p.yaml', protocol), ...more, file('log.csv', log)];
  const { status, out } = await tirelab(['analyze', '--json', ...files]);
  return { status, result: JSON.parse(out) };
}

describe('exit status and verdict of the demos', () => {
  it.each([
    ['demo', 0, 'pass'],
    ['demo-fail', 1, 'fail'],
    ['demo-undecided', 3, 'inconclusive'],
  ])('%s ends with %i: %s', async (name, status, verdict) => {
    const ran = await tirelab(['analyze', `fixtures/${name}/run.yaml`, '--json']);
    expect(ran.status).toBe(status);
    const result = JSON.parse(ran.out);
    expect(result).toMatchObject({ schema: 'tirelab.result/1', kind: 'impact', verdict });
    const lives = result.criteria.find((criterion: { id: string }) => criterion.id === 'life');
    expect(lives).toMatchObject({ verdict: 'not-tested' });
    expect(ran.err).toBe('');
  });

  it('--exit-zero reports without failing a job, but not on wrong input', async () => {
    expect((await tirelab(['analyze', 'fixtures/demo-fail/run.yaml', '--exit-zero'])).status).toBe(0);
    expect((await tirelab(['analyze', 'nowhere.yaml', '--exit-zero'])).status).toBe(2);
  });
});

describe('what cannot be estimated is said, and is status 0 without a specification', () => {
  it.each([
    ['no failure', 'oooo', 'no failure'],
    ['all failed', 'xxxx', 'all failed'],
    ['a gap', 'oxox', 'gap'],
    ['a common level', 'ooxoxx', 'common level'],
  ])('%s', async (_name, outcomes, word) => {
    const { status, result } = await analyseText(logOf(outcomes));
    expect(status).toBe(0);
    const median = estimateOf(result, 'medianFailureEnergy', 'censored-likelihood');
    expect(median.value).toBeNull();
    expect(median.why).toContain(word);
    expect(median.interval).toMatchObject({ level: 0.95, sides: 2, method: 'calibrated' });
    const beside = estimateOf(
      result,
      'medianFailureEnergy',
      'censored-likelihood',
      undefined,
      'profile-likelihood',
    );
    expect(beside).toMatchObject({ value: null, why: median.why });
  });

  it('where all survived, the interval is open above', async () => {
    const { result } = await analyseText(logOf('oooooooo'));
    const { interval } = estimateOf(result, 'medianFailureEnergy', 'censored-likelihood');
    expect(interval!.upper).toBeNull();
    expect(interval!.lower).toBeGreaterThan(0);
  });
});

describe('input that cannot be used is status 2 and one line a problem', () => {
  it('lists all problems of a log with line and column, and the same as JSON', async () => {
    const protocol = file('p.yaml', PROTOCOL);
    const log = file('bad.csv', `${HEADER}T1,500,failed\nT2,-1,survived\nT3,525,bang\n,500,failed\n`);
    const { status, out, err } = await tirelab(['analyze', '--json', '--protocol', protocol, log]);
    expect(status).toBe(2);
    const document = JSON.parse(out);
    expect(document.schema).toBe('tirelab.problems/1');
    expect(
      document.problems.map(({ line, column }: { line: number; column: number }) => [line, column]),
    ).toEqual([
      [3, 4],
      [4, 8],
      [5, 1],
    ]);
    expect(err.trim().split('\n')).toHaveLength(3);
    expect(err).not.toContain('    at ');
  });

  it.each([
    ['a missing file', ['analyze', 'no-such.yaml']],
    ['a directory', ['analyze', 'fixtures']],
    ['an unknown option', ['analyze', '--protokol', 'x', 'y']],
    ['an unknown command', ['anlayze', 'x']],
    ['no argument', ['analyze']],
    ['a run file with a protocol beside it', ['analyze', 'fixtures/demo/run.yaml', '--rig', 'r.yaml']],
    ['a log without a protocol', ['analyze', 'fixtures/demo/drops.csv']],
  ])('%s', async (_name, args) => {
    const { status, out, err } = await tirelab(args);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).not.toBe('');
    expect(err).not.toContain('fault');
  });

  it('suggests the command that was meant', async () => {
    expect((await tirelab(['anlayze', 'x'])).err).toContain('analyze');
  });

  it('reports the problems of several documents at once', async () => {
    file('wrong.yaml', PROTOCOL.replace('25 mm', '25 bar'));
    file('spec.yaml', 'format: tirelab.specification/1\nid: s\nversion: 1.0.0\ncriteria: []\n');
    const run =
      'format: tirelab.run/1\nid: r\nprotocol: wrong.yaml\nspecification: spec.yaml\nlogs: [none.csv]\n';
    const { status, err } = await tirelab(['analyze', file('run.yaml', run)]);
    expect(status).toBe(2);
    expect(err).toContain('wrong.yaml:8:7');
    expect(err).toContain('spec.yaml');
    expect(err).toContain('none.csv');
  });

  it('does not follow a link that leads out of the tree of the run', async () => {
    const outside = mkdtempSync(join(tmpdir(), 'tirelab-outside-'));
    writeFileSync(join(outside, 'drops.csv'), logOf('oxo'));
    symlinkSync(join(outside, 'drops.csv'), join(folder, 'link.csv'));
    file('p.yaml', PROTOCOL);
    const run = file('run.yaml', 'format: tirelab.run/1\nid: r\nprotocol: p.yaml\nlogs: [link.csv]\n');
    const { status, err } = await tirelab(['analyze', run]);
    rmSync(outside, { recursive: true });
    expect(status).toBe(2);
    expect(err).toMatch(/run\.yaml:4:8: .*symbolic link/);
  });
});

describe('standard input, files and colour', () => {
  it('reads a log from -', async () => {
    const protocol = file('p.yaml', PROTOCOL);
    const { status, out } = await tirelab(['analyze', '--protocol', protocol, '--json', '-'], {
      input: logOf('oxoxxo'),
    });
    expect(status).toBe(0);
    expect(JSON.parse(out).inputs.at(-1)).toMatchObject({ role: 'log', path: '-', rows: 6 });
  });

  it('writes to a file that is not overwritten without --force', async () => {
    const target = join(folder, 'result.json');
    const args = ['analyze', 'fixtures/demo/run.yaml', '--json', '-o', target];
    const first = await tirelab(args);
    expect([first.status, first.out]).toEqual([0, '']);
    const written = readFileSync(target, 'utf8');
    expect(JSON.parse(written).verdict).toBe('pass');
    const second = await tirelab(args);
    expect(second.status).toBe(2);
    expect(readFileSync(target, 'utf8')).toBe(written);
    expect((await tirelab([...args, '--force'])).status).toBe(0);
  });

  it.each([
    [{}, false, [], false],
    [{}, true, [], true],
    [{ NO_COLOR: '1' }, true, [], false],
    [{ NO_COLOR: '' }, true, [], true],
    [{ FORCE_COLOR: '1' }, false, [], true],
    [{ NO_COLOR: '1', FORCE_COLOR: '1' }, false, [], false],
    [{ TERM: 'dumb' }, true, [], false],
    [{ NO_COLOR: '1' }, false, ['--color'], true],
    [{}, true, ['--no-color'], false],
  ])('colour under %j, terminal %s, %j: %s', async (env, terminal, flags, coloured) => {
    const args = ['analyze', 'fixtures/demo/run.yaml', ...flags];
    const { out } = await tirelab(args, {
      env: env as Record<string, string>,
      terminal: terminal as boolean,
    });
    expect(out.includes('\u001b[')).toBe(coloured);
  });

  it('is at most 80 columns wide', async () => {
    for (const name of ['demo', 'demo-fail', 'demo-undecided']) {
      const { out } = await tirelab(['analyze', `fixtures/${name}/run.yaml`]);
      for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
    }
  });

  it('never lets a control character of a log through', async () => {
    const log = `${HEADER}\u001b[31mred,500,survived\n\u001b]0;title\u0007,525,failed\n`;
    const { out } = await tirelab(['analyze', '--protocol', file('p.yaml', PROTOCOL), file('log.csv', log)]);
    expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
  });
});

describe('deviations reach the result with their line', () => {
  it('a wrong way is DROP-04 and takes the count formula out', async () => {
    const log = `${HEADER}T1,500,survived\nT2,525,failed\nT3,550,failed\nT4,525,survived\nT5,550,failed\nT6,525,failed\nT7,500,survived\n`;
    const { status, result } = await analyseText(log);
    expect(status).toBe(0);
    expect(result.conformance.status).toBe('deviating');
    expect(result.conformance.deviations).toContainEqual(
      expect.objectContaining({ code: 'DROP-04', severity: 'minor', scope: 'drop', line: 4, specimen: 'T3' }),
    );
    expect(estimateOf(result, 'medianFailureEnergy', 'up-and-down-count').value).toBeNull();
    expect(estimateOf(result, 'medianFailureEnergy', 'censored-likelihood').why).not.toContain('DROP');
  });

  it('more than a fifth of the drops left out is no estimate, and status 3', async () => {
    const rows = [
      'T1,500,survived,,',
      'T2,525,failed,no,DROP-16',
      'T3,525,failed,no,DROP-16',
      'T4,525,failed,,',
      'T5,500,survived,,',
    ];
    const { status, result } = await analyseText(
      `specimen,height [mm],outcome,valid,reason\n${rows.join('\n')}\n`,
    );
    expect(status).toBe(3);
    expect(result.conformance.status).toBe('invalid');
    expect(result.estimates[0]).toMatchObject({ value: null, interval: null });
  });

  it('an exclusion without a reason gives the estimate with and without it', async () => {
    const log = logOf('oooxxxoxooxxxoooxxo').replace(/T4,(\d+),failed\n/, 'T4,$1,failed\nT4b,$1,survived\n');
    const rows = log
      .trim()
      .split('\n')
      .slice(1)
      .map((row) => `${row},${row.startsWith('T4b') ? 'no' : ''}`);
    const { result } = await analyseText(`specimen,height [mm],outcome,valid\n${rows.join('\n')}\n`);
    expect(result.conformance.deviations).toContainEqual(
      expect.objectContaining({ code: 'DROP-54', severity: 'minor', specimen: 'T4b' }),
    );
    const medians = result.estimates.filter(
      (estimate: { quantity: string; interval: { method: string } | null }) =>
        estimate.quantity === 'medianFailureEnergy' && estimate.interval?.method === 'profile-likelihood',
    );
    expect(medians).toHaveLength(2);
    expect(medians[1].drops).toBe(medians[0].drops + 1);
    expect(medians[1].value).not.toBe(medians[0].value);
  });
});
