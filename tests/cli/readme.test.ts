import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

const readme = readFileSync('README.md', 'utf8');

describe('the README', () => {
  it('shows what the first command really prints', async () => {
    const shown = /## What it prints\n\n```text\n([\s\S]*?)```/.exec(readme)?.[1];
    const { out } = await tirelab(['analyze', 'fixtures/demo/run.yaml']);
    // In process the version is that of the source; the built program says its own.
    const printed = out.replace(/tirelab 0\.0\.0-source/, 'tirelab 0.1.0').split('\nInputs\n')[0];
    expect(shown).toBe(`${printed}\n`.replace(/\n+$/, '\n'));
  });

  it('begins with the job in one paragraph, then the two commands', () => {
    expect(readme).toMatch(
      /^# tirelab\n\n[A-Z][^#`]+\n\nOn a machine with Node[^`]+```sh\nnpm ci && node [^\n]+\nnpm ci && npm test/,
    );
  });
});
