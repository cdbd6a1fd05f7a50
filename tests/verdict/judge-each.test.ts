import { describe, expect, it } from 'vitest';
import type { Criterion } from '../../src/documents/kinds.ts';
import { judgeEach } from '../../src/verdict/judge-each.ts';
import { atLeast45 } from './criteria.ts';

const mass: Criterion = {
  ...atLeast45,
  id: 'mass',
  protocol: null,
  quantity: 'mass',
  each: true,
  limit: { within: { lower: 855, upper: 945 }, unit: 'g' },
};
const tyres = (...values: (number | null)[]) => values.map((value, i) => ({ specimen: `T-${i + 1}`, value }));

describe('judgeEach', () => {
  it('passes where every measured tyre lies within, ends included', () => {
    const judged = judgeEach(mass, tyres(855, 900, 945));
    expect(judged).toMatchObject({
      verdict: 'pass',
      rule: 'each',
      counted: true,
      why: 'all 3 measured tyres meet 855 to 945 g',
      measured: { specimens: 3, missing: 0, smallest: 855, largest: 945, beyond: [] },
    });
  });

  it('fails for one tyre beyond, and names it with its value', () => {
    const judged = judgeEach(mass, tyres(900, 945.04, null));
    expect(judged.verdict).toBe('fail');
    expect(judged.why).toBe('1 of 2 measured tyres beyond 855 to 945 g: T-2 (945.04 g); 1 tyre not measured');
    expect(judged.measured?.beyond).toEqual(['T-2']);
  });

  it('names a few and counts the rest', () => {
    expect(judgeEach(mass, tyres(...Array<number>(40).fill(800))).why).toMatch(
      /^40 of 40 measured tyres beyond .* T-5 \(800 g\) and 35 more$/,
    );
  });

  it('says that some were not measured, and passes on the others', () => {
    expect(judgeEach(mass, tyres(900, null))).toMatchObject({
      verdict: 'pass',
      why: 'the one measured tyre meets 855 to 945 g; 1 tyre not measured',
    });
  });

  it('is not tested, and not counted, where none was measured', () => {
    for (const none of [[], tyres(null, Number.NaN)]) {
      expect(judgeEach(mass, none)).toMatchObject({ verdict: 'not-tested', counted: false });
    }
  });

  it('needs its specimens for a pass, not for a fail', () => {
    const five = { ...mass, minSpecimens: 5 };
    expect(judgeEach(five, tyres(900, 900)).verdict).toBe('inconclusive');
    expect(judgeEach(five, tyres(900, 800)).verdict).toBe('fail');
  });

  it('moves the limit by a stated guard band', () => {
    const guarded: Criterion = { ...mass, rule: 'guard-band', guard: 5 };
    expect(judgeEach(guarded, tyres(860, 940)).verdict).toBe('pass');
    expect(judgeEach(guarded, tyres(859, 900)).verdict).toBe('fail');
  });

  it('writes no control character of a name', () => {
    const judged = judgeEach(mass, [{ specimen: 'T\u001b[2J\u202e', value: 1 }]);
    expect(judged.why).toContain('T\\u{1b}[2J\\u{202e}');
  });
});
