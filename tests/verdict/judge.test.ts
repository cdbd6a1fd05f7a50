// Expected verdicts are worked out by hand from the definitions of the rules: a bound against a limit needs no tool.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Criterion } from '../../src/documents/kinds.ts';
import type { Evidence } from '../../src/verdict/evidence.ts';
import { judge } from '../../src/verdict/judge.ts';
import { atLeast45, evidence } from './criteria.ts';

const atMost45: Criterion = { ...atLeast45, limit: { atMost: 45, unit: 'J' } };
const within: Criterion = { ...atLeast45, limit: { within: { lower: 40, upper: 50 }, unit: 'J' } };
const alone: Partial<Criterion> = { rule: 'simple-acceptance' };
const guard2: Partial<Criterion> = { rule: 'guard-band', guard: 2 };

type Case = [string, Criterion, Partial<Evidence>, 'pass' | 'fail' | 'inconclusive'];

const bounds = (lower: number | null, upper: number | null) => ({ lower, upper });

const CASES: readonly Case[] = [
  ['lower bound above the limit', atLeast45, bounds(45.4, 48.6), 'pass'],
  ['lower bound at the limit', atLeast45, bounds(45, 48), 'pass'],
  ['lower bound a hair below the limit', atLeast45, bounds(44.9999999, 48), 'inconclusive'],
  ['limit between the bounds', atLeast45, bounds(43, 48), 'inconclusive'],
  ['upper bound at the limit', atLeast45, { ...bounds(42, 45), estimate: 43 }, 'inconclusive'],
  ['upper bound a hair below the limit', atLeast45, { ...bounds(42, 44.9999999), estimate: 43 }, 'fail'],
  ['upper bound far below', atLeast45, { ...bounds(38, 41), estimate: 40 }, 'fail'],
  ['no upper bound, lower one above', atLeast45, bounds(46, null), 'pass'],
  ['no lower bound, upper one above', atLeast45, bounds(null, 48), 'inconclusive'],
  ['no lower bound, upper one below', atLeast45, { ...bounds(null, 44), estimate: 43 }, 'fail'],
  ['no bound at all', atLeast45, bounds(null, null), 'inconclusive'],
  ['bounds without an estimate pass', atLeast45, { ...bounds(46, null), estimate: null }, 'pass'],
  ['an infinite bound is none', atLeast45, bounds(-Infinity, Infinity), 'inconclusive'],
  ['a bound that is no number is none', atLeast45, bounds(Number.NaN, Number.NaN), 'inconclusive'],
  ['at most: upper bound below', atMost45, { ...bounds(40, 44), estimate: 42 }, 'pass'],
  ['at most: upper bound at the limit', atMost45, { ...bounds(40, 45), estimate: 42 }, 'pass'],
  ['at most: limit between', atMost45, { ...bounds(44, 46), estimate: 45 }, 'inconclusive'],
  ['at most: lower bound at the limit', atMost45, { ...bounds(45, 48), estimate: 46 }, 'inconclusive'],
  ['at most: lower bound above', atMost45, { ...bounds(45.1, 48), estimate: 46 }, 'fail'],
  ['at most: upper bound missing', atMost45, { ...bounds(40, null), estimate: 42 }, 'inconclusive'],
  ['within: both inside', within, bounds(41, 49), 'pass'],
  ['within: both at the ends', within, bounds(40, 50), 'pass'],
  ['within: over one end', within, bounds(41, 51), 'inconclusive'],
  ['within: over both ends', within, bounds(39, 51), 'inconclusive'],
  ['within: wholly below', within, { ...bounds(35, 39), estimate: 37 }, 'fail'],
  ['within: wholly above', within, { ...bounds(51, 55), estimate: 53 }, 'fail'],
  ['within: one end open', within, bounds(41, null), 'inconclusive'],
  ['estimate alone, above', { ...atLeast45, ...alone }, { estimate: 45.01, ...bounds(30, 60) }, 'pass'],
  ['estimate alone, at the limit', { ...atLeast45, ...alone }, { estimate: 45 }, 'pass'],
  ['estimate alone, below', { ...atLeast45, ...alone }, { estimate: 44.999 }, 'fail'],
  ['estimate alone, at most', { ...atMost45, ...alone }, { estimate: 45.001 }, 'fail'],
  ['estimate alone, none', { ...atLeast45, ...alone }, { estimate: null }, 'inconclusive'],
  ['guard band given, beyond it', { ...atLeast45, ...guard2 }, { estimate: 47 }, 'pass'],
  ['guard band given, inside it', { ...atLeast45, ...guard2 }, { estimate: 46.9 }, 'fail'],
  ['guard band given, at most', { ...atMost45, ...guard2 }, { estimate: 43 }, 'pass'],
  ['guard band given, at most, inside', { ...atMost45, ...guard2 }, { estimate: 43.1 }, 'fail'],
  ['guard band on both sides', { ...within, ...guard2 }, { estimate: 48 }, 'pass'],
  ['guard band on both sides, inside it', { ...within, ...guard2 }, { estimate: 48.1 }, 'fail'],
  ['guard bands that meet', { ...within, rule: 'guard-band', guard: 6 }, { estimate: 45 }, 'inconclusive'],
  [
    'guard band of an uncertainty not stated',
    { ...atLeast45, rule: 'guard-band' },
    { standardError: null },
    'inconclusive',
  ],
  // 8.63 J against 8.0 J with u = 0.134, 0.40; 8.20 J with u = 0.134: reference case SEN-35, z = 1.644853627.
  ['1.645 u away', guarded8(), { estimate: 8.63, standardError: 0.134 }, 'pass'],
  ['1.645 u away from too little', guarded8(), { estimate: 8.2, standardError: 0.134 }, 'fail'],
  ['1.645 u away, u too large', guarded8(), { estimate: 8.63, standardError: 0.4 }, 'fail'],
];

