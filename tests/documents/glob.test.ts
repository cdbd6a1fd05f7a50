import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { filesOf, isPattern } from '../../src/documents/glob.ts';

const folder = mkdtempSync(join(tmpdir(), 'glob-'));
for (const name of [
  'a/run.yaml',
  'b/run.yaml',
  'b/c/run.yaml',
  'b/c/x1.csv',
  'b/c/x2.csv',
  '.hidden/run.yaml',
  'odd[1].csv',
]) {
  mkdirSync(join(folder, name, '..'), { recursive: true });
  writeFileSync(join(folder, name), '');
}
afterAll(() => rmSync(folder, { recursive: true }));
const found = (...patterns: string[]) =>
  filesOf(patterns.map((pattern) => join(folder, pattern))).map((path) => path.slice(folder.length + 1));

describe('filesOf', () => {
  it('unfolds names, one folder or any depth, in the order of the paths, without what is hidden', () => {
    expect(found('*/run.yaml')).toEqual(['a/run.yaml', 'b/run.yaml']);
    expect(found('**/run.yaml')).toEqual(['a/run.yaml', 'b/c/run.yaml', 'b/run.yaml']);
    expect(found('b/c/x?.csv')).toEqual(['b/c/x1.csv', 'b/c/x2.csv']);
    expect(found('b/c/x[!1].csv')).toEqual(['b/c/x2.csv']);
    expect(found('.h*/run.yaml')).toEqual(['.hidden/run.yaml']);
  });
  it('takes a file that has such signs in its name as it is', () => {
    expect(isPattern(join(folder, 'odd[1].csv'))).toBe(false);
    expect(found('odd[1].csv')).toEqual(['odd[1].csv']);
  });
  it('keeps the order of the words and names each file once', () => {
    expect(found('b/run.yaml', '*/run.yaml')).toEqual(['b/run.yaml', 'a/run.yaml']);
  });
  it('says which pattern no file fits', () => {
    expect(() => found('none/*.yaml', 'b/*.nothing')).toThrow(/none\/\*\.yaml.*\n.*b\/\*\.nothing/u);
  });
});
