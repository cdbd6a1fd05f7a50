import type { GateResult } from '../result/gate.ts';
import { exitStatus } from './exit-status.ts';

/**
 * The exit status that a gate asks for: 1 where a criterion of any construction fails, 3 where one is undecided, where a
 * run could not be read, or where nothing was there to judge, else 0. That nothing changed is no reason to stop.
 */
export function gateStatus({ judged, unreadable, since, verdict }: GateResult): 0 | 1 | 3 {
  if (judged.some((construction) => construction.verdict === 'fail')) return 1;
  const isEmpty = judged.length === 0 && (since?.unchanged ?? 0) === 0;
  if (unreadable.length > 0 || isEmpty) return 3;
  return exitStatus({ verdict, conformance: { status: 'conforming' } });
}
