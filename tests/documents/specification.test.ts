import { describe, expect, it } from 'vitest';
import { marked, messagesOf, problemsOf, read } from './marked.ts';

const HEAD = 'format: tirelab.specification/1\nid: s\nversion: 1.0.0\n';
const MEDIAN = '{ id: median, protocol: p@1.0.0, quantity: medianFailureEnergy, atLeast: 45 J }';
const withCriterion = (criterion: string, head = HEAD): string => `${head}criteria:\n  - ${criterion}\n`;

describe('a specification', () => {
  it('is read with its units, its own decision before that of the whole', () => {
    const text = `${HEAD}appliesTo: { category: trail }
decision: { rule: guard-band, confidence: 90 %, guard: 500 mJ }
criteria:
  - { id: median, protocol: pinch-up-down@1.10, quantity: medianFailureEnergy, atLeast: 0.045 kJ, minSpecimens: 10 }
  - { id: tail, protocol: p@q@2, quantity: failureEnergyQuantile, probability: 10 %, atLeast: 34 J, rule: lower-bound, confidence: 95 % }
  - { id: life, protocol: d, quantity: reliability, at: 5000 km, atLeast: 60 %, rule: simple-acceptance }
  - { id: mass, quantity: mass, within: 0.9 kg ± 5 %, each: true, rule: lower-bound }
  - { id: wear, protocol: d@1, quantity: wearRate, atMost: 0.2 mm/1000 km, rule: lower-bound }
  - { id: shape, protocol: d@1, quantity: weibullShape, atLeast: 1.5, rule: lower-bound }
`.replace('500 mJ', '0.5 J');
    const { criteria, defaults, appliesTo } = read('specification', text);
    expect(appliesTo).toEqual({ category: 'trail' });
    expect(criteria).toEqual([
      {
        id: 'median',
        protocol: { id: 'pinch-up-down', version: '1.10' },
        quantity: 'medianFailureEnergy',
        probability: null,
        at: null,
        limit: { atLeast: 45, unit: 'J' },
        rule: 'guard-band',
        confidence: 0.9,
        guard: 0.5,
        minSpecimens: 10,
        each: false,
        external: null,
        method: 'censored-likelihood',
        safety: false,
      },
      expect.objectContaining({
        protocol: { id: 'p@q', version: '2' },
        probability: 0.1,
        rule: 'lower-bound',
        confidence: 0.95,
        guard: null,
      }),
      expect.objectContaining({
        protocol: { id: 'd', version: null },
        at: 5000,
        limit: { atLeast: 0.6, unit: '1' },
      }),
      expect.objectContaining({
        protocol: null,
        limit: { within: { lower: 855, upper: 945 }, unit: 'g' },
        each: true,
      }),
      expect.objectContaining({ limit: { atMost: 0.2, unit: 'mm/1000km' } }),
      expect.objectContaining({ limit: { atLeast: 1.5, unit: '1' } }),
    ]);
    expect(defaults).toEqual(['criterion "life": any version of protocol "d"']);
  });

  it('says what it leaves out', () => {
    const { criteria, defaults } = read('specification', withCriterion(MEDIAN));
    expect(criteria[0]).toMatchObject({ rule: 'lower-bound', confidence: 0.95, minSpecimens: null });
    expect(defaults).toEqual([
      'decision: lower-bound, by one-sided bounds',
      'confidence: 95 %, one-sided bounds',
    ]);
  });

  it('leaves what an outside house shows to that house', () => {
    const text = withCriterion(
      '{ id: burst, title: holds 110 % of the marked pressure, external: accredited }',
    );
    expect(read('specification', text).criteria[0]).toMatchObject({ external: 'accredited', quantity: '' });
  });
});

