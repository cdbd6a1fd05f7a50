import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { follow } from '../../src/documents/follow.ts';
import type { Source } from '../../src/documents/kinds.ts';

let top: string;
beforeEach(() => {
  top = mkdtempSync(join(tmpdir(), 'follow-'));
  for (const folder of ['lab/runs/sub', 'lab/shared', 'outside'])
    mkdirSync(join(top, folder), { recursive: true });
  for (const file of [
    'lab/runs/log.csv',
    'lab/runs/sub/log.csv',
    'lab/shared/rig.yaml',
    'outside/secret.yaml',
  ]) {
    writeFileSync(join(top, file), 'x');
  }
});
afterEach(() => rmSync(top, { recursive: true }));

function source(path = join(top, 'lab/runs/run.yaml')): Source {
  return { path, sha256: '', bytes: 0, locate: () => ({ line: 3, column: 7 }) };
}

function outcome(written: string, from = source()): string {
  const followed = follow(from, written, ['rig']);
  if (followed.ok) return followed.value.path.replace(realpathSync(top), '');
  const { file, line, column, code } = followed.problem;
  return `${file.replace(top, '')}:${line}:${column} ${code}`;
}

describe('a path in a document', () => {
  it('is relative to the document, and .. may lead anywhere', () => {
    expect(outcome('log.csv')).toBe('/lab/runs/log.csv');
    expect(outcome('../shared/rig.yaml')).toBe('/lab/shared/rig.yaml');
    expect(outcome('../../outside/secret.yaml')).toBe('/outside/secret.yaml');
    expect(outcome(join(top, 'outside/secret.yaml'))).toBe('/outside/secret.yaml');
  });

  it('is named as the document has it, from where the document is named', () => {
    const followed = follow(source(), '../shared/rig.yaml', ['rig']);
    expect(followed).toHaveProperty('value.named', join(top, 'lab/shared/rig.yaml'));
  });

  it('that is not there is told at its place', () => {
    expect(outcome('none.csv')).toBe('/lab/runs/run.yaml:3:7 missing-file');
    expect(outcome('log.csv/none')).toBe('/lab/runs/run.yaml:3:7 missing-file');
  });
});

describe('a symbolic link in a path', () => {
  const link = (target: string, path: string): void => symlinkSync(join(top, target), join(top, path));

  it('may stay in the folder tree, and not lead out of it', () => {
    link('lab/runs/sub', 'lab/runs/inner');
    link('outside', 'lab/runs/outer');
    link('outside/secret.yaml', 'lab/runs/file.yaml');
    link('lab/shared/rig.yaml', 'lab/runs/rig.yaml');
    expect(outcome('inner/log.csv')).toBe('/lab/runs/sub/log.csv');
    expect(outcome('outer/secret.yaml')).toBe('/lab/runs/run.yaml:3:7 link-leads-out');
    expect(outcome('file.yaml')).toBe('/lab/runs/run.yaml:3:7 link-leads-out');
    // Without a repository the tree is that of the run's own folder.
    expect(outcome('rig.yaml')).toBe('/lab/runs/run.yaml:3:7 link-leads-out');
  });

  it('may go anywhere in the repository, and not out of it', () => {
    mkdirSync(join(top, 'lab/.git'));
    link('lab/shared/rig.yaml', 'lab/runs/rig.yaml');
    link('outside/secret.yaml', 'lab/shared/secret.yaml');
    expect(outcome('rig.yaml')).toBe('/lab/shared/rig.yaml');
    expect(outcome('../shared/secret.yaml')).toBe('/lab/runs/run.yaml:3:7 link-leads-out');
  });

  it('knows the repository of a worktree, where .git is a file', () => {
    writeFileSync(join(top, 'lab/.git'), 'gitdir: elsewhere');
    link('lab/shared/rig.yaml', 'lab/runs/rig.yaml');
    expect(outcome('rig.yaml')).toBe('/lab/shared/rig.yaml');
  });

  it('reached by .. does not lead out of the tree in which both stand', () => {
    link('outside', 'lab/away');
    expect(outcome('../away/secret.yaml')).toBe('/lab/runs/run.yaml:3:7 link-leads-out');
  });

  it('above that tree does not matter', () => {
    link('lab', 'linked');
    expect(outcome('log.csv', source(join(top, 'linked/runs/run.yaml')))).toBe('/lab/runs/log.csv');
    expect(outcome('../shared/rig.yaml', source(join(top, 'linked/runs/run.yaml')))).toBe(
      '/lab/shared/rig.yaml',
    );
  });

  it('that leads in a circle or nowhere is told', () => {
    link('lab/runs/b', 'lab/runs/a');
    link('lab/runs/a', 'lab/runs/b');
    link('lab/none', 'lab/runs/nowhere');
    expect(outcome('a')).toBe('/lab/runs/run.yaml:3:7 unreadable-file');
    expect(outcome('nowhere')).toBe('/lab/runs/run.yaml:3:7 missing-file');
  });
});
