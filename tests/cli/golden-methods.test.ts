import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

// The printed analysis of each method, with every estimator, read over before it was committed: a change of a number or a
// word shows at once. GOLDEN=write prints them anew. The logs are invented (fixtures/methods).
const FOLDERS = readdirSync('fixtures/methods', { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);
const GOLDEN = new URL('./golden/', import.meta.url);

/** What the golden texts must not hang on: the version of the program. */
const settled = (text: string) => text.replace(/tirelab \d+\.\d+\.\d+\S*/u, 'tirelab VERSION');

describe('the printed analysis', () => {
  it('is held for every method', () => {
    const methods = FOLDERS.map((folder) => {
      const run = readFileSync(`fixtures/methods/${folder}/run.yaml`, 'utf8');
      const path = /^protocol: (\S+)$/mu.exec(run)![1]!;
      const protocol = readFileSync(`fixtures/methods/${folder}/${path}`, 'utf8');
      return /^method: (\S+)/mu.exec(protocol)![1]!;
    });
    expect([...new Set(methods)].sort()).toEqual([
      'd-optimal',
      'fixed-level',
      'langlie',
      'rising-height',
      'transformed-up-and-down',
      'up-and-down',
    ]);
  });

  it.each(FOLDERS)('of %s is as it was', async (folder) => {
    const asked = ['analyze', '--estimators', 'all', `fixtures/methods/${folder}/run.yaml`];
    const { status, out } = await tirelab(asked);
    expect(status).toBe(0);
    const file = new URL(`${folder}.txt`, GOLDEN);
    if (process.env.GOLDEN === 'write') {
      mkdirSync(GOLDEN, { recursive: true });
      writeFileSync(file, settled(out));
    }
    expect(settled(out)).toBe(readFileSync(file, 'utf8'));
  });
});
