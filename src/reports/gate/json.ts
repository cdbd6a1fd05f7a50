import type { GateResult } from '../../result/gate.ts';
import { jsonText } from '../json-text.ts';

/** The document of `gate --json`: `tirelab.gate/1`, every criterion of every construction with its evidence. */
export function gateDocument(result: GateResult, version: string): string {
  const { judged, unreadable, unspecified, withdrawn, results, remarks, asOf, whatIf, since, verdict } =
    result;
  return jsonText({
    schema: 'tirelab.gate/1',
    tool: { name: 'tirelab', version },
    verdict,
    ...(asOf === null ? {} : { asOf }),
    ...(whatIf.length === 0 ? {} : { whatIf }),
    ...(since === null ? {} : { since }),
    constructions: judged.map(({ construction, specification, criteria, verdict: overall }) => ({
      construction,
      specification,
      verdict: overall,
      criteria,
    })),
    unreadable,
    unspecified,
    withdrawn,
    results,
    remarks,
  });
}
