import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { GateLab } from './gate-lab.ts';

// The built program in a real shell: exit statuses, streams, bytes. `npm test` builds before it runs.

let lab: GateLab;
beforeAll(() => {
  lab = new GateLab();
  lab.add('demo', 'demo-fail', 'demo-undecided');
});
afterAll(() => lab.remove());

function shell(command: string, env: Record<string, string> = {}) {
  const program = `tirelab() { "${process.execPath}" "${resolve('bin/tirelab.js')}" "$@"; }`;
  const { status, stdout, stderr } = spawnSync('sh', ['-c', `${program}; ${command}`], {
    cwd: lab.folder,
    encoding: 'utf8',
    env: { ...process.env, ...env },
  });
  return { status, stdout, stderr };
}

const PASSING = 'shared/constructions/C-114.yaml shared/specifications protocols fixtures/demo';
const UNDECIDED = 'shared/constructions/C-116.yaml shared/specifications fixtures/demo-undecided';

describe('gate in a real shell', () => {
  it.each([
    [0, `tirelab gate ${PASSING}`],
    [1, 'tirelab gate'],
    [0, 'tirelab gate --exit-zero'],
    [2, 'tirelab gate nowhere'],
    [2, 'tirelab gate --format odd'],
    [2, 'tirelab gate --what-if "median>=48 mm"'],
    [2, 'tirelab gate --as-of 2026-02-30'],
    [3, `tirelab gate ${UNDECIDED}`],
    [3, 'mkdir -p empty && tirelab gate empty'],
  ])('ends with %d: %s', (status, command) => {
    expect(shell(command).status).toBe(status);
  });

  it('gives the same bytes from run to run, under any time zone, locale and way of naming the folder', () => {
    const here = shell('tirelab gate --json', { TZ: 'UTC', LANG: 'C' }).stdout;
    const there = shell('tirelab gate --json .', {
      TZ: 'Asia/Tokyo',
      LANG: 'tr_TR.UTF-8',
      LC_ALL: 'tr_TR.UTF-8',
    });
    expect(there.stdout).toBe(here);
    expect(here).not.toContain(lab.folder);
  });

  it('keeps results on standard output, and problems on standard error', () => {
    const good = shell('tirelab gate --json');
    expect(good.stderr).toBe('');
    expect(JSON.parse(good.stdout)).toMatchObject({ schema: 'tirelab.gate/1' });
    const bad = shell('tirelab gate nowhere --json');
    expect(bad.stderr).toBe('nowhere: no such file; correct the path\n');
    expect(JSON.parse(bad.stdout)).toMatchObject({ schema: 'tirelab.problems/1' });
  });

  it('stays within 80 columns in a pipe, without colour', () => {
    const { stdout } = shell('tirelab gate | cat');
    for (const line of stdout.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
    expect(stdout).not.toContain('\u001b');
  });
});

describe('verify in a real shell', () => {
  it('ends with 0 for a result that follows, 1 for one that does not, 2 for none', () => {
    shell('tirelab analyze fixtures/demo/run.yaml --json -o result.json');
    expect(shell('tirelab verify result.json').status).toBe(0);
    shell(`sed 's/"verdict": "pass"/"verdict": "fail"/' result.json > edited.json`);
    expect(shell('tirelab verify edited.json').status).toBe(1);
    expect(shell('tirelab verify none.json').status).toBe(2);
    shell('rm result.json edited.json');
  });
});
