import { describe, expect, test } from 'vitest';
import { laws } from '../../../src/statistics/laws/laws.ts';
import type { Covariate } from '../../../src/statistics/regression/design.ts';
import { fitRegression, type RegressionModel } from '../../../src/statistics/regression/fit.ts';
import { explainRefusal, type RegressionRefusal } from '../../../src/statistics/regression/refusal.ts';

/** Outcomes such as `300:o 350:x`, o a survival and x a failure. */
function drops(text: string) {
  return text.split(' ').map((entry) => {
    const [level, outcome] = entry.split(':') as [string, string];
    return outcome === 'x'
      ? { lower: -Infinity, upper: Number(level), count: 1 }
      : { lower: Number(level), upper: Infinity, count: 1 };
  });
}

const overlapping = drops('300:o 325:x 350:o 375:x 300:x 325:o 350:x 375:x');
const factor = (name: string, text: string): Covariate => ({ name, kind: 'factor', values: [...text] });
const number = (name: string, values: number[]): Covariate => ({ name, kind: 'number', values });

function refuse(model: RegressionModel): RegressionRefusal {
  const result = fitRegression(model, laws.normal);
  expect(result.kind).not.toBe('exists');
  return result as RegressionRefusal;
}

describe('covariates that tell nothing are named', () => {
  test('constant factor, constant number', () => {
    for (const covariate of [factor('rim', 'rrrrrrrr'), number('pressure', new Array(8).fill(2))])
      expect(
        refuse({ observations: overlapping, covariates: [covariate], terms: [[covariate.name]] }),
      ).toEqual({
        kind: 'constant',
        covariate: covariate.name,
      });
  });
  test('a factor that goes together with another', () => {
    const refusal = refuse({
      observations: overlapping,
      covariates: [factor('construction', 'AABBAABB'), factor('session', '11221122')],
      terms: [['construction'], ['session']],
    });
    expect(refusal).toEqual({ kind: 'aliased', column: 'session 2', with: ['construction B'] });
    expect(explainRefusal(refusal)).toBe(
      'session 2 goes together with construction B, so their effects cannot be told apart; leave one out or test them apart',
    );
  });
  test('a number that is a combination of two others, to rounding', () => {
    const a = [1, 2, 3, 4, 5, 6, 7, 8.5];
    const b = [2, 1, 4, 3, 6, 5, 8, 7];
    const refusal = refuse({
      observations: overlapping,
      covariates: [
        number('a', a),
        number('b', b),
        number(
          'c',
          a.map((v, i) => 0.1 * v + 0.2 * b[i]! + 3),
        ),
      ],
      terms: [['a'], ['b'], ['c']],
    });
    expect(refusal).toEqual({ kind: 'aliased', column: 'c', with: ['a', 'b'] });
  });
  test('each construction tested at one level of its own', () => {
    const refusal = refuse({
      observations: drops('300:o 300:x 300:o 350:x 350:o 350:x'),
      covariates: [factor('construction', 'AAABBB')],
      terms: [['construction']],
    });
    expect(refusal).toEqual({ kind: 'level-aliased', with: ['construction B'] });
  });
});

describe('existence is read from the data (by hand, each set drawn on paper)', () => {
  test('one construction never failed: its effect has no finite value', () => {
    const refusal = refuse({
      observations: drops('300:o 325:x 350:o 375:x 300:o 325:o 350:o 375:o'),
      covariates: [factor('construction', 'AAAABBBB')],
      terms: [['construction']],
    });
    expect(refusal).toEqual({ kind: 'separated', columns: ['construction B'], spread: false });
  });
  test('within each construction failures lie above survivals: the spread runs to 0', () => {
    // Together they overlap: A changes between 300 and 325, B between 350 and 375.
    const observations = drops('300:o 325:x 350:x 325:o 350:o 375:x');
    const covariates = [factor('construction', 'AAABBB')];
    expect(fitRegression({ observations, covariates, terms: [] }, laws.normal).kind).toBe('exists');
    expect(refuse({ observations, covariates, terms: [['construction']] })).toEqual({
      kind: 'separated',
      columns: ['construction B'],
      spread: true,
    });
  });
  test('failures no higher than survivals, construction by construction', () => {
    const observations = drops('300:x 325:o 350:x 325:o 400:x 425:o 450:x 425:o');
    const covariates = [factor('construction', 'AAAABBBB')];
    const refusal = refuse({ observations, covariates, terms: [['construction']] });
    expect(refusal.kind).toBe('wrong-direction');
  });
  test('exact values that the covariates reproduce', () => {
    const exact = [300, 340].map((v) => ({ lower: v, upper: v, count: 1 }));
    const refusal = refuse({ observations: exact, covariates: [factor('k', 'AB')], terms: [['k']] });
    expect(refusal).toMatchObject({ kind: 'separated', spread: true });
  });
  test('a group with a spread of its own is judged by itself', () => {
    const observations = [...drops('300:o 325:x 350:o 375:x'), ...drops('300:o 325:o 350:x 375:x')];
    const covariates = [factor('construction', 'AAAABBBB')];
    expect(fitRegression({ observations, covariates, terms: [['construction']] }, laws.normal).kind).toBe(
      'exists',
    );
    const refusal = refuse({ observations, covariates, terms: [['construction']], scaleBy: 'construction' });
    expect(refusal).toMatchObject({
      kind: 'group',
      group: 'B',
      refusal: { kind: 'separated', spread: true },
    });
    expect(explainRefusal(refusal)).toMatch(/^B: .*overlap at no more than one level/);
  });
  test('nothing', () => {
    expect(refuse({ observations: [], covariates: [], terms: [] }).kind).toBe('empty');
  });
});

test('a model that is none is a mistake of the caller', () => {
  const covariates = [factor('construction', 'AAAABBBB'), number('pressure', [1, 2, 1, 2, 1, 2, 1, 2])];
  const attempt = (terms: string[][], scaleBy?: string) => () =>
    fitRegression(
      { observations: overlapping, covariates, terms, ...(scaleBy ? { scaleBy } : {}) },
      laws.normal,
    );
  expect(attempt([['mass']])).toThrow('no covariate mass');
  expect(attempt([['construction', 'pressure']])).toThrow('needs the term construction before it');
  expect(attempt([['pressure']], 'pressure')).toThrow('scales go by a factor');
});
