import { PassThrough } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { progressLine } from '../../src/cli/progress.ts';
import type { Shell } from '../../src/cli/shell.ts';

function shellWith(isTTY: boolean, env: Record<string, string> = {}) {
  const stderr = Object.assign(new PassThrough(), { isTTY });
  const shell = {
    stdin: new PassThrough(),
    stdout: new PassThrough(),
    stderr,
    env,
    onInterrupt: () => () => {},
  };
  return { shell: shell as unknown as Shell, text: () => (stderr.read() as Buffer | null)?.toString() ?? '' };
}

describe('progressLine', () => {
  it('shows share, count and time left on a terminal, and wipes itself', () => {
    const { shell, text } = shellWith(true);
    let time = 0;
    const line = progressLine(shell, {}, 'tests', () => time);
    time = 1000;
    line.update(250, 1000);
    expect(text()).toContain('25 %  250 of 1000 tests, 3 s left');
    time = 1050;
    line.update(260, 1000);
    expect(text()).toBe('');
    line.end();
    expect(text()).toBe('\r\u001b[2K');
  });

  for (const [what, isTTY, env, options] of [
    ['a pipe', false, {}, {}],
    ['CI', true, { CI: 'true' }, {}],
    ['a dumb terminal', true, { TERM: 'dumb' }, {}],
    ['--quiet', true, {}, { quiet: true }],
    ['--no-progress', true, {}, { progress: false }],
  ] as const) {
    it(`is silent for ${what}`, () => {
      const { shell, text } = shellWith(isTTY, env);
      const line = progressLine(shell, options, 'tests', () => 0);
      line.update(1, 2);
      line.end();
      expect(text()).toBe('');
    });
  }
});
