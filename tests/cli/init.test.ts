import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { Command } from 'commander';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { initCommand } from '../../src/cli/commands/init.ts';
import type { Shell } from '../../src/cli/shell.ts';
import { documentOf } from '../../src/documents/load.ts';
import { rig } from '../../src/documents/rig.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'init-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

async function init(args: readonly string[], typed: readonly string[] | null) {
  const stdin = Object.assign(new PassThrough(), { isTTY: typed !== null });
  const [stdout, stderr] = [new PassThrough(), new PassThrough()];
  const shell: Shell = { stdin, stdout, stderr, env: {}, onInterrupt: () => () => {} };
  let said = '';
  let next = 0;
  stderr.on('data', (chunk: Buffer) => {
    said += chunk;
    // Answers are typed one by one, as each question comes.
    if (typed && String(chunk).includes('leave open: ') && next < typed.length)
      stdin.write(`${typed[next++]}\n`);
  });
  let status: number | null = null;
  const context = {
    shell,
    act: async (_: Command, work: () => Promise<number>) => {
      status = await work();
    },
  };
  await new Command('tirelab')
    .addCommand(initCommand(context))
    .parseAsync(['init', ...args], { from: 'user' });
  return { status, said, out: String(stdout.read() ?? '') };
}

describe('tirelab init', () => {
  it('asks on a terminal, and writes a rig that is ready', async () => {
    const path = join(folder, 'rig.yaml');
    const { status, said } = await init(
      ['--rig', 'fixtures/rigs/tower-b/export.csv', '-o', path],
      ['2', '1', '2', '+01:00'],
    );
    expect(status).toBe(0);
    expect(said).toContain('what "N" (18 times) means under "Flat?"');
    expect(said).not.toContain('still to settle');
    const { export: profile } = rig(documentOf(readFileSync(path), path, 'rig'));
    expect(profile!.outcomes!.get('Y')).toBe('failed');
    expect(profile!.outcomes!.get('N')).toBe('survived');
    expect(profile!.time).toMatchObject({ kind: 'clock', format: { pattern: 'M/D/YYYY h:mm:ss AP' } });
  });

  it('leaves a question open on an empty answer, or one that is none of the choices', async () => {
    const { out, said } = await init(
      ['--rig', 'fixtures/rigs/tower-b/export.csv'],
      ['', 'perhaps', '2', '+01:00'],
    );
    expect(said).toContain('none of these: left open');
    expect(said).toContain('2 questions are still to settle');
    expect(out).toMatch(/# TO SETTLE: what "N"[\s\S]*\n {4}failed:\n {4}survived:\n/);
  });

  it.each([
    ['with --no-input', ['--no-input'], []],
    ['where standard input is no terminal', [], null],
  ] as const)('never asks %s', async (_, args, typed) => {
    const { out, said } = await init(['--rig', 'fixtures/rigs/tower-b/export.csv', ...args], typed);
    expect(out.match(/TO SETTLE/g)).toHaveLength(4);
    expect(said).toContain('4 questions are still to settle');
    expect(said).not.toContain('leave open');
  });

  it('does not write over a file', async () => {
    const path = join(folder, 'taken.yaml');
    await init(['--rig', 'fixtures/rigs/tower-b/export.csv', '-o', path], null);
    expect(existsSync(path)).toBe(true);
    await expect(init(['--rig', 'fixtures/rigs/tower-b/export.csv', '-o', path], null)).rejects.toThrow(
      /exists/,
    );
  });
});
