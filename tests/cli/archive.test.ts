import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';
import { GateLab } from './gate-lab.ts';

let lab: GateLab;
let result: string;
let manifest: string;
beforeEach(async () => {
  lab = new GateLab();
  lab.add('demo');
  result = await lab.store('demo');
  manifest = join(lab.folder, 'archive/manifest.json');
  mkdirSync(join(lab.folder, 'archive'));
});
afterEach(() => lab.remove());

const PARTS =
  'specimen,part,place,kept until\nC-114-01,casing,"shelf 4, box 12",\nC-114-02,cut tube,shelf 5,2031-06-30\n';

async function archived(...args: string[]) {
  lab.write('parts.csv', PARTS);
  const parts = ['--parts', join(lab.folder, 'parts.csv')];
  return tirelab(['archive', result, '--until', '2036-03-31', ...parts, '-o', manifest, ...args]);
}

async function verified(...args: string[]) {
  const { status, out, err } = await tirelab(['verify', manifest, '--json', ...args]);
  return { status, err, document: JSON.parse(out) };
}

describe('tirelab archive', () => {
  it('lists the result and every file that it rests on with its hash, the day, and where parts lie', async () => {
    expect((await archived()).status).toBe(0);
    const text = readFileSync(manifest, 'utf8');
    const document = JSON.parse(text);
    expect(document).toMatchObject({
      schema: 'tirelab.archive/1',
      retention: { until: '2036-03-31' },
      results: [
        {
          path: '../fixtures/demo/result.json',
          run: 'demo',
          protocol: 'pinch-up-down@1.0.0',
          constructions: ['C-114@2'],
          verdict: 'pass',
        },
      ],
      parts: [
        { specimen: 'C-114-01', part: 'casing', place: 'shelf 4, box 12', until: '2036-03-31' },
        { specimen: 'C-114-02', part: 'cut tube', place: 'shelf 5', until: '2031-06-30' },
      ],
    });
    expect(text).not.toContain(lab.folder);
    const roles = document.files.map(({ role }: { role: string }) => role);
    for (const role of [
      'result',
      'run',
      'protocol',
      'rig',
      'construction',
      'specification',
      'specimens',
      'log',
      'kept parts',
    ]) {
      expect(roles, role).toContain(role);
    }
    // Hashed here anew, from the bytes on the disk.
    for (const { path, sha256, bytes } of document.files) {
      const content = readFileSync(join(lab.folder, 'archive', path));
      expect(createHash('sha256').update(content).digest('hex'), path).toBe(sha256);
      expect(content.length, path).toBe(bytes);
    }
  });

  it('archives nothing that is not what was judged', async () => {
    lab.edit('fixtures/demo/drops.csv', (text) => text.replace('T1\n', 'T2\n'));
    lab.remove('shared/rigs/drop-2.yaml');
    const { status, err } = await archived();
    expect(status).toBe(2);
    expect(err).toMatch(/result\.json: its log ".*drops\.csv" is not what it was made from/);
    expect(err).toMatch(/result\.json: its rig ".*drop-2\.yaml" is not here/);
  });

  it.each([
    [
      'a day that is none',
      PARTS.replace('2031-06-30', '2031-06-31'),
      /parts\.csv:3:27: kept until: found "2031-06-31"/,
    ],
    ['no place', PARTS.replace('shelf 5', ''), /parts\.csv:3:\d+: place/],
    [
      'a specimen that no result knows',
      PARTS.replace('C-114-02', 'X-1'),
      /parts\.csv:3: found the specimen "X-1"/,
    ],
  ])('refuses kept parts with %s', async (_name, parts, message) => {
    lab.write('parts.csv', parts);
    const args = ['--until', '2036-03-31', '--parts', join(lab.folder, 'parts.csv')];
    const { status, err } = await tirelab(['archive', result, ...args]);
    expect(status).toBe(2);
    expect(err).toMatch(message);
  });

  it.each([
    [[], /--until/],
    [['--until', '2036-02-30'], /expected a date/],
  ])('refuses %s', async (args, message) => {
    const { status, err } = await tirelab(['archive', result, ...args]);
    expect(status).toBe(2);
    expect(err).toMatch(message);
  });
});

describe('tirelab verify of a manifest', () => {
  it('finds an archive whole, wherever it is moved to as a whole', async () => {
    await archived();
    const elsewhere = mkdtempSync(join(tmpdir(), 'tirelab-archive-'));
    cpSync(lab.folder, elsewhere, { recursive: true });
    lab.remove();
    const moved = join(elsewhere, 'archive/manifest.json');
    const { status, out } = await tirelab(['verify', moved, '--json', '--as-of', '2031-06-30']);
    rmSync(elsewhere, { recursive: true });
    expect(status).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      schema: 'tirelab.archive-verification/1',
      whole: true,
      missing: [],
      changed: [],
      ended: false,
      parts: [{ ended: false }, { ended: false }],
    });
  });

  it('says what is missing and what has changed, with status 1', async () => {
    await archived();
    lab.remove('fixtures/demo/specimens.csv');
    lab.edit('fixtures/demo/drops.csv', (text) => text.replace('T1\n', 'T2\n'));
    const { status, document } = await verified('--as-of', '2026-04-01');
    expect(status).toBe(1);
    expect(document).toMatchObject({
      whole: false,
      missing: [{ role: 'specimens', path: '../fixtures/demo/specimens.csv' }],
      changed: [{ role: 'log', path: '../fixtures/demo/drops.csv' }],
    });
    const { out } = await tirelab(['verify', manifest]);
    expect(out).toMatch(/not whole: 1 file missing,\s1\s*file changed/);
  });

  it('says from the day after which parts may go, and which files', async () => {
    await archived();
    const soon = await verified('--as-of', '2031-07-01');
    expect(soon.document).toMatchObject({ ended: false, parts: [{ ended: false }, { ended: true }] });
    const late = await verified('--as-of', '2036-04-01');
    expect(late.status).toBe(0);
    expect(late.document).toMatchObject({ ended: true, parts: [{ ended: true }, { ended: true }] });
  });

  it('refuses a manifest that was edited', async () => {
    await archived();
    const document = JSON.parse(readFileSync(manifest, 'utf8'));
    document.files[0].sha256 = 'none';
    document.retention.until = 'always';
    writeFileSync(manifest, JSON.stringify(document));
    const { status, err } = await verified();
    expect(status).toBe(2);
    expect(err).toMatch(/\$\.retention\.until/);
    expect(err).toMatch(/\$\.files\[0\]/);
  });
});
