import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { tirelab } from '../cli/command.ts';
import { GateLab } from '../cli/gate-lab.ts';

// What the gate asks git: what changed since a commit, and what a released revision was there.

let lab: GateLab;
beforeEach(() => {
  lab = new GateLab();
  lab.add('demo', 'demo-fail', 'demo-undecided');
  git('init', '--quiet', '--initial-branch', 'main');
  commit();
});
afterEach(() => lab.remove());

function git(...args: string[]): void {
  const name = ['-c', 'user.name=lab', '-c', 'user.email=lab@example.invalid', '-c', 'commit.gpgsign=false'];
  execFileSync('git', ['-C', lab.folder, ...name, ...args], { stdio: 'ignore' });
}

function commit(): void {
  git('add', '.');
  git('commit', '--quiet', '--message', 'a state');
}

async function judged(...args: string[]) {
  const { status, result } = await lab.gate(...args);
  return {
    status,
    unchanged: result.since?.unchanged,
    names: result.constructions.map(({ construction }: { construction: { id: string } }) => construction.id),
  };
}

describe('gate --since', () => {
  it('judges nothing where nothing changed, and lets the change pass', async () => {
    expect(await judged('--since', 'HEAD')).toEqual({ status: 0, unchanged: 3, names: [] });
  });

  it.each([
    ['a construction', 'shared/constructions/C-115.yaml', ['C-115']],
    ['the log of a run', 'fixtures/demo/drops.csv', ['C-114']],
    ['its table of specimens', 'fixtures/demo-undecided/specimens.csv', ['C-116']],
    ['a specification', 'shared/specifications/trail-casing.yaml', ['C-114', 'C-115', 'C-116']],
    ['a protocol that all runs follow', 'protocols/pinch-up-down.yaml', ['C-114', 'C-115', 'C-116']],
    ['a protocol that none follows', 'protocols/pinch-one-shot.yaml', []],
  ])('judges what hangs on %s, committed or not', async (_name, file, names) => {
    // A blank line and a comment change bytes only: that is enough to look again.
    lab.edit(file, (text) => `${text}${file.endsWith('.csv') ? '\n' : '# looked at\n'}`);
    expect((await judged('--since', 'HEAD')).names).toEqual(names);
    commit();
    expect((await judged('--since', 'HEAD~1')).names).toEqual(names);
    expect((await judged('--since', 'HEAD')).names).toEqual([]);
  });

  it('sees a file that git does not know yet: a waiver, a result', async () => {
    lab.write(
      'waivers/w.yaml',
      'format: tirelab.waiver/1\nid: W\nscope: { specification: trail-casing@1.0.0, criterion: median, construction: C-115@1 }\nowner: o\nrole: quality\nreason: r\nexpires: 2026-12-31\n',
    );
    expect((await judged('--since', 'main')).names).toEqual(['C-115']);
    await lab.store('demo');
    expect((await judged('--since', 'main')).names).toEqual(['C-114', 'C-115']);
  });

  it('judges all where a document is gone: nobody knows whose evidence it was', async () => {
    lab.remove('fixtures/demo');
    expect((await judged('--since', 'HEAD')).names).toEqual(['C-114', 'C-115', 'C-116']);
  });

  it.each([
    ['a commit that is not there', ['--since', 'nowhere'], /no commit "nowhere"/],
    ['an option of git', ['--since=--output=x'], /no commit "--output=x"/],
    ['a base that is not there', ['--base', 'nowhere'], /no commit "nowhere"/],
  ])('refuses %s', async (_name, args, message) => {
    const { status, err } = await tirelab(['gate', lab.folder, ...args]);
    expect(status).toBe(2);
    expect(err).toMatch(message);
  });

  it('refuses a folder that is in no repository', async () => {
    lab.remove('.git');
    const { status, err } = await tirelab(['gate', lab.folder, '--since', 'HEAD']);
    expect(status).toBe(2);
    expect(err).toMatch(/in no git repository/);
  });
});

describe('gate --base', () => {
  beforeEach(() => {
    lab.edit('shared/constructions/C-114.yaml', (text) =>
      text.replace('category:', 'status: released\ncategory:'),
    );
    commit();
  });

  async function base() {
    const { status, err } = await tirelab(['gate', lab.folder, '--base', 'HEAD']);
    return { status, err };
  }

  it('lets a released revision stand, be explained and be withdrawn', async () => {
    lab.edit(
      'shared/constructions/C-114.yaml',
      (text) => `${text.replace('status: released', 'status: withdrawn')}# why\n`,
    );
    const { status, result } = await lab.gate('--base', 'HEAD');
    expect(status).toBe(1);
    expect(result.withdrawn).toMatchObject([{ id: 'C-114', revision: '2' }]);
  });

  it.each([
    [
      'a factor',
      'tpi: 60',
      'tpi: 66',
      /C-114\.yaml:12:28: found casing\.tpi "66" in "C-114@2", which was released at "HEAD" with casing\.tpi "60"/,
    ],
    ['its size', '"62-622"', '"60-622"', /C-114\.yaml:9:7: found size "60-622"/],
    ['its status', 'status: released', 'status: draft', /C-114\.yaml:7:9: found status "draft"/],
    ['its revision, with nothing left of it', 'revision: "2"', 'revision: "3"', /found nothing of "C-114@2"/],
  ])('refuses a change of %s, at its place', async (_name, from, to, message) => {
    lab.edit('shared/constructions/C-114.yaml', (text) => text.replace(from, to));
    const { status, err } = await base();
    expect(status).toBe(2);
    expect(err).toMatch(message);
  });

  it('finds a released revision that moved into another file, and misses one that is gone', async () => {
    git('mv', 'shared/constructions/C-114.yaml', 'shared/constructions/moved.yaml');
    lab.edit('fixtures/demo/run.yaml', (text) => text.replace('C-114.yaml', 'moved.yaml'));
    expect((await base()).status).not.toBe(2);
    lab.remove('shared/constructions/moved.yaml');
    lab.remove('fixtures/demo');
    const { status, err } = await base();
    expect(status).toBe(2);
    expect(err).toContain(join(lab.folder, 'shared/constructions/C-114.yaml'));
  });

  it('lets drafts change, and new revisions come', async () => {
    lab.edit('shared/constructions/C-115.yaml', (text) => text.replace('plies: 2', 'plies: 3'));
    lab.write(
      'shared/constructions/C-114-3.yaml',
      'format: tirelab.construction/1\nid: C-114\nrevision: "3"\nstatus: draft\n',
    );
    expect((await base()).status).not.toBe(2);
  });
});
