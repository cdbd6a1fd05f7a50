import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

const RUN = 'fixtures/demo/run.yaml';
const folder = mkdtempSync(join(tmpdir(), 'tirelab-report-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** The demo's run with other lines, in a folder of its own. */
function runWith(lines: string): string {
  const path = join(folder, `run-${Math.abs(lines.length)}.yaml`);
  const text = readFileSync(RUN, 'utf8')
    .replace(/request:[\s\S]*$/, '')
    .replaceAll('../../', `${resolve('.')}/`)
    .replaceAll('specimens.csv', resolve('fixtures/demo/specimens.csv'))
    .replaceAll('[drops.csv]', `[${resolve('fixtures/demo/drops.csv')}]`);
  writeFileSync(path, `${text}${lines}\n`);
  return path;
}

describe('tirelab report', () => {
  it('prints the page as HTML, with one chart, and exits by the verdict', async () => {
    const { status, out, err } = await tirelab(['report', RUN]);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(/^<!DOCTYPE html>\n<html lang="en">/);
    expect(out.match(/<svg/g)).toHaveLength(1);
    expect(out).toContain('Half of C-114@2 tyres fail at about 51');
    expect((await tirelab(['report', 'fixtures/demo-fail/run.yaml'])).status).toBe(1);
    expect((await tirelab(['report', 'fixtures/demo-undecided/run.yaml'])).status).toBe(3);
    expect(
      (await tirelab(['report', 'fixtures/demo-fail/run.yaml', 'fixtures/demo-undecided/run.yaml'])).status,
    ).toBe(1);
    expect((await tirelab(['report', '--exit-zero', 'fixtures/demo-fail/run.yaml'])).status).toBe(0);
  });

  it('prints the full report with at least two charts', async () => {
    const { out } = await tirelab(['report', '--kind', 'full', RUN]);
    expect(out.match(/<svg/g)!.length).toBeGreaterThanOrEqual(2);
    expect(out.length).toBeLessThan(400_000);
  });

  it('sets German words and numbers, and leaves the data alone', async () => {
    const { out } = await tirelab(['report', '--language', 'de', '--format', 'markdown', RUN]);
    expect(out).toContain('# Zusammenfassung: C-114\\@2');
    expect(out).toContain('mindestens 0,6');
    expect(out).toContain('pinch-up-down\\@1.0.0');
  });

  it('sets several runs beside each other', async () => {
    const runs = ['fixtures/demo/run.yaml', 'fixtures/demo-fail/run.yaml'];
    const { out } = await tirelab(['report', '--format', 'markdown', '--exit-zero', ...runs]);
    expect(out).toContain('**Constructions against each other.**');
    const full = await tirelab(['report', '--kind', 'full', '--exit-zero', ...runs]);
    expect(full.out).toContain('The tests beside each other');
    const ids = [...full.out.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('compares several drop tests, or says why it may not', async () => {
    const runs = ['fixtures/demo/run.yaml', 'fixtures/demo-fail/run.yaml'];
    const markdown = ['report', '--format', 'markdown', '--exit-zero', ...runs];
    const refused = (await tirelab(markdown)).out;
    expect(refused).toContain('These runs are not compared');
    expect(refused).toContain('2026-03-09 against 2026-03-10');
    const despite = ['--despite', 'day=both in one week', '--despite', 'mass=follows the cloth'];
    // The figures are those that compare prints (tests/cli/compare.test.ts).
    expect((await tirelab([...markdown, ...despite])).out).toContain(
      'C-115\\@1 survives 18 % less energy than C-114\\@2: the 95 % interval is 13 to 24 % less, 30 tyres each.',
    );
    const german = (await tirelab([...markdown, ...despite, '--kind', 'full', '--language', 'de'])).out;
    expect(german).toContain('übersteht 18 % weniger Energie als');
    expect(german).toContain('Ist nur die erklärte Größe eine andere?');
    expect(german).toContain('hingenommen: both in one week');
  });

  it('asks for something to compare where differences are put aside', async () => {
    const { status, err } = await tirelab(['report', RUN, '--despite', 'day=none']);
    expect(status).toBe(2);
    expect(err).toContain('--despite');
  });

  it('does not write over a file unasked', async () => {
    const path = join(folder, 'page.html');
    expect((await tirelab(['report', RUN, '-o', path])).status).toBe(0);
    const { status, err } = await tirelab(['report', RUN, '-o', path]);
    expect(status).toBe(2);
    expect(err).toContain('exists already');
    expect((await tirelab(['report', RUN, '-o', path, '--force'])).status).toBe(0);
    expect(readFileSync(path, 'utf8')).toMatch(/<\/html>\n$/);
  });

  it('embeds the photographs that the run names, and refuses what is none', async () => {
    writeFileSync(
      join(folder, 'cut.png'),
      Buffer.from(
        'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==',
        'base64',
      ),
    );
    writeFileSync(join(folder, 'bad.png'), '<svg onload="alert(1)"/>');
    const good = await tirelab([
      'report',
      runWith('photos: [{ file: cut.png, caption: "C-114-07, inside" }]'),
    ]);
    expect(good.err).toBe('');
    expect(good.out).toMatch(/<img src="data:image\/png;base64,iVBOR[^"]+" alt="C-114-07, inside"\/>/);
    const bad = await tirelab([
      'report',
      runWith('photos: [{ file: bad.png, caption: "x y" }, { file: none.png, caption: z }]'),
    ]);
    expect(bad.status).toBe(2);
    expect(bad.out).toBe('');
    expect(bad.err).toMatch(/bad\.png: found neither PNG nor JPEG/);
    expect(bad.err).toMatch(/none\.png": no such file/);
  });

  it('says which kinds, formats and languages there are', async () => {
    const { status, err } = await tirelab(['report', '--language', 'fr', RUN]);
    expect(status).toBe(2);
    expect(err).toMatch(/en, de/);
  });
});
