import type { ConformanceStatus } from '../conformance/deviation.ts';
import type { Verdict } from '../result/criterion.ts';

/**
 * The exit status that a result asks for (CONTRACT: exit status): 1 where a criterion fails, 3 where no decision may
 * be given or the protocol was broken, else 0. 1 goes before 3.
 */
export function exitStatus(result: {
  /** Null without a specification. */
  readonly verdict: Verdict | null;
  readonly conformance: { readonly status: ConformanceStatus };
}): 0 | 1 | 3 {
  const { verdict, conformance } = result;
  if (verdict === 'fail') return 1;
  if (conformance.status === 'invalid') return 3;
  return verdict === null || verdict === 'pass' || verdict === 'waived' ? 0 : 3;
}
