import { describe, expect, it } from 'vitest';
import { parseYaml } from '../../src/documents/yaml.ts';
import { InputError } from '../../src/problem/problem.ts';

function problems(text: string): string[] {
  try {
    parseYaml(text, 'a.yaml');
    return [];
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return error.problems.map(({ line, column, code }) => `${line}:${column} ${code}`);
  }
}

describe('a document', () => {
  it('keeps every scalar as the text that was written', () => {
    const text = 'a: 1.10\nb: 0412\nc: 12e4\nd: no\ne: 12:30\nf: ~\ng:\nh: "1,5"\ni: 0x10\n';
    expect({ ...(parseYaml(text, 'a.yaml').value as object) }).toEqual({
      a: '1.10',
      b: '0412',
      c: '12e4',
      d: 'no',
      e: '12:30',
      f: '~',
      g: '',
      h: '1,5',
      i: '0x10',
    });
  });

  it('knows the line and column of keys and values, one-based', () => {
    const { locate } = parseYaml('a: 1\nb:\n  - x\n  - { c: y }\ne:\n', 'a.yaml');
    expect(locate(['a'])).toEqual({ line: 1, column: 4 });
    expect(locate(['a'], 'key')).toEqual({ line: 1, column: 1 });
    expect(locate(['b', 1, 'c'])).toEqual({ line: 4, column: 10 });
    expect(locate(['b', 1, 'c'], 'key')).toEqual({ line: 4, column: 7 });
    // An empty value stands where it should be written.
    expect(locate(['e'])).toEqual({ line: 5, column: 3 });
    // What is not there is looked for above.
    expect(locate(['b', 7])).toEqual({ line: 3, column: 3 });
    expect(locate([])).toEqual({ line: 1, column: 1 });
  });

  it('reads carriage returns and aliases', () => {
    const { value, locate } = parseYaml('a: &x 1\r\nb: *x\r\n', 'a.yaml');
    expect({ ...(value as object) }).toEqual({ a: '1', b: '1' });
    expect(locate(['b'])).toEqual({ line: 2, column: 4 });
  });

  it('takes __proto__ and constructor for keys like others', () => {
    const { value } = parseYaml('__proto__: { polluted: yes }\nconstructor: x\n', 'a.yaml');
    expect(Object.keys(value)).toEqual(['__proto__', 'constructor']);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});

describe('what is wrong with a document', () => {
  it.each([
    ['nothing', '', ['1:1 empty-file']],
    ['a comment alone', '# x\n', ['1:1 empty-file']],
    ['a key twice', 'a: 1\nb: 2\na: 3\n', ['3:1 duplicate-key']],
    ['two keys twice', 'a: 1\na: 2\nb: { c: 1, c: 2 }\n', ['2:1 duplicate-key', '3:12 duplicate-key']],
    ['two documents', 'a: 1\n---\nb: 2\n', ['2:1 several-documents']],
    ['a tab as indentation', 'a:\n\tb: 1\n', ['2:1 yaml-syntax']],
    ['syntax errors on two lines', 'a: b: c\nd: e: f\n', ['1:4 yaml-syntax', '2:4 yaml-syntax']],
    ['a tag', 'a: !!int 5\nb: !own x\n', ['1:4 yaml-tag', '2:4 yaml-tag']],
    ['a key that is a list', '? [a]\n: b\n', ['1:3 complex-key']],
    ['an alias without anchor', 'a: *x\n', ['1:4 bad-alias']],
    ['an alias inside its anchor', 'a: &x [*x]\n', ['1:8 bad-alias']],
  ])('%s', (_, text, expected) => {
    expect(problems(text)).toEqual(expected);
  });

  // Unfolded, it would outlast any time limit.
  it('an alias bomb is one error', () => {
    const lines = ['a0: &a0 [x, x, x, x, x, x, x, x, x]'];
    for (let i = 1; i < 30; i++)
      lines.push(
        `a${i}: &a${i} [${Array(9)
          .fill(`*a${i - 1}`)
          .join(', ')}]`,
      );
    expect(problems(lines.join('\n'))).toEqual([expect.stringMatching(/^\d+:\d+ alias-bomb$/)]);
  });

  // A recursive parser takes the whole process down with these: the limit must come before it.
  it.each([
    ['[', '['.repeat(20_000)],
    ['{a: ', '{a: '.repeat(10_000)],
    ['- ', `a:\n  ${'- '.repeat(20_000)}`],
    ['? ', '? '.repeat(20_000)],
  ])('nesting by %j is refused', (_, text) => {
    expect(problems(text)).toEqual([expect.stringMatching(/^\d+:\d+ too-deep$/)]);
  });

  it('tells a doubled key among thousands', () => {
    const text = [...Array.from({ length: 5000 }, (_, i) => `k${i}: v`), 'k7: w'].join('\n');
    expect(problems(text)).toEqual(['5001:1 duplicate-key']);
  });
});
