import { describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

const COMMANDS = {
  'plan of a drop test': ['plan', 'protocols/pinch-up-down.yaml'],
  'plan of a drum test': ['plan', 'protocols/drum-two-block.yaml'],
  next: ['next', '--protocol', 'protocols/pinch-up-down.yaml', 'fixtures/demo/drops.csv'],
  status: ['status', 'fixtures/drum-run/run.yaml', '--as-of', '2026-03-02'],
  report: ['report', 'fixtures/demo/run.yaml', '--kind', 'full', '--format', 'markdown'],
  rig: ['rig', 'shared/rigs/drop-2.yaml'],
} as const;

describe('cautions where the work is', () => {
  it.each(Object.entries(COMMANDS))(
    '%s: says what to keep away from, and never that it is safe',
    async (name, args) => {
      const { out, err } = await tirelab(args);
      const text = `${out}${err}`.replaceAll(/\s+/gu, ' ');
      expect(text).toContain('not know the state of the rig');
      if (name !== 'rig') expect(text).toMatch(/lower of the limits of tyre and rim/u);
      // Only ever as what is not said.
      for (const [said] of text.matchAll(/[^.]*\bsafe to\b[^.]*/gu))
        expect(said).toMatch(/never says|does not say/u);
      if (/ISO/u.test(text))
        expect(text).toMatch(/neither ISO 4210, ISO 5775 and local rules nor an accredited test/u);
    },
  );
});
