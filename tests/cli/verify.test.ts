import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

let lab: string;
beforeEach(() => {
  lab = mkdtempSync(join(tmpdir(), 'tirelab-verify-'));
  for (const folder of ['protocols', 'shared', 'fixtures/demo'])
    cpSync(folder, join(lab, folder), { recursive: true });
});
afterEach(() => rmSync(lab, { recursive: true, force: true }));

async function stored(...more: string[]): Promise<string> {
  const path = join(lab, 'result.json');
  const { status } = await tirelab([
    'analyze',
    join(lab, 'fixtures/demo/run.yaml'),
    '--json',
    '-o',
    path,
    ...more,
  ]);
  expect(status).toBe(0);
  return path;
}

describe('tirelab verify', () => {
  it('finds that a result follows from its inputs, with or without further estimators', async () => {
    expect((await tirelab(['verify', await stored()])).status).toBe(0);
    for (const names of ['isotonic', 'all']) {
      const path = await stored('--force', '--estimators', names);
      expect((await tirelab(['verify', path])).status, names).toBe(0);
    }
  });

  it('finds a number that was edited by hand', async () => {
    const path = await stored();
    const text = readFileSync(path, 'utf8');
    writeFileSync(path, text.replace('"verdict": "pass"', '"verdict": "fail"'));
    const { status, out } = await tirelab(['verify', path]);
    expect(status).toBe(1);
    expect(out).toContain('"fail"');
    expect(out).toContain('"pass"');
  });

  it('finds an estimate that was added or taken away', async () => {
    const path = await stored('--estimators', 'isotonic');
    const result = JSON.parse(readFileSync(path, 'utf8'));
    for (const estimates of [result.estimates.slice(1), [...result.estimates, result.estimates[0]]]) {
      writeFileSync(path, JSON.stringify({ ...result, estimates }));
      expect((await tirelab(['verify', path])).status).toBe(1);
    }
  });

  it('writes a file without colour, whatever terminal it is given on', async () => {
    const target = join(lab, 'verified.txt');
    await tirelab(['verify', await stored(), '-o', target], { terminal: true });
    expect(readFileSync(target, 'utf8')).not.toContain('\u001b');
  });

  it('finds an input that changed', async () => {
    const path = await stored();
    const log = join(lab, 'fixtures/demo/drops.csv');
    writeFileSync(log, readFileSync(log, 'utf8').replace('T1\n', 'T2\n'));
    const { status, out } = await tirelab(['verify', path, '--json']);
    expect(status).toBe(1);
    expect(JSON.parse(out)).toMatchObject({ follows: false, changed: [{ role: 'log' }] });
  });

  it.each([
    ['no JSON', 'hello'],
    ['another document', '{"schema":"tirelab.next/1"}'],
    ['no inputs', '{"schema":"tirelab.result/1","kind":"impact","inputs":[]}'],
  ])('refuses %s with status 2', async (_name, text) => {
    const path = join(lab, 'odd.json');
    writeFileSync(path, text);
    expect((await tirelab(['verify', path])).status).toBe(2);
  });

  it('says that a log from standard input cannot be read again', async () => {
    const path = join(lab, 'piped.json');
    const input = readFileSync(join(lab, 'fixtures/demo/drops.csv'), 'utf8');
    const args = [
      'analyze',
      '--protocol',
      join(lab, 'protocols/pinch-up-down.yaml'),
      '--json',
      '-o',
      path,
      '-',
    ];
    await tirelab(args, { input });
    const { status, err } = await tirelab(['verify', path]);
    expect(status).toBe(2);
    expect(err).toContain('standard input');
  });
});
