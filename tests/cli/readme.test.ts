import { spawnSync } from 'node:child_process';
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

  describe('shows batches that work as they stand', () => {
    const block = /## Many runs\n[\s\S]*?```sh\n([\s\S]*?)```/.exec(readme)?.[1] ?? '';
    const examples = block.split(/\n\n/).map((text) => text.trim());
    const isThere = (program: string) => spawnSync('sh', ['-c', `command -v ${program}`]).status === 0;
    const printed = [
      'C-115 median\n',
      'fixtures/demo-fail/run.yaml\nfixtures/demo-undecided/run.yaml\n',
      /^file,value,lower,upper\n(?:fixtures\/demo[^,]*\/drops\.csv,\d[\d.]*,\d[\d.]*,\d[\d.]*\n){3}$/,
      'demo-fail\tfail\ndemo-undecided\tinconclusive\ndemo\tpass\n',
      /^C-115@1\tC-116@1\t1\.1\d+\ttrue\nC-115@1\tC-114@2\t1\.2\d+\ttrue\nC-116@1\tC-114@2\t1\.0\d+\ttrue\n$/,
    ];
    it('has an example for each', () => expect(examples).toHaveLength(printed.length));
    for (const [i, example] of examples.entries()) {
      const [comment] = example.split('\n');
      // Node alone is promised: a machine without jq leaves its examples out.
      it.skipIf(example.includes('jq ') && !isThere('jq'))(comment!, () => {
        const { stdout, stderr } = spawnSync('sh', ['-c', example], {
          encoding: 'utf8',
          env: { ...process.env, LC_ALL: 'C' },
        });
        expect(stderr).toBe('');
        const wanted = printed[i]!;
        if (typeof wanted === 'string') expect(stdout).toBe(wanted);
        else expect(stdout).toMatch(wanted);
      });
    }
  });
});