function guarded8(): Criterion {
  return { ...atLeast45, rule: 'guard-band', limit: { atLeast: 8, unit: 'J' } };
}

/** Thousandths, so that ties come up and a failure shrinks to something readable. */
const number = fc.integer({ min: -50_000, max: 50_000 }).map((thousandths) => thousandths / 1000);

describe('judge', () => {
  it.each(CASES)('%s', (_, criterion, given, verdict) => {
    expect(judge(criterion, evidence(given)).verdict).toBe(verdict);
  });

  it('follows the definition of the rule for any bounds and limit', () => {
    fc.assert(
      fc.property(number, number, number, (a, b, limit) => {
        const [lower, upper] = [Math.min(a, b), Math.max(a, b)];
        const criterion = { ...atLeast45, limit: { atLeast: limit, unit: 'J' } };
        const { verdict } = judge(criterion, evidence({ estimate: (lower + upper) / 2, lower, upper }));
        expect(verdict).toBe(lower >= limit ? 'pass' : upper < limit ? 'fail' : 'inconclusive');
      }),
    );
  });

  it('is mirrored: at most L is at least −L of the negative', () => {
    fc.assert(
      fc.property(
        number,
        number,
        number,
        fc.constantFrom('lower-bound', 'guard-band'),
        (a, b, limit, rule) => {
          const [lower, upper] = [Math.min(a, b), Math.max(a, b)];
          const given = { lower, upper, estimate: (lower + upper) / 2 };
          const turned = { lower: -upper, upper: -lower, estimate: -given.estimate };
          const low = judge({ ...atLeast45, rule, limit: { atLeast: limit, unit: 'J' } }, evidence(given));
          const high = judge({ ...atLeast45, rule, limit: { atMost: -limit, unit: 'J' } }, evidence(turned));
          expect(high.verdict).toBe(low.verdict);
        },
      ),
    );
  });

  it('turns a pass on too few specimens into inconclusive, and says so', () => {
    const judged = judge({ ...atLeast45, minSpecimens: 40 }, evidence());
    expect(judged.verdict).toBe('inconclusive');
    expect(judged.why).toMatch(/^30 tyres tested, 40 asked for, though the lower 95 % bound, 45\.4 J/);
    expect(judged.more?.specimens).toBe(10);
  });

  it('passes on just enough specimens, and lets a fail stay on too few', () => {
    expect(judge({ ...atLeast45, minSpecimens: 30 }, evidence()).verdict).toBe('pass');
    const failed = { estimate: 40, lower: 38, upper: 42, specimens: 3 };
    expect(judge({ ...atLeast45, minSpecimens: 40 }, evidence(failed)).verdict).toBe('fail');
  });

  it('holds for the other rules too that a pass needs its specimens', () => {
    const judged = judge({ ...atLeast45, rule: 'simple-acceptance', minSpecimens: 40 }, evidence());
    expect(judged.verdict).toBe('inconclusive');
    expect(judged.more).toBeUndefined();
  });

  it('gives no verdict on evidence that is invalid or missing, whatever the numbers', () => {
    const why = 'a third of the tyres is out';
    expect(judge(atLeast45, evidence({ status: 'invalid', why }))).toMatchObject({ verdict: 'invalid', why });
    expect(judge(atLeast45, evidence({ status: 'none' })).verdict).toBe('not-tested');
  });

  it('never prints a bound that misses the limit as the limit', () => {
    const { why } = judge(atLeast45, evidence({ estimate: 43, lower: 41, upper: 44.9996, standardError: 1 }));
    expect(why).toContain('44.9996 J, is below the limit of 45 J');
  });

  it('says the numbers, the limit and what lies between', () => {
    expect(judge(atLeast45, evidence()).why).toBe(
      'the lower 95 % bound, 45.4 J, is at or above the limit of 45 J (0.4 J to spare)',
    );
    expect(judge(atLeast45, evidence({ lower: 43, upper: null })).why).toBe(
      'the limit, at least 45 J, is not decided by a lower 95 % bound of 43.0 J and no upper one',
    );
  });

  it('carries what the contract lists', () => {
    expect(judge({ ...atLeast45, probability: 0.1, at: 5000 }, evidence())).toMatchObject({
      id: 'median',
      probability: 0.1,
      at: 5000,
      limit: { atLeast: 45, unit: 'J' },
      rule: 'lower-bound',
      confidence: 0.95,
      estimate: 47,
      bounds: { lower: 45.4, upper: 48.6 },
      basis: { method: 'censored-likelihood', interval: 'profile-likelihood' },
      counted: true,
    });
  });
});
