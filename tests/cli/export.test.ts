import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';
import { GateLab } from './gate-lab.ts';

let lab: GateLab;
beforeEach(() => {
  lab = new GateLab();
});
afterEach(() => lab.remove());

/** Every text of a document, and every key. */
function wordsOf(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => [
    ...(Array.isArray(value) ? [] : [key]),
    ...wordsOf(inner),
  ]);
}

describe('tirelab export', () => {
  it('has the numbers of the result to the last digit, and leads back to it', async () => {
    lab.add('demo');
    const path = await lab.store('demo');
    const full = JSON.parse(readFileSync(path, 'utf8'));
    const { status, out } = await tirelab(['export', path, '--as', 'sample 7', '--json', '--criteria']);
    expect(status).toBe(0);
    const exported = JSON.parse(out);
    expect(exported).toMatchObject({ schema: 'tirelab.export/1', item: 'sample 7', verdict: 'pass' });
    expect(exported.source.sha256).toBe(createHash('sha256').update(readFileSync(path)).digest('hex'));
    const numbers = (entries: { value: number; interval: object }[]) =>
      entries.map(({ value, interval }) => ({ value, interval }));
    const ends = (entries: { interval: Record<string, unknown> | null }[]) =>
      entries.map(({ interval }) => interval && { lower: interval.lower, upper: interval.upper });
    expect(numbers(exported.estimates).map(({ value }) => value)).toEqual(
      numbers(full.estimates).map(({ value }) => value),
    );
    expect(ends(exported.estimates)).toEqual(ends(full.estimates));
    expect(exported.criteria.map(({ verdict }: { verdict: string }) => verdict)).toEqual(
      full.criteria.map(({ verdict }: { verdict: string }) => verdict),
    );
  });

  it('has no word of the construction, the tyres, the people and the files', async () => {
    lab.add('demo');
    const path = await lab.store('demo');
    // Names where a result may have them: everything that is not on the list stays inside.
    const full = JSON.parse(readFileSync(path, 'utf8'));
    const secret = { note: 'aramid K-3 by operator O-9', factors: { casing: { tpi: 60 } } };
    for (const entry of [
      full,
      ...full.estimates,
      ...full.criteria,
      full.conformance,
      full.sample,
      full.energy,
      full.protocol,
    ]) {
      Object.assign(entry, { secret, why: 'C-114 with K-3' });
    }
    full.conformance.deviations.push({
      code: 'DROP-43',
      severity: 'minor',
      scope: 'drop',
      message: 'C-114-07 by O-9',
      specimen: 'C-114-07',
      count: 2,
    });
    writeFileSync(path, JSON.stringify(full));
    const register = readFileSync(join(lab.folder, 'fixtures/demo/specimens.csv'), 'utf8');
    const withheld = [
      ...register.split(/[,\n]/u).filter((cell) => /[A-Z]/u.test(cell)),
      ...[
        'C-114',
        'C-110',
        'casing',
        'aramid',
        'tpi',
        'T-07',
        'K-3',
        'O-9',
        'demo',
        '.csv',
        '.yaml',
        '62-622',
        'desk 4',
        'trail-casing',
      ],
    ];
    for (const args of [['--json'], ['--json', '--criteria'], ['--format', 'text', '--criteria']]) {
      const { status, out } = await tirelab(['export', path, ...args]);
      expect(status).toBe(0);
      expect(out).toContain('DROP-43');
      const words = args[0] === '--json' ? wordsOf(JSON.parse(out)) : out.split(/\s+/u);
      for (const word of withheld)
        expect(
          words.filter((one) => one.includes(word)),
          word,
        ).toEqual([]);
    }
    const { out } = await tirelab(['export', path, '--json']);
    expect(JSON.parse(out)).toMatchObject({ criteria: null, verdict: null });
  });

  it('gives of a session one construction only, and asks which', async () => {
    lab.add('demo', 'demo-fail');
    const logs = ['demo', 'demo-fail'].map((run) =>
      readFileSync(join(lab.folder, `fixtures/${run}/drops.csv`), 'utf8'),
    );
    const tables = ['demo', 'demo-fail'].map((run) =>
      readFileSync(join(lab.folder, `fixtures/${run}/specimens.csv`), 'utf8'),
    );
    const joined = (texts: string[]) => texts[0] + texts[1]!.slice(texts[1]!.indexOf('\n') + 1);
    lab.write('session/drops.csv', joined(logs));
    lab.write('session/specimens.csv', joined(tables));
    lab.write(
      'session/run.yaml',
      'format: tirelab.run/1\nid: session\nprotocol: ../protocols/pinch-up-down.yaml\nrig: ../shared/rigs/drop-2.yaml\nconstructions: [../shared/constructions/C-114.yaml, ../shared/constructions/C-115.yaml]\nspecimens: specimens.csv\nlogs: [drops.csv]\n',
    );
    const path = join(lab.folder, 'session/result.json');
    await tirelab(['analyze', join(lab.folder, 'session/run.yaml'), '--json', '-o', path]);
    const full = JSON.parse(readFileSync(path, 'utf8'));
    expect(full.samples).toHaveLength(2);
    const asked = await tirelab(['export', path]);
    expect(asked.status).toBe(2);
    expect(asked.err).toMatch(/name the one that goes out with --construction/);
    expect((await tirelab(['export', path, '--construction', 'C-999'])).status).toBe(2);
    const { out } = await tirelab(['export', path, '--construction', 'C-115', '--json']);
    const exported = JSON.parse(out);
    const own = full.estimates.filter(({ construction }: { construction: string }) =>
      construction.startsWith('C-115'),
    );
    expect(exported.estimates.map(({ value }: { value: number }) => value)).toEqual(
      own.map(({ value }: { value: number }) => value),
    );
    expect(exported.sample.drops).toBe(full.samples[1].drops);
    expect(wordsOf(exported).filter((word) => word.includes('C-11'))).toEqual([]);
  });
});
