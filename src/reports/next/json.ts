import type { NextResult } from '../../result/next.ts';
import { jsonText } from '../json-text.ts';

/**
 * The document of `next --json` (CONTRACT: `tirelab.next/1`): decision, height in mm, why; then what they mean. The
 * decision is null where no advice may be given (exit status 3), and `why` says from where to repeat. The other keys are
 * those of NextResult (src/result/next.ts).
 *
 * @param version of tirelab itself.
 */
export function nextDocument(result: NextResult, version: string): string {
  return jsonText(ordered(result, version));
}

/** The same on one line, for `--follow`: one advice a line. */
export function nextLine(result: NextResult, version: string): string {
  // Parsed and written anew: the text has every escape and null that a document needs.
  return `${JSON.stringify(JSON.parse(nextDocument(result, version)))}\n`;
}

function ordered(result: NextResult, version: string) {
  const { decision, height, why, mass, energy, impactSpeed, specimen, remaining, remainingWhy } = result;
  const { made, estimate, recovery, notes, protocol } = result;
  return {
    schema: 'tirelab.next/1',
    decision,
    height,
    why,
    tool: { name: 'tirelab', version },
    protocol,
    unit: { height: 'mm', mass: 'kg', energy: 'J', impactSpeed: 'm/s' },
    mass,
    energy,
    impactSpeed,
    specimen,
    remaining,
    remainingWhy,
    made,
    estimate,
    recovery,
    notes,
  };
}
