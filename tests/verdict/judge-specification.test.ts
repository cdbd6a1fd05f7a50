// Expected standings are those of CONTRACT's rules on protocols, versions and counting.
import { describe, expect, it } from 'vitest';
import type { Criterion, Specification } from '../../src/documents/kinds.ts';
import { judgeSpecification, type RunEvidence } from '../../src/verdict/judge-specification.ts';
import { atLeast45, evidence } from './criteria.ts';

const run: RunEvidence = {
  protocol: { id: 'pinch-up-down', version: '1.0.0' },
  evidenceFor: () => evidence(),
  measurementsFor: () => [{ specimen: 'T-1', value: 900 }],
};

function judgeAll(...criteria: Partial<Criterion>[]) {
  const specification: Specification = {
    format: 'tirelab.specification/1',
    id: 'trail-casing',
    version: '1.0.0',
    title: null,
    appliesTo: {},
    defaults: [],
    criteria: criteria.map((given, i) => ({ ...atLeast45, id: `c${i}`, ...given })),
    source: { path: 'S.yaml', sha256: '', bytes: 0, locate: () => ({ line: 1, column: 1 }) },
  } as Specification;
  return judgeSpecification(specification, run);
}

describe('judgeSpecification', () => {
  it('judges the criteria of the protocol of the run', () => {
    expect(judgeAll({})).toMatchObject({ verdict: 'pass', criteria: [{ verdict: 'pass', counted: true }] });
  });

  it('takes any version where none is pinned, and the protocol of the run where none is named', () => {
    expect(judgeAll({ protocol: { id: 'pinch-up-down', version: null } }).verdict).toBe('pass');
    expect(judgeAll({ protocol: null }).verdict).toBe('pass');
  });

  it('calls a pinned version that differs invalid, and counts it', () => {
    // 1.0 is not 1.0.0: versions are text.
    for (const version of ['1.0', '2.0.0']) {
      const { criteria, verdict } = judgeAll({ protocol: { id: 'pinch-up-down', version } });
      expect(criteria[0]).toMatchObject({ verdict: 'invalid', counted: true, estimate: null });
      expect(verdict).toBe('invalid');
    }
  });

  it('lists criteria of other protocols as not tested, and does not count them', () => {
    const other = { protocol: { id: 'drum-two-block', version: '1.0.0' } };
    const { criteria, verdict } = judgeAll({}, other);
    expect(criteria[1]).toMatchObject({ verdict: 'not-tested', counted: false });
    expect(verdict).toBe('pass');
    expect(judgeAll(other).verdict).toBe('not-tested');
  });

  it('leaves to others what others must show, and counts it', () => {
    const { criteria, verdict } = judgeAll({}, { external: 'accredited', protocol: null });
    expect(criteria[1]).toMatchObject({ verdict: 'external', counted: true });
    expect(verdict).toBe('external');
  });

  it('looks at each measured tyre where asked to', () => {
    const limit = { atMost: 890, unit: 'g' };
    expect(judgeAll({}, { protocol: null, each: true, quantity: 'mass', limit }).verdict).toBe('fail');
  });
});
