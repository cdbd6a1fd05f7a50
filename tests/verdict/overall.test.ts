// 1 for a fail before 3 for anything undecided before 0: CONTRACT, exit status.
import { describe, expect, it } from 'vitest';
import type { Verdict } from '../../src/result/criterion.ts';
import { exitStatus } from '../../src/verdict/exit-status.ts';
import { overallVerdict } from '../../src/verdict/overall.ts';

const counting = (...verdicts: Verdict[]) => verdicts.map((verdict) => ({ verdict, counted: true }));

const CASES: readonly [Verdict[], Verdict, 0 | 1 | 3][] = [
  [['pass'], 'pass', 0],
  [['pass', 'waived'], 'waived', 0],
  [['pass', 'external'], 'external', 3],
  [['pass', 'not-tested'], 'not-tested', 3],
  [['pass', 'inconclusive'], 'inconclusive', 3],
  [['inconclusive', 'invalid'], 'invalid', 3],
  [['invalid', 'fail', 'inconclusive'], 'fail', 1],
  [['waived', 'fail'], 'fail', 1],
  [[], 'not-tested', 3],
];

describe('overallVerdict and exitStatus', () => {
  it.each(CASES)('%j: %s, %i', (verdicts, overall, status) => {
    expect(overallVerdict(counting(...verdicts))).toBe(overall);
    expect(exitStatus({ verdict: overall, conformance: { status: 'deviating' } })).toBe(status);
  });

  it('leaves out what is not counted', () => {
    const criteria = [...counting('pass'), { verdict: 'fail' as const, counted: false }];
    expect(overallVerdict(criteria)).toBe('pass');
  });

  it('without a specification depends on the protocol alone', () => {
    expect(exitStatus({ verdict: null, conformance: { status: 'conforming' } })).toBe(0);
    expect(exitStatus({ verdict: null, conformance: { status: 'deviating' } })).toBe(0);
    expect(exitStatus({ verdict: null, conformance: { status: 'invalid' } })).toBe(3);
  });

  it('gives no pass on a broken protocol, and lets a fail stay', () => {
    expect(exitStatus({ verdict: 'pass', conformance: { status: 'invalid' } })).toBe(3);
    expect(exitStatus({ verdict: 'fail', conformance: { status: 'invalid' } })).toBe(1);
  });
});
