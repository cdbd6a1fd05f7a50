import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

const folder = mkdtempSync(join(tmpdir(), 'raw-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('raw files', () => {
  const log = join(folder, 'drops.csv');
  const linked = join(folder, 'linked.csv');
  copyFileSync('fixtures/demo/drops.csv', log);
  symlinkSync(log, linked);
  const before = readFileSync(log, 'utf8');

  it.each([
    ['analyze', ['analyze', '--protocol', 'protocols/pinch-up-down.yaml', log, '-o', log, '--force']],
    [
      'analyze, by a link',
      ['analyze', '--protocol', 'protocols/pinch-up-down.yaml', log, '-o', linked, '--force'],
    ],
    ['next', ['next', '--protocol', 'protocols/pinch-up-down.yaml', log, '-o', log, '--force']],
    ['init', ['init', '--rig', log, '--no-input', '-o', log, '--force']],
  ])('are never written to, even with --force: %s', async (_, args) => {
    const { status, err } = await tirelab(args);
    expect(status).toBe(2);
    expect(err).toMatch(/(?:drops|linked)\.csv: is an input of this result and is never written to/u);
    expect(readFileSync(log, 'utf8')).toBe(before);
    expect(readdirSync(folder).sort()).toEqual(['drops.csv', 'linked.csv']);
  });
});
