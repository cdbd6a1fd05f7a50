import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { version } from '../../package.json' with { type: 'json' };

// The built program in a real shell: what only a process can show. `npm test` builds before it runs.

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tirelab-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function shell(command: string, env: Record<string, string> = {}) {
  const ran = spawnSync('sh', ['-c', command], { encoding: 'utf8', env: { ...process.env, ...env } });
  return { status: ran.status, out: ran.stdout, err: ran.stderr };
}

const tirelab = 'node bin/tirelab.js';

describe('the program in a real shell', () => {
  it('says its version in one line', () => {
    expect(shell(`${tirelab} --version`)).toEqual({ status: 0, out: `${version}\n`, err: '' });
  });

  it('ends with the verdict as its status', () => {
    expect(shell(`${tirelab} analyze fixtures/demo/run.yaml`).status).toBe(0);
    expect(shell(`${tirelab} analyze fixtures/demo-fail/run.yaml`).status).toBe(1);
    expect(shell(`${tirelab} analyze fixtures/demo-undecided/run.yaml`).status).toBe(3);
    expect(shell(`${tirelab} analyze fixtures/none.yaml`).status).toBe(2);
  });

  it('gives the same bytes from run to run, under any time zone and locale', () => {
    const command = `${tirelab} analyze fixtures/demo/run.yaml --json`;
    const here = shell(command, { TZ: 'UTC', LANG: 'C' });
    const there = shell(command, { TZ: 'Asia/Tokyo', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' });
    expect(there.out).toBe(here.out);
    expect(here.out).not.toContain(process.cwd());
  });

  it('ends quietly when its reader has seen enough', () => {
    const { err } = shell(`${tirelab} analyze fixtures/demo/run.yaml | head -1`);
    expect(err).toBe('');
  });

  it('gives a slow reader all of it', () => {
    const rows = Array.from(
      { length: 20_000 },
      (_, i) => `T${i},${500 + 25 * (i % 2)},${i % 2 ? 'failed' : 'survived'}`,
    );
    writeFileSync(join(folder, 'long.csv'), `specimen,height [mm],outcome\n${rows.join('\n')}\n`);
    const command = `${tirelab} analyze --protocol protocols/pinch-up-down.yaml --json ${join(folder, 'long.csv')}`;
    const bytes = Number(shell(`${command} | (sleep 1; wc -c)`).out);
    expect(bytes).toBeGreaterThan(1_000_000);
    expect(bytes).toBe(Number(shell(`${command} | cat | wc -c`).out));
  });

  it('leaves no partial file when it is interrupted', async () => {
    const target = join(folder, 'out.txt');
    const args = [
      'bin/tirelab.js',
      'analyze',
      '--protocol',
      'protocols/pinch-up-down.yaml',
      '-o',
      target,
      '-',
    ];
    // Standard input is a pipe that nobody closes: the command waits for a log that never ends.
    const child = spawn('node', args);
    child.stdin.write('specimen,height [mm],outcome\nT1,500,survived\n');
    await new Promise((resolve) => setTimeout(resolve, 1500));
    child.kill('SIGINT');
    const status = await new Promise((resolve) =>
      child.once('exit', (code, signal) => resolve(code ?? signal)),
    );
    expect(status).toBe(130);
    expect(readdirSync(folder).filter((name) => name.includes('out.txt'))).toEqual([]);
  });
});
