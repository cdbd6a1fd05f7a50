import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadProtocol } from '../../src/documents/load.ts';
import { InputError } from '../../src/problem/problem.ts';

const FOLDER = 'fixtures/hostile/documents';

/** The table of the folder's README: what must come of each file. */
const cases = readFileSync(`${FOLDER}/README.md`, 'utf8')
  .split('\n')
  .map((line) => line.split('|').map((cell) => cell.trim()))
  .filter((cells) => cells[1]?.endsWith('.yaml'))
  .map((cells) => [cells[1]!, cells[2] === '' ? [] : cells[2]!.split(', ')] as const);

describe('hostile documents', () => {
  it('are all in the table', () => {
    const files = readdirSync(FOLDER).filter((file) => file.endsWith('.yaml'));
    expect(cases.map(([file]) => file).sort()).toEqual(files.sort());
    expect(files.length).toBeGreaterThan(15);
  });

  it.each(cases)('%s', (file, expected) => {
    const path = `${FOLDER}/${file}`;
    let problems: readonly { line: number | null; column: number | null; code: string; message: string }[] =
      [];
    try {
      loadProtocol({ path });
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      problems = error.problems;
    }
    expect(problems.map(({ line, column, code }) => `${line}:${column} ${code}`)).toEqual(expected);
    for (const { message } of problems) expect(message).not.toMatch(/[\x00-\x1f\u202e]/);
  });
});
