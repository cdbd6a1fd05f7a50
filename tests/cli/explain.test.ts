import { describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

describe('tirelab explain', () => {
  it('says what a code means, within 80 columns', async () => {
    const { status, out } = await tirelab(['explain', 'drop-41']);
    expect(status).toBe(0);
    expect(out).toContain('DROP-41: bead unseated or burped');
    expect(out).toContain('damage: bead-burp');
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  it('suggests a code for a word that is none, with status 2', async () => {
    const { status, err } = await tirelab(['explain', 'DROP-99']);
    expect(status).toBe(2);
    expect(err).toMatch(/"DROP-99" is no code of the catalogue; did you mean DROP-\d\d\?/u);
    expect((await tirelab(['explain', 'DRPO-04'])).err).toContain('did you mean DROP-04?');
  });

  it('lists all codes, and gives them as one JSON document', async () => {
    const { out } = await tirelab(['explain', '--json']);
    const { schema, explanations } = JSON.parse(out);
    expect(schema).toBe('tirelab.explanations/1');
    const drops = explanations.filter(({ code }: { code: string }) => code.startsWith('DROP-'));
    expect(drops).toHaveLength(56);
    expect((await tirelab(['explain'])).out).toContain('DROP-56');
  });
});
