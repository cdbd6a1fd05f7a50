import { createHash } from 'node:crypto';
import { chmodSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadProtocol, loadRig } from '../../src/documents/load.ts';
import { InputError } from '../../src/problem/problem.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'documents-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function put(name: string, content: string | Buffer): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

function problem(load: () => unknown): string {
  try {
    load();
    return 'none';
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return error.problems.map(({ line, column, code }) => `${line}:${column} ${code}`).join(' ');
  }
}

const RIG = 'format: tirelab.rig/1\nid: r\n';

describe('loading a document', () => {
  it('knows its bytes, their hash, and the name by which it is called', () => {
    const path = put('good.yaml', `\ufeff${RIG}`);
    const { source } = loadRig({ path, named: 'rigs/good.yaml' });
    expect(source.path).toBe('rigs/good.yaml');
    expect(source.bytes).toBe(3 + RIG.length);
    expect(source.sha256).toBe(createHash('sha256').update(`\ufeff${RIG}`).digest('hex'));
  });

  it.each([
    ['a file that is not there', () => join(folder, 'none.yaml'), 'null:null missing-file'],
    ['a file below a file', () => join(put('file', 'x'), 'none.yaml'), 'null:null missing-file'],
    ['a directory', () => folder, 'null:null directory'],
    ['a device', () => '/dev/null', 'null:null not-a-file'],
    ['a name too long', () => join(folder, 'x'.repeat(5000)), 'null:null missing-file'],
    ['a file too large', () => put('large.yaml', RIG + '#'.repeat(2 ** 20)), 'null:null too-large'],
    ['an empty file', () => put('empty.yaml', ''), '1:1 empty-file'],
    ['a log', () => put('log.csv', 'specimen,height [mm],outcome\nA,500,failed\n'), '1:1 not-a-document'],
    ['a list', () => put('list.yaml', '- a\n'), '1:1 not-a-document'],
    ['a document without format', () => put('none.yaml', 'id: r\n'), '1:1 missing-key'],
    [
      'a document of another kind',
      () => put('p.yaml', 'format: tirelab.protocol/1\nid: p\n'),
      '1:9 wrong-format',
    ],
    ['a format to come', () => put('f.yaml', '\nformat: tirelab.rig/2\nid: r\n'), '2:9 wrong-format'],
    ['a format that is a map', () => put('m.yaml', 'format: { a: b }\n'), '1:9 wrong-format'],
  ])('refuses %s', (_, path, expected) => {
    expect(problem(() => loadRig({ path: path() }))).toBe(expected);
  });

  it('says which kind was found and which was expected', () => {
    const path = put('r.yaml', RIG);
    expect(() => loadProtocol({ path, named: 'r.yaml' })).toThrow(
      'r.yaml:1:9: found a rig (format: tirelab.rig/1), expected a protocol (format: tirelab.protocol/1)',
    );
  });

  it('refuses links that go in a circle', () => {
    mkdirSync(join(folder, 'circle'), { recursive: true });
    symlinkSync(join(folder, 'circle/b'), join(folder, 'circle/a'));
    symlinkSync(join(folder, 'circle/a'), join(folder, 'circle/b'));
    expect(problem(() => loadRig({ path: join(folder, 'circle/a') }))).toBe('null:null unreadable-file');
  });

  it.skipIf(process.getuid?.() === 0)('refuses a file that may not be read', () => {
    const path = put('locked.yaml', RIG);
    chmodSync(path, 0);
    expect(problem(() => loadRig({ path }))).toBe('null:null unreadable-file');
  });
});
