import { cpSync, writeFileSync } from 'node:fs';
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
});
