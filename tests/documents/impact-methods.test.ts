import { describe, expect, it } from 'vitest';
import { marked, messagesOf, problemsOf, read } from './marked.ts';

const HEAD = 'format: tirelab.protocol/1\nid: p\nversion: 1\nkind: impact\n';
const UP_DOWN = `${HEAD}method: up-and-down\nstart: 500 mm\nstep: 25 mm\n`;
const TRANSFORMED = `${HEAD}method: transformed-up-and-down\nstart: 500 mm\nstep: 25 mm\nsurvivalsToRaise: 3\n`;
const LANGLIE = `${HEAD}method: langlie\nlimits: { min: 300 mm, max: 900 mm }\n`;
const D_OPTIMAL = `${HEAD}method: d-optimal\nlimits: { min: 300 mm, max: 900 mm }\nguess: { lowest: 400 mm, highest: 600 mm, spread: 30 mm }\n`;
const MASS = `${HEAD}method: up-and-down\nvary: mass\nheight: 640 mm\nstart: 8 kg\nstep: 300 g\nlimits: { min: 4 kg, max: 14 kg }\n`;
const FIXED = `${HEAD}method: fixed-level\nlevels: [400 mm, 450 mm]\nperLevel: 12\n`;

describe('the keys of each method', () => {
  it('are read in the units of what is varied', () => {
    expect(read('protocol', TRANSFORMED)).toMatchObject({
      method: 'transformed-up-and-down',
      survivalsToRaise: 3,
      vary: 'height',
    });
    expect(read('protocol', LANGLIE)).toMatchObject({
      start: null,
      step: null,
      limits: { min: 300, max: 900 },
    });
    expect(read('protocol', D_OPTIMAL)).toMatchObject({ guess: { lowest: 400, highest: 600, spread: 30 } });
    expect(read('protocol', MASS)).toMatchObject({
      vary: 'mass',
      height: 640,
      start: 8,
      step: { kind: 'additive', size: 0.3 },
      limits: { min: 4, max: 14 },
    });
    expect(read('protocol', `${UP_DOWN}damagePerHit: 1 %\nestimators: [isotonic]\n`)).toMatchObject({
      damagePerHit: 0.01,
      estimators: ['isotonic'],
      regression: null,
    });
    expect(read('protocol', `${UP_DOWN}damagePerHit: estimated\n`)).toMatchObject({
      damagePerHit: 'estimated',
    });
  });
});

describe('what is wrong with them', () => {
  it.each<[string, string, string[]]>([
    ['a transformed rule that raises at once', TRANSFORMED.replace(': 3', ': ▶1'), ['bad-count']],
    [
      'a transformed rule without its number',
      TRANSFORMED.replace('survivalsToRaise: 3\n', '').replace('transformed', '▶transformed'),
      ['missing-key'],
    ],
    ['its number with the plain rule', `${UP_DOWN}▶survivalsToRaise: 2\n`, ['key-not-of-method']],
    [
      'a step that leaves the limits both ways',
      `${UP_DOWN.replace('25 mm', '▶300 mm')}limits: { min: 400 mm, max: 700 mm }\n`,
      ['step-beyond-limits'],
    ],
    [
      'a rise whose first step leaves the limits upwards',
      `${UP_DOWN.replace('up-and-down', 'rising-height').replace('25 mm', '▶300 mm')}limits: { min: 100 mm, max: 700 mm }\n`,
      ['step-beyond-limits'],
    ],
    [
      'a ratio that leaves them both ways',
      `${UP_DOWN.replace('25 mm', '▶80 %')}limits: { min: 400 mm, max: 700 mm }\n`,
      ['step-beyond-limits'],
    ],
    [
      'one-sided limits where both are needed',
      LANGLIE.replace('limits: { min: 300 mm, ', '▶limits: { '),
      ['missing-key'],
    ],
    ['a back-averaging rule with a step', `${LANGLIE}▶step: 25 mm\n`, ['key-not-of-method']],
    [
      'a guess the wrong way round',
      D_OPTIMAL.replace('highest: 600 mm', 'highest: ▶350 mm'),
      ['limits-not-ordered'],
    ],
    [
      'a guess beyond the limits',
      D_OPTIMAL.replace('highest: 600 mm', 'highest: ▶950 mm'),
      ['beyond-limits'],
    ],
    ['a guessed spread of nought', D_OPTIMAL.replace('30 mm', '▶0 mm'), ['bad-quantity']],
    ['a height among masses', MASS.replace('8 kg', '▶500 mm'), ['bad-quantity']],
    [
      'masses without their height',
      MASS.replace('height: 640 mm\n', '').replace('vary: mass', 'vary: ▶mass'),
      ['missing-key'],
    ],
    ['a height where heights are varied', `${UP_DOWN}▶height: 640 mm\n`, ['key-not-of-method']],
    ['a fixed mass where masses are varied', `${MASS}▶mass: 8 kg\n`, ['key-not-of-method']],
    [
      'a rise by masses',
      MASS.replace('up-and-down', 'rising-height').replace('vary: mass', 'vary: ▶mass'),
      ['key-not-of-method'],
    ],
    ['more drops than the levels take', `${FIXED}stop: { drops: ▶30 }\n`, ['stop-out-of-reach']],
    [
      'a rarer outcome that cannot be so frequent',
      `${UP_DOWN}stop: { drops: 20, rarer: ▶25, atMost: 40 }\n`,
      ['stop-out-of-reach'],
    ],
    [
      'specimens that are never finished',
      `${UP_DOWN}sites: { each: same-spot }\nafterFailure: new-site\nstop: { ▶specimens: 5 }\n`,
      ['stop-out-of-reach'],
    ],
    ['an unknown estimator', `${UP_DOWN}estimators: [▶isotnic]\n`, ['unknown-word']],
    ['damage of a half', `${UP_DOWN}damagePerHit: ▶50 %\n`, ['bad-value']],
    ['a covariate twice', `${UP_DOWN}regression: { covariates: [pressure, ▶pressure] }\n`, ['duplicate']],
    [
      'an interaction of one that is none',
      `${UP_DOWN}regression: { covariates: [pressure], interactions: [▶[pressure, mass]] }\n`,
      ['bad-interaction'],
    ],
    [
      'an adjustment to what is not planned',
      `${UP_DOWN}regression: { covariates: [pressure], adjust: [▶pressure] }\n`,
      ['missing-key'],
    ],
  ])('%s', (_name, text, codes) => {
    const { text: clean, expected } = marked(text, ...codes);
    expect(problemsOf('protocol', clean)).toEqual(expected);
  });

  it('is said with what settles it', () => {
    const [step] = messagesOf(
      'protocol',
      `${UP_DOWN.replace('25 mm', '300 mm')}limits: { min: 400 mm, max: 700 mm }\n`,
    );
    expect(step!.message).toBe(
      'found a step that leaves the limits, 400 to 700 mm, upwards and downwards from the start, 500 mm; expected a smaller step or wider limits',
    );
  });
});
