import type { SimulationResult } from '../../result/simulation.ts';
import { jsonText } from '../json-text.ts';

/**
 * The document of `simulate --json` (`tirelab.simulation/1`). Every simulated number stands with its Monte Carlo error,
 * one standard error; shares are fractions of all tests, those without an estimate included. The keys are those of
 * SimulationResult (src/result/simulation.ts), which says what each means.
 *
 * @param version of tirelab itself.
 */
export function simulationDocument(result: SimulationResult, version: string): string {
  const { kind, protocol, specification, energy, assumed, tests, seed, defaults, notes, points } = result;
  return jsonText({
    schema: 'tirelab.simulation/1',
    kind,
    tool: { name: 'tirelab', version },
    protocol,
    specification,
    inputs: result.inputs.map(({ role, path, sha256, bytes }) => ({ role, path, sha256, bytes })),
    energy,
    assumed,
    tests,
    seed,
    defaults,
    notes,
    points,
  });
}
