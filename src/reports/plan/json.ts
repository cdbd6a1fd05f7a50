import type { PlanResult } from '../../result/plan.ts';
import { jsonText } from '../json-text.ts';

/**
 * The document of `plan --json` (`tirelab.plan/1`): the keys are those of PlanResult (src/result/plan.ts), which says what
 * each means; simulated numbers stand with their Monte Carlo error, one standard error.
 *
 * @param version of tirelab itself.
 */
export function planDocument({ kind, inputs, ...rest }: PlanResult, version: string): string {
  return jsonText({
    schema: 'tirelab.plan/1',
    kind,
    tool: { name: 'tirelab', version },
    inputs: inputs.map(({ role, path, sha256, bytes }) => ({ role, path, sha256, bytes })),
    ...rest,
  });
}
