import { describe, expect, it } from 'vitest';
import { marked, problemsOf, read } from './marked.ts';

const HEAD = 'format: tirelab.construction/1\nid: C-114\nrevision: 2\n';

describe('a construction', () => {
  it('has every factor by its dotted path, as written', () => {
    const text = `${HEAD}category: trail
size: 62-622
parent: C-110@1
declared: [casing.tpi]
factors: { casing: { plies: 2, tpi: 060 }, bead: aramid, layers: [a, { cord: b }] }
`;
    const { factors, ...rest } = read('construction', text);
    expect({ ...factors }).toEqual({
      'casing.plies': '2',
      'casing.tpi': '060',
      bead: 'aramid',
      'layers.0': 'a',
      'layers.1.cord': 'b',
    });
    expect(rest).toMatchObject({
      revision: '2',
      parent: 'C-110@1',
      declared: ['casing.tpi'],
      size: '62-622',
    });
  });
});

describe('what is wrong with a construction', () => {
  it.each<[string, string, string[]]>([
    ['no revision', '▶format: tirelab.construction/1\nid: C-1\n', ['missing-key']],
    ['a parent without its revision', `${HEAD}parent: ▶C-110\n`, ['bad-parent']],
    ['a parent that is itself', `${HEAD}parent: ▶C-114@2\n`, ['bad-parent']],
    ['factors that are a text', `${HEAD}factors: ▶none\n`, ['wrong-shape']],
    ['declared that is a text', `${HEAD}declared: ▶casing\n`, ['wrong-shape']],
    ['a dotted key that doubles a factor', `${HEAD}factors: { a: { b: 1 }, ▶a.b: 2 }\n`, ['duplicate-key']],
  ])('%s', (_, text, codes) => {
    const { text: clean, expected } = marked(text, ...codes);
    expect(problemsOf('construction', clean)).toEqual(expected);
  });
});
