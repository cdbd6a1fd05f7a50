import { describe, expect, it } from 'vitest';
import { marked, problemsOf, read } from './marked.ts';

const HEAD = 'format: tirelab.protocol/1\nid: d\nversion: 1.0.0\nkind: endurance\n';
const MAIN = '{ block: main, distance: 4900 km, speed: 30 km/h ± 2 %, load: 650 N }';

describe('an endurance protocol', () => {
  it('is read with its units', () => {
    const text = `${HEAD}schedule:
  - { block: run-in, duration: 4 h, speed: 25 km/h ± 2 %, load: 0.6 kN ± 2 %, pressure: 2.5 bar ± 0.1 bar }
  - { block: main, distance: 4900 km, speed: 30 km/h, load: 650 N, temperature: 25 °C ± 5 K }
sampling: 1 Hz
`;
    expect(read('protocol', text)).toMatchObject({
      kind: 'endurance',
      schedule: [
        { block: 'run-in', distance: null, duration: 14400, load: { value: 600 }, temperature: null },
        { block: 'main', distance: 4900, duration: null, speed: { value: 30, tolerance: null } },
      ],
      sampling: 1,
      distribution: 'weibull',
      confidence: 0.95,
      defaults: ['distribution: Weibull life', 'confidence: 95 %, two-sided intervals and one-sided bounds'],
    });
  });
});

describe('what is wrong with an endurance protocol', () => {
  it.each<[string, string, string[]]>([
    ['no schedule', `▶${HEAD}`, ['missing-key']],
    ['an empty schedule', `${HEAD}schedule: ▶[]\n`, ['too-few']],
    ['a block that is a text', `${HEAD}schedule: [▶main]\n`, ['not-a-map']],
    [
      'a block that never ends',
      `${HEAD}schedule: [▶{ block: a, speed: 30 km/h, load: 650 N }]\n`,
      ['one-of'],
    ],
    [
      'a block that ends twice',
      `${HEAD}schedule: [▶{ block: a, distance: 1 km, duration: 1 h, speed: 30 km/h, load: 650 N }]\n`,
      ['one-of'],
    ],
    [
      'a block without a load',
      `${HEAD}schedule: [▶{ block: a, distance: 1 km, speed: 30 km/h }]\n`,
      ['missing-key'],
    ],
    [
      'an unknown key in a block',
      `${HEAD}schedule:\n  - ${MAIN.replace('load', '▶laod')}\n`.replace('{', '▶{'),
      ['missing-key', 'unknown-key'],
    ],
    [
      'two blocks of one name',
      `${HEAD}schedule:\n  - ${MAIN}\n  - ${MAIN.replace('main', '▶main')}\n`,
      ['duplicate-id'],
    ],
    [
      'a speed of another dimension',
      `${HEAD}schedule:\n  - ${MAIN.replace('30 km/h ± 2 %', '▶30 km')}\n`,
      ['bad-quantity'],
    ],
    ['a key of drop tests', `${HEAD}schedule: [${MAIN}]\n▶start: 500 mm\n`, ['unknown-key']],
  ])('%s', (_, text, codes) => {
    const { text: clean, expected } = marked(text, ...codes);
    expect(problemsOf('protocol', clean)).toEqual(expected);
  });
});
