import { InputError } from '../problem/problem.ts';
import { laws } from '../statistics/laws/laws.ts';
import type { ProfileBasis } from '../statistics/likelihood/constrained.ts';
import { randomStream } from '../statistics/random/random-stream.ts';
import { once, preparingOnce } from './alike.ts';
import { emptyTrials, MOST_DROPS } from './carry-out.ts';
import { carrying } from './carry-steps.ts';
import type { Design } from './design.ts';
import { levelTable } from './level-table.ts';
import { bestQuantile } from './quantile-test.ts';
import { rises, singleLooks } from './sampling.ts';
import { type AssumedStrength, tyresOf } from './strength.ts';

/** Medians that simulated tests found, and what the tests cost. */
export interface FoundMedians {
  /**
   * On the fitted scale, less the true median. Without a best fit: the middle of the gap, the level that failures and
   * survivals share, the end of the heights where all had one outcome; ±∞ where failures lie below survivals.
   */
  readonly errors: Float64Array;
  readonly drops: number;
  readonly specimens: number;
}

/**
 * Carries tests out for their medians alone.
 *
 * @param parity tests draw from the streams 2k + parity of the seed, so that two groups are independent
 */
export function medianErrors(
  design: Design,
  assumed: AssumedStrength,
  { tests, seed }: { readonly tests: number; readonly seed: number },
  parity: 0 | 1 = 0,
): FoundMedians {
  const { protocol, energyPerLevel } = design;
  const law = laws[protocol.distribution];
  const carry = carrying(design);
  const levels = levelTable(energyPerLevel, law.scale);
  const sampling = (protocol.method === 'rising-height' ? rises : singleLooks)(law.scale);
  const prepare = preparingOnce(law.standard);
  const medianOf = once(found);
  const trials = emptyTrials();
  const errors = new Float64Array(tests);
  let drops = 0;
  let specimens = 0;
  for (let k = 0; k < tests; k++) {
    const stream = randomStream(seed, 2 * k + parity);
    const offset = assumed.anyOffset ? stream.uniform() - 0.5 : 0;
    const tyres = tyresOf(assumed, protocol.step, energyPerLevel, offset);
    if (!carry(tyres, assumed.between > 0, levels, stream, trials)) throw endless(design);
    const median = law.scale === 'log' ? Math.log(tyres.median) : tyres.median;
    const { sample, key } = sampling(trials, levels);
    errors[k] = medianOf(prepare(sample, key)) - median;
    drops += trials.size;
    specimens += trials.specimens;
  }
  return { errors, drops: drops / tests, specimens: specimens / tests };
}

/** The median found; where nothing failed, or all did, the end of the heights that were tried: a bound is known. */
function found(basis: ProfileBasis): number {
  const { fit, ends } = basis;
  if (fit.kind === 'no-failure') return ends.highest;
  return fit.kind === 'all-failed' ? ends.lowest : bestQuantile(basis, 0.5);
}

function endless({ protocol }: Design): InputError {
  const { path, locate } = protocol.source;
  const message = `found a stop rule that a simulated test did not reach within ${MOST_DROPS} drops, expected one that ends; add "drops" to it`;
  return new InputError([{ file: path, ...locate(['stop']), code: 'protocol-cannot-stop', message }]);
}
