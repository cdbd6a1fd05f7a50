import type { EnduranceResult } from '../../result/endurance.ts';
import { type JsonRecord, jsonText } from '../json-text.ts';

/**
 * The document of `analyze --json` for a drum test (CONTRACT: the JSON of analyze), with schedule and ledger.
 *
 * @param version of tirelab itself.
 */
export function enduranceDocument(result: EnduranceResult, version: string): string {
  return jsonText(enduranceRecord(result, version));
}

/** The same, not yet set as text. */
export function enduranceRecord(result: EnduranceResult, version: string): JsonRecord {
  const { kind, run, protocol, rig, constructions, specification, inputs, defaults, notes } = result;
  const { conformance, sample, schedule, distance, lives, survival, estimates, criteria, verdict } = result;
  const { signs, strips, nights, tyres } = result;
  return {
    schema: 'tirelab.result/1',
    kind,
    tool: { name: 'tirelab', version },
    run,
    protocol,
    rig,
    constructions,
    specification,
    inputs,
    ...(result.period ? { period: result.period } : {}),
    defaults,
    notes,
    conformance,
    sample,
    schedule,
    distance,
    estimates,
    criteria,
    verdict,
    tyres,
    signs,
    lives,
    survival,
    nights,
    strips,
  };
}
