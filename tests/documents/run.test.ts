import { describe, expect, it } from 'vitest';
import { marked, problemsOf, read } from './marked.ts';

const RUN = 'format: tirelab.run/1\nid: run-117\nprotocol: ../p.yaml\nlogs: [a.csv, b.csv]\n';

describe('a run', () => {
  it('has its paths as written', () => {
    const text = `${RUN}rig: ../r.yaml\nconstructions: [c.yaml]\nspecification: s.yaml\nspecimens: t.csv\n`;
    expect(read('run', text)).toMatchObject({
      id: 'run-117',
      protocol: '../p.yaml',
      rig: '../r.yaml',
      constructions: ['c.yaml'],
      specification: 's.yaml',
      specimens: 't.csv',
      logs: ['a.csv', 'b.csv'],
      amendments: null,
    });
    const several = RUN.replace('b.csv', '{ file: b.csv, rig: r2.yaml }');
    expect(read('run', several).logs).toEqual(['a.csv', { file: 'b.csv', rig: 'r2.yaml' }]);
    expect(read('run', RUN)).toMatchObject({ constructions: [], rig: null });
  });
});

describe('what is wrong with a run', () => {
  it.each<[string, string, string[]]>([
    ['no logs', `▶${RUN.replace(/logs.*\n/, '')}`, ['missing-key']],
    ['an empty list of logs', RUN.replace('[a.csv, b.csv]', '▶[]'), ['too-few']],
    ['one log that is no list', RUN.replace('[a.csv, b.csv]', '▶a.csv'), ['wrong-shape']],
    ['a log twice', RUN.replace('b.csv', '▶a.csv'), ['duplicate-path']],
    [
      'a log twice, once with its rig',
      RUN.replace('b.csv', '▶{ file: a.csv, rig: r.yaml }'),
      ['duplicate-path'],
    ],
    ['a log with a rig and no file', RUN.replace('b.csv', '▶{ rig: r.yaml }'), ['missing-key']],
    ['standard input', RUN.replace('b.csv', '▶"-"'), ['bad-path']],
    ['a path with a NUL', RUN.replace('../p.yaml', '▶"p\\0.yaml"'), ['bad-text']],
    ['an unknown key', `${RUN}▶spec: s.yaml\n`, ['unknown-key']],
  ])('%s', (_, text, codes) => {
    const { text: clean, expected } = marked(text, ...codes);
    expect(problemsOf('run', clean)).toEqual(expected);
  });
});
