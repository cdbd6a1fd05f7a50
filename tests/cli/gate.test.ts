import { execFileSync } from 'node:child_process';
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';
import { GateLab } from './gate-lab.ts';

let gateLab: GateLab;
let lab: string;
beforeEach(() => {
  gateLab = new GateLab();
  lab = gateLab.folder;
});
afterEach(() => gateLab.remove());

describe('tirelab gate', () => {
  it('passes where every criterion of every construction passes', async () => {
    gateLab.keep('C-114');
    gateLab.add('demo');
    const { status, out } = await tirelab(['gate', lab, '--json']);
    expect(status).toBe(0);
    const result = JSON.parse(out);
    expect(result).toMatchObject({ schema: 'tirelab.gate/1', verdict: 'pass', unreadable: [] });
    expect(result.constructions).toHaveLength(1);
  });

  it('fails with status 1 where one criterion of one construction fails, though others are undecided', async () => {
    gateLab.add('demo', 'demo-fail', 'demo-undecided');
    const { status, out } = await tirelab(['gate', lab, '--json']);
    expect(status).toBe(1);
    const verdicts = Object.fromEntries(
      JSON.parse(out).constructions.map((entry: { construction: { id: string }; verdict: string }) => [
        entry.construction.id,
        entry.verdict,
      ]),
    );
    expect(verdicts).toEqual({ 'C-114': 'pass', 'C-115': 'fail', 'C-116': 'inconclusive' });
  });

  it('is undecided where a construction has no run at all', async () => {
    gateLab.keep('C-114', 'C-116');
    gateLab.add('demo');
    const { status, out } = await tirelab(['gate', lab]);
    expect(status).toBe(3);
    expect(out).toContain('not tested');
  });

  it('goes on past a run that cannot be read, and ends with status 3', async () => {
    gateLab.keep('C-114');
    gateLab.add('demo');
    writeFileSync(
      join(lab, 'fixtures/broken.yaml'),
      'format: tirelab.run/1\nid: broken\nprotocol: none.yaml\nlogs: [x.csv]\n',
    );
    const { status, out } = await tirelab(['gate', lab, '--json']);
    expect(status).toBe(3);
    const result = JSON.parse(out);
    expect(result.verdict).toBe('pass');
    expect(result.unreadable).toHaveLength(1);
    expect(result.unreadable[0].problems[0]).toMatchObject({ line: 3, column: 11 });
  });

  it('refuses twins and circles among the constructions, all in one go', async () => {
    cpSync(join(lab, 'shared/constructions/C-114.yaml'), join(lab, 'shared/constructions/twin.yaml'));
    gateLab.edit('shared/constructions/C-115.yaml', (text) => `${text}parent: C-116@1\n`);
    gateLab.edit('shared/constructions/C-116.yaml', (text) => `${text}parent: C-115@1\n`);
    const { status, err } = await tirelab(['gate', lab]);
    expect(status).toBe(2);
    expect(err).toContain('a second time');
    expect(err.match(/in a circle/g)).toHaveLength(2);
  });

  it('writes JUnit with the verdict as the type of a failure, unique names, and an error for an unreadable run', async () => {
    gateLab.add('demo', 'demo-fail', 'demo-undecided');
    writeFileSync(
      join(lab, 'fixtures/broken.yaml'),
      'format: tirelab.run/1\nid: "a<b"\nprotocol: none.yaml\nlogs: [x.csv]\n',
    );
    const { out } = await tirelab(['gate', lab, '--format', 'junit']);
    expect(out).toMatch(/<failure type="fail" message="[^"]+">[^<]+<\/failure>/);
    expect(out).toMatch(/<failure type="inconclusive"/);
    expect(out).toMatch(/<error type="unreadable"/);
    const names = [...out.matchAll(/<testcase name="([^"]*)" classname="([^"]*)"/g)].map(
      ([, name, suite]) => `${suite}/${name}`,
    );
    expect(new Set(names).size).toBe(names.length);
    expect(out).not.toMatch(/timestamp|hostname/);
  });

  it('gives annotations, a merge page and a code quality report with distinct fingerprints', async () => {
    gateLab.add('demo', 'demo-fail', 'demo-undecided');
    expect((await tirelab(['gate', lab, '--format', 'github'])).out).toMatch(
      /^::error file=[^,]+C-115\.yaml,line=1,title=[^:]+::/m,
    );
    expect((await tirelab(['gate', lab, '--format', 'markdown'])).out).toContain('| C-115@1 |');
    const quality = JSON.parse((await tirelab(['gate', lab, '--format', 'codequality'])).out);
    const prints = quality.map(({ fingerprint }: { fingerprint: string }) => fingerprint);
    expect(prints.length).toBeGreaterThan(1);
    expect(new Set(prints).size).toBe(prints.length);
  });

  it('sets the evidence of a run aside that another one repeats, and says so', async () => {
    gateLab.keep('C-115');
    gateLab.add('demo-fail');
    gateLab.write(
      'fixtures/again/run.yaml',
      'format: tirelab.run/1\nid: again\nprotocol: ../../protocols/pinch-up-down.yaml\nrig: ../../shared/rigs/drop-2.yaml\nconstructions: [../../shared/constructions/C-115.yaml]\nspecimens: specimens.csv\nlogs: [drops.csv]\nreplaces: { run: ../demo-fail/run.yaml, reason: DROP-20, approver: head of lab }\n',
    );
    // The log of a passing construction under the tyres' other name: invented, to tell the two runs apart.
    for (const file of ['drops.csv', 'specimens.csv']) {
      const text = readFileSync(`fixtures/demo/${file}`, 'utf8').replaceAll('C-114', 'C-115');
      gateLab.write(`fixtures/again/${file}`, text);
    }
    const { status, criterion } = await gateLab.gate();
    expect(status).toBe(0);
    const median = criterion('C-115', 'median');
    expect(median).toMatchObject({ verdict: 'pass', notes: ['run demo-fail is set aside: it was repeated'] });
    expect(median.evidence).toMatchObject([{ run: 'again' }]);
  });

  it('reads the logs of a run once, however many specifications apply', async () => {
    gateLab.keep('C-114');
    gateLab.add('demo');
    const text = readFileSync('shared/specifications/trail-casing.yaml', 'utf8').replace(
      /^ *- \{ id: life.*\n/m,
      '',
    );
    gateLab.write('shared/specifications/second.yaml', text.replace('id: trail-casing', 'id: second'));
    const { result } = await gateLab.gate();
    const [first, second] = result.constructions.map(
      ({ criteria }: { criteria: { id: string; verdict: string }[] }) =>
        criteria.map(({ id, verdict }) => [id, verdict]),
    );
    expect(first).toEqual(second);
    // A pipe can be read once: a second reading would find it empty.
    gateLab.remove('fixtures/demo/drops.csv');
    const pipe = join(lab, 'fixtures/demo/drops.csv');
    execFileSync('mkfifo', [pipe]);
    const fed = writeFile(pipe, readFileSync('fixtures/demo/drops.csv'));
    const again = await gateLab.gate();
    await fed;
    expect(again.result.constructions.map(({ verdict }: { verdict: string }) => verdict)).toEqual([
      'pass',
      'pass',
    ]);
  });
});