describe('what is wrong with a specification', () => {
  const replaced = (from: string, to: string): string => withCriterion(MEDIAN.replace(from, to));
  it.each<[string, string, string[]]>([
    ['no criteria', `▶${HEAD}`, ['missing-key']],
    ['criteria that are a map', `${HEAD}criteria: ▶{ id: a }\n`, ['wrong-shape']],
    ['an unknown key', replaced('atLeast', '▶atLeats').replace('{', '▶{'), ['one-of', 'unknown-key']],
    [
      'two criteria of one id',
      `${withCriterion(MEDIAN)}  - ${MEDIAN.replace('median', '▶median')}\n`,
      ['duplicate-id'],
    ],
    ['no limit', withCriterion('▶{ id: a, protocol: p@1, quantity: medianFailureEnergy }'), ['one-of']],
    ['two limits', replaced(' }', ', ▶atMost: 50 J }'), ['one-of']],
    ['no quantity', withCriterion('▶{ id: a, protocol: p@1, atLeast: 45 J }'), ['missing-key']],
    ['an unknown quantity', replaced('medianFailureEnergy', '▶medianFailureEnregy'), ['unknown-quantity']],
    ['a limit without a unit', replaced('45 J', '▶45'), ['bad-quantity']],
    ['a limit of another dimension', replaced('45 J', '▶45 mm'), ['bad-quantity']],
    [
      'a share beyond the whole',
      withCriterion('{ id: a, protocol: d@1, quantity: reliability, at: 1 km, atLeast: ▶150 % }'),
      ['bad-quantity'],
    ],
    [
      'a share without per cent',
      withCriterion('{ id: a, protocol: d@1, quantity: reliability, at: 1 km, atLeast: ▶0.6 }'),
      ['bad-quantity'],
    ],
    ['a tolerance in atLeast', replaced('45 J', '▶45 J ± 1 J'), ['bad-quantity']],
    [
      'within without a tolerance',
      withCriterion('{ id: m, quantity: mass, within: ▶900 g }'),
      ['bad-quantity'],
    ],
    [
      'a quantile without its probability',
      replaced('medianFailureEnergy', '▶failureEnergyQuantile'),
      ['missing-key'],
    ],
    [
      'a probability of a median',
      replaced('atLeast', '▶probability: 10 %, atLeast'),
      ['key-not-of-quantity'],
    ],
    [
      'a probability of nought',
      withCriterion(
        '{ id: a, protocol: p@1, quantity: failureEnergyQuantile, probability: ▶0 %, atLeast: 1 J }',
      ),
      ['bad-quantity'],
    ],
    [
      'a reliability without its distance',
      withCriterion('{ id: a, protocol: d@1, quantity: ▶reliability, atLeast: 60 % }'),
      ['missing-key'],
    ],
    ['no protocol', replaced('protocol: p@1.0.0, ', '').replace('medianF', '▶medianF'), ['missing-key']],
    [
      'a protocol of a mass',
      withCriterion('{ id: m, ▶protocol: p@1, quantity: mass, atMost: 900 g }'),
      ['key-not-of-quantity'],
    ],
    ['a pin without a version behind the @', replaced('p@1.0.0', '▶p@'), ['bad-value']],
    ['each of an estimate', replaced(' }', ', each: ▶true }'), ['key-not-of-quantity']],
    [
      'a mass of the mean',
      withCriterion('{ id: m, quantity: mass, atMost: 900 g, each: ▶false }'),
      ['key-not-of-quantity'],
    ],
    ['an unknown rule', replaced(' }', ', rule: ▶lower-bond }'), ['unknown-word']],
    ['a guard for another rule', replaced(' }', ', ▶guard: 1 J }'), ['key-not-of-rule']],
    ['a guard of another dimension', replaced(' }', ', rule: guard-band, guard: ▶1 mm }'), ['bad-quantity']],
    ['a negative guard', replaced(' }', ', rule: guard-band, guard: ▶-1 J }'), ['bad-quantity']],
    [
      'a measured value without its guard',
      withCriterion('▶{ id: m, quantity: mass, atMost: 900 g, rule: guard-band }'),
      ['missing-key'],
    ],
    [
      'a general guard that nothing uses',
      withCriterion(MEDIAN, `${HEAD}decision: { ▶guard: 1 J }\n`),
      ['key-not-of-rule'],
    ],
    ['a confidence of one half', replaced(' }', ', confidence: ▶50 % }'), ['bad-quantity']],
    ['no specimens', replaced(' }', ', minSpecimens: ▶0 }'), ['bad-count']],
    [
      'a flag that is none',
      withCriterion('{ id: m, quantity: mass, atMost: 900 g, each: ▶yes }'),
      ['bad-flag'],
    ],
  ])('%s', (_, text, codes) => {
    const { text: clean, expected } = marked(text, ...codes);
    expect(problemsOf('specification', clean)).toEqual(expected);
  });

  it('suggests the quantity that was meant', () => {
    const text = replaced('medianFailureEnergy', 'medianFailureEnregy');
    expect(messagesOf('specification', text)[0]!.message).toContain('did you mean "medianFailureEnergy"?');
  });
});
