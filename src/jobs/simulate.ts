import type { Protocol, Specification } from '../documents/kinds.ts';
import { InputError } from '../problem/problem.ts';
import type { SimulationResult } from '../result/simulation.ts';
import { type BlockRunner, blockTasks, refuseEndless } from '../simulation/blocks.ts';
import { calibratedLimits } from '../simulation/bounds.ts';
import { estimatorsFor, type Wanted } from '../simulation/estimators.ts';
import { tyresOf } from '../simulation/strength.ts';
import { summarise } from '../simulation/summary.ts';
import { readStrengths, type StatedStrength } from './assumed-strength.ts';
import { type DesignedTest, designOf } from './design-of.ts';
import { documentsOf } from './documents-of.ts';

/** What is to be simulated. */
export interface SimulationRequest {
  readonly protocol: string;
  readonly rig: string | null;
  readonly specification: string | null;
  readonly strength: StatedStrength;
  readonly tests: number;
  readonly seed: number;
  readonly wanted: Wanted;
}

/** Default of `--tests`: a Monte Carlo error of at most half a point on a share. */
export const USUAL_TESTS = 10_000;

/**
 * What a protocol would find on tyres of known strength. Every test at one median draws from the stream of its number,
 * and all medians from the same streams, so that points differ by their median and less by luck.
 *
 * @param run who carries the tests out; the result is the same whoever does
 * @param progress called with how many tests are done, of how many
 * @throws InputError with every problem of documents and assumptions; nothing is simulated then
 */
export async function simulate(
  request: SimulationRequest,
  run: BlockRunner,
  progress: (done: number, total: number) => void,
): Promise<SimulationResult> {
  const documents = documentsOf(
    {
      kind: 'files',
      protocol: request.protocol,
      rig: request.rig,
      constructions: [],
      specification: request.specification,
      specimens: null,
      logs: [],
    },
    nothing(),
  );
  const protocol = dropTestOnly(documents.protocol, 'simulated');
  const design = designOf(protocol, documents.rig, documents.specification);
  const { assumed, spreadUnit, defaults } = readStrengths(request.strength, design);
  const tasks = assumed.map((strength) => blockTasks(design, strength, request));
  const total = request.tests * assumed.length;
  let done = 0;
  const blocks = await run(tasks.flat(), (tests) => {
    done += tests;
    progress(done, total);
  });
  refuseEndless(design, blocks);
  let from = 0;
  const points = assumed.map((strength, i) => {
    const estimators = estimatorsFor(design, strength, request.wanted);
    const truth = tyresOf(strength, protocol.step, design.energyPerLevel, 0);
    const part = blocks.slice(from, from + tasks[i]!.length);
    from += part.length;
    return summarise(part, estimators, truth);
  });
  const { law, spread, between, damage, anyOffset } = assumed[0]!;
  const { id, version, method, title, distribution } = protocol;
  return {
    kind: 'simulation',
    protocol: { id, version, method, title, distribution },
    specification: documents.specification && {
      id: documents.specification.id,
      version: documents.specification.version,
      medianLimit: medianLimitOf(documents.specification),
    },
    inputs: documents.inputs,
    energy: { mass: design.mass, gravity: design.gravity.value, gravityFrom: design.gravity.from },
    assumed: { law, spread, spreadUnit, between, damage, anyOffset },
    tests: request.tests,
    seed: request.seed,
    defaults: [...protocol.defaults, ...(documents.specification?.defaults ?? []), ...defaults],
    notes: [...design.notes, ...notCalibrated(design, request.wanted.withIntervals)],
    points,
  };
}

function medianLimitOf({ criteria }: Specification): number | null {
  const limits = criteria.flatMap(({ quantity, limit }) =>
    quantity === 'medianFailureEnergy' && limit.atLeast !== undefined ? [limit.atLeast] : [],
  );
  return limits.length === 0 ? null : Math.max(...limits);
}

/** Said where `analyze` would give other intervals than the ones that are put to the test here. */
function notCalibrated(design: DesignedTest, isAsked: boolean): string[] {
  if (!isAsked || calibratedLimits(design) !== null) return [];
  return [
    'Intervals are those of the profile likelihood, also behind the verdicts: analyze calibrates none where energy does not follow from the level alone, and here no test is where the number of tyres is left open or each site is a series of its own. They are somewhat too narrow, so that pass and fail come a little too readily.',
  ];
}

/**
 * @param done what is done with drop tests only, such as `simulated`
 * @throws InputError for an endurance protocol
 */
export function dropTestOnly(protocol: Protocol, done: string): Extract<Protocol, { kind: 'impact' }> {
  if (protocol.kind === 'impact') return protocol;
  const { path, locate } = protocol.source;
  const message = `found kind: endurance, expected kind: impact: only drop tests can be ${done} yet`;
  throw new InputError([{ file: path, ...locate(['kind']), code: 'kind-not-available', message }]);
}

async function* nothing(): AsyncGenerator<Uint8Array> {}
