import { describe, expect, it } from 'vitest';
import type { Criterion } from '../../src/documents/kinds.ts';
import { judge } from '../../src/verdict/judge.ts';
import { judgeEach } from '../../src/verdict/judge-each.ts';
import { rejudge } from '../../src/verdict/rejudge.ts';
import { readWhatIf, withLimit } from '../../src/verdict/what-if.ts';
import { atLeast45, evidence } from './criteria.ts';

const at = (limit: Criterion['limit'], more: Partial<Criterion> = {}): Criterion => ({
  ...atLeast45,
  limit,
  ...more,
});

describe('rejudge', () => {
  // Bounds 45.4 and 48.6 about 47: by the contract a limit up to 45.4 passes, beyond 48.6 fails.
  it.each([
    [45.4, 'pass'],
    [45.41, 'inconclusive'],
    [48.6, 'inconclusive'],
    [48.61, 'fail'],
  ])('by a limit of %d gives %s', (atLeast, verdict) => {
    const earlier = judge(atLeast45, evidence());
    expect(rejudge(at({ atLeast, unit: 'J' }), earlier).verdict).toBe(verdict);
  });

  it('by the same limit gives the same judgement, under every rule', () => {
    for (const rule of ['lower-bound', 'simple-acceptance', 'guard-band'] as const) {
      for (const minSpecimens of [null, 40]) {
        const criterion = at({ atLeast: 45, unit: 'J' }, { rule, minSpecimens });
        const earlier = judge(criterion, evidence());
        expect(rejudge(criterion, earlier), rule).toEqual(earlier);
      }
    }
  });

  it('sees a verdict that the numbers contradict', () => {
    const earlier = { ...judge(at({ atLeast: 60, unit: 'J' }), evidence()), verdict: 'pass' as const };
    expect(rejudge(at({ atLeast: 60, unit: 'J' }), earlier).verdict).toBe('fail');
  });

  it.each(['not-tested', 'invalid', 'external'] as const)('leaves %s as it is', (verdict) => {
    const earlier = { ...judge(atLeast45, evidence()), verdict };
    expect(rejudge(at({ atLeast: 1, unit: 'J' }), earlier).verdict).toBe(verdict);
  });

  it('judges tyre by tyre from the smallest and the largest', () => {
    const mass = (lower: number, upper: number, minSpecimens: number | null = null) =>
      at({ within: { lower, upper }, unit: 'g' }, { quantity: 'mass', each: true, minSpecimens });
    const tyres = [891, 905, 922].map((value, i) => ({ specimen: `T-${i}`, value }));
    const earlier = judgeEach(mass(855, 945), tyres);
    expect(rejudge(mass(855, 945), earlier).verdict).toBe('pass');
    expect(rejudge(mass(891, 922), earlier).verdict).toBe('pass');
    expect(rejudge(mass(892, 945), earlier).verdict).toBe('fail');
    expect(rejudge(mass(855, 921), earlier).verdict).toBe('fail');
    expect(rejudge(mass(855, 945, 4), earlier).verdict).toBe('inconclusive');
  });
});

describe('a limit that is tried out', () => {
  const read = (text: string) => {
    const reading = readWhatIf(text);
    if (!reading.ok) throw new Error(reading.why);
    return reading.value;
  };

  it.each([
    ['median>=48 J', { criterion: 'median', side: 'atLeast', limit: '48 J' }],
    [' a b <= 0.1 bar ', { criterion: 'a b', side: 'atMost', limit: '0.1 bar' }],
    ['x≥60 %', { criterion: 'x', side: 'atLeast', limit: '60 %' }],
    ['x≤1', { criterion: 'x', side: 'atMost', limit: '1' }],
  ])('reads %s', (text, expected) => {
    expect(read(text)).toMatchObject(expected);
  });

  it.each(['', 'median', 'median=48 J', '>=48 J', 'median>=', 'median>48 J'])('refuses "%s"', (text) => {
    expect(readWhatIf(text).ok).toBe(false);
  });

  it('is taken in any unit of the dimension, and in no other', () => {
    expect(withLimit(atLeast45, read('median>=0.048 kJ'))).toMatchObject({
      ok: true,
      value: { limit: { atLeast: 48, unit: 'J' } },
    });
    for (const text of ['median>=48', 'median>=48 mm', 'median>=48 J ± 1 J', 'median<=48 J']) {
      expect(withLimit(atLeast45, read(text)).ok, text).toBe(false);
    }
  });

  it('moves one end of a range, and leaves none without room', () => {
    const range = at({ within: { lower: 855, upper: 945 }, unit: 'g' });
    expect(withLimit(range, read('m>=0.9 kg'))).toMatchObject({
      value: { limit: { within: { lower: 900, upper: 945 } } },
    });
    expect(withLimit(range, read('m<=900 g'))).toMatchObject({
      value: { limit: { within: { lower: 855, upper: 900 } } },
    });
    expect(withLimit(range, read('m>=950 g')).ok).toBe(false);
  });

  it('is a bare number or a share where the quantity is one', () => {
    const shape = at({ atLeast: 1.5, unit: '1' }, { quantity: 'weibullShape' });
    expect(withLimit(shape, read('s>=2'))).toMatchObject({ value: { limit: { atLeast: 2 } } });
    const reliability = at({ atLeast: 0.6, unit: '1' }, { quantity: 'reliability' });
    expect(withLimit(reliability, read('r>=70 %'))).toMatchObject({ value: { limit: { atLeast: 0.7 } } });
  });
});
