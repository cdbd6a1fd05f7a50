import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';
import { GateLab } from './gate-lab.ts';

let lab: GateLab;
beforeEach(() => {
  lab = new GateLab();
  lab.keep('C-115');
  lab.add('demo-fail');
});
afterEach(() => lab.remove());

/** A waiver of the median of C-115, which fails. */
function waiver(changes: Record<string, string | null> = {}): void {
  const keys: Record<string, string | null> = {
    format: 'tirelab.waiver/1',
    id: 'W-07',
    scope: '{ specification: trail-casing@1.0.0, criterion: median, construction: C-115@1 }',
    owner: 'head of quality',
    role: 'quality',
    reason: 'sold for lighter loads until revision 2',
    expires: '2026-03-16',
    ...changes,
  };
  const lines = Object.entries(keys).flatMap(([key, value]) =>
    value === null ? [] : [`${key}: ${value}\n`],
  );
  lab.write('waivers/W-07.yaml', lines.join(''));
}

describe('a waiver', () => {
  it('makes a failed criterion waived on its last day, status 0, and stays visible', async () => {
    waiver();
    const { status, result, criterion } = await lab.gate();
    expect(status).toBe(0);
    expect(result).toMatchObject({ verdict: 'waived', asOf: '2026-03-16' });
    expect(criterion('C-115', 'median')).toMatchObject({
      verdict: 'waived',
      waiver: { id: 'W-07', owner: 'head of quality', role: 'quality', insteadOf: 'fail' },
    });
    for (const format of ['text', 'markdown', 'junit']) {
      const { out } = await tirelab(['gate', lab.folder, '--as-of', '2026-03-16', '--format', format]);
      expect(out, format).toMatch(/waived until 2026-03-16 by head of quality/);
    }
  });

  it('counts as none from the day after, and says so', async () => {
    waiver();
    const { status, result, criterion } = await lab.gate('--as-of', '2026-03-17');
    expect(status).toBe(1);
    expect(result.verdict).toBe('fail');
    expect(criterion('C-115', 'median').notes).toEqual([
      'waiver W-07 counts as none: it ended on 2026-03-16',
    ]);
  });

  it('takes its day from SOURCE_DATE_EPOCH where none is given', async () => {
    waiver();
    const at = async (seconds: number) =>
      (await tirelab(['gate', lab.folder], { env: { SOURCE_DATE_EPOCH: String(seconds) } })).status;
    const noon = Date.UTC(2026, 2, 16, 12) / 1000;
    expect(await at(noon)).toBe(0);
    expect(await at(noon + 86_400)).toBe(1);
  });

  it('of a safety criterion needs the role safety', async () => {
    lab.edit('shared/specifications/trail-casing.yaml', (text) =>
      text.replace('{ id: median,', '{ id: median, safety: true,'),
    );
    waiver();
    const refused = await lab.gate();
    expect(refused.status).toBe(1);
    expect(refused.criterion('C-115', 'median')).toMatchObject({
      verdict: 'fail',
      safety: true,
      waiver: null,
    });
    expect(refused.criterion('C-115', 'median').notes[0]).toContain('needs the role safety');
    waiver({ role: 'safety' });
    expect((await lab.gate()).status).toBe(0);
  });

  it('cannot stand for a test that was not made', async () => {
    lab.remove('fixtures/demo-fail');
    waiver();
    const { status, criterion } = await lab.gate();
    expect(status).toBe(3);
    expect(criterion('C-115', 'median')).toMatchObject({ verdict: 'not-tested', waiver: null });
  });

  it('is of one revision: the next has to earn its own', async () => {
    waiver();
    lab.edit('shared/constructions/C-115.yaml', (text) => text.replace('revision: "1"', 'revision: "2"'));
    const { status, err } = await tirelab(['gate', lab.folder]);
    expect(status).toBe(2);
    expect(err).toMatch(/W-07\.yaml:3:\d+: found the construction "C-115@1", which is not there/);
  });

  it.each([
    ['without owner', { owner: null }, /W-07\.yaml:1:1: the key "owner" is missing/],
    ['without expiry', { expires: null }, /W-07\.yaml:1:1: the key "expires" is missing/],
    [
      'with a date that is none',
      { expires: '2026-02-30' },
      /W-07\.yaml:7:10: found "2026-02-30", expected a day/,
    ],
    [
      'of the lab itself',
      { role: 'laboratory' },
      /W-07\.yaml:5:7: found "laboratory", expected one of quality/,
    ],
    [
      'of no criterion',
      { scope: '{ specification: trail-casing@1.0.0, criterion: medain, construction: C-115@1 }' },
      /W-07\.yaml:3:\d+: .*"medain".*did you mean "median"/,
    ],
    [
      'of any version',
      { scope: '{ specification: trail-casing, criterion: median, construction: C-115@1 }' },
      /W-07\.yaml:3:25: .*without a version/,
    ],
  ])('%s is an error at its place', async (_name, changes, message) => {
    waiver(changes);
    const { status, err, out } = await tirelab(['gate', lab.folder]);
    expect(status).toBe(2);
    expect(err).toMatch(message);
    expect(out).toBe('');
  });
});
