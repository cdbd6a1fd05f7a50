import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

describe('completion scripts', () => {
  it.each(['bash', 'zsh', 'fish'])('%s offers every command and its options', async (shell) => {
    const { status, out } = await tirelab(['completion', shell]);
    expect(status).toBe(0);
    for (const word of ['analyze', 'schema', 'protocol', 'specification']) expect(out).toContain(word);
    expect(out).toMatch(/-l json|--json/);
  });

  it('is a script that bash takes, and completes a command, an option and a name with', async () => {
    const { out } = await tirelab(['completion', 'bash']);
    const complete = (...words: string[]) => {
      const line = `COMP_WORDS=(tirelab ${words.map((word) => `'${word}'`).join(' ')}); COMP_CWORD=${words.length}; _tirelab; echo "\${COMPREPLY[@]}"`;
      return spawnSync('bash', ['-c', `${out}\n${line}`], { encoding: 'utf8' });
    };
    expect(complete('ana').stdout.trim()).toBe('analyze');
    expect(complete('analyze', '--js').stdout.trim()).toBe('--json');
    expect(complete('schema', 'pro').stdout.trim()).toBe('protocol');
    expect(complete('ana').stderr).toBe('');
  });
});
