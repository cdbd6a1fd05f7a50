import type { GateResult } from '../../result/gate.ts';
import { jsonText } from '../json-text.ts';

/** The document of `gate --json`: `tirelab.gate/1`, every criterion of every construction with its evidence. */
export function gateDocument(result: GateResult, version: string): string {
  const { judged, unreadable, unspecified, verdict } = result;
  return jsonText({
    schema: 'tirelab.gate/1',
    tool: { name: 'tirelab', version },
    verdict,
    constructions: judged.map(({ construction, specification, criteria, verdict: overall }) => ({
      construction,
      specification,
      verdict: overall,
      criteria: criteria.map(({ id, verdict: own, why, evidence }) => ({ id, verdict: own, why, evidence })),
    })),
    unreadable,
    unspecified,
  });
}
