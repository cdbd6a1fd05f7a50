import { laws } from '../statistics/laws/laws.ts';
import { prepareProfile } from '../statistics/likelihood/constrained.ts';
import { randomStream } from '../statistics/random/random-stream.ts';
import { carryOut, emptyTrials, MOST_DROPS } from './carry-out.ts';
import { type PostedDesign, received, ruleOf } from './design.ts';
import type { IntervalTally } from './estimator.ts';
import { estimatorsFor } from './estimators.ts';
import { judging, type VerdictTally } from './judging.ts';
import { levelTable } from './level-table.ts';
import { rises, singleLooks } from './sampling.ts';
import { type AssumedStrength, tyresOf } from './strength.ts';

/** A stretch of simulated tests, small enough that many threads have some: what a thread is asked for. */
export interface BlockTask {
  readonly design: PostedDesign;
  readonly assumed: AssumedStrength;
  /** Whether intervals are put to the test, or only the errors of the estimates are wanted. */
  readonly withIntervals: boolean;
  readonly seed: number;
  /** Number of the first test, and how many. Test k draws from stream k of the seed, whoever carries it out. */
  readonly first: number;
  readonly tests: number;
}

/** What came of a stretch of tests. */
export interface Block {
  readonly tests: number;
  /** By test: drops, specimens, and for each estimator its error (NaN where there is none). */
  readonly drops: Float64Array;
  readonly specimens: Float64Array;
  readonly errors: readonly Float64Array[];
  /** By estimator and interval. */
  readonly intervals: readonly (readonly IntervalTally[])[];
  /** How many tests have a best fit, or which reason for none. */
  readonly existence: Readonly<Record<string, number>>;
  readonly verdicts: VerdictTally;
  /** Tests that had not stopped after `MOST_DROPS` drops; they count in nothing else. */
  readonly endless: number;
}

/** Carries out and evaluates a stretch of tests. */
export function simulateBlock({
  design: given,
  assumed,
  withIntervals,
  seed,
  first,
  tests,
}: BlockTask): Block {
  const design = received(given);
  const { protocol, specification, energyPerLevel } = design;
  const law = laws[protocol.distribution];
  const rule = ruleOf(design);
  const levels = levelTable(energyPerLevel, law.scale);
  const sampling = (protocol.method === 'rising-height' ? rises : singleLooks)(law.scale);
  const estimators = estimatorsFor(design, assumed.law, withIntervals);
  const judge = specification && judging(design, specification);
  const trials = emptyTrials();
  const block = {
    tests,
    drops: new Float64Array(tests),
    specimens: new Float64Array(tests),
    errors: estimators.map(() => new Float64Array(tests).fill(Number.NaN)),
    intervals: estimators.map(({ intervals }) => intervals.map(() => ({ held: 0, unbounded: 0, absent: 0 }))),
    existence: {} as Record<string, number>,
    verdicts: {} as VerdictTally,
    endless: 0,
  };
  for (let i = 0; i < tests; i++) {
    const stream = randomStream(seed, first + i);
    const offset = assumed.anyOffset ? stream.uniform() - 0.5 : 0;
    const truth = tyresOf(assumed, protocol.step, energyPerLevel, offset);
    if (!carryOut(rule, truth, assumed.between > 0, levels, stream, trials)) {
      block.endless += 1;
      block.drops[i] = MOST_DROPS;
      continue;
    }
    const basis = prepareProfile(sampling(trials, levels), law.standard);
    block.drops[i] = trials.size;
    block.specimens[i] = trials.specimens;
    block.existence[basis.fit.kind] = (block.existence[basis.fit.kind] ?? 0) + 1;
    const test = { trials, levels, basis, truth };
    for (const [e, estimator] of estimators.entries()) {
      block.errors[e]![i] = estimator.errorOf(test, block.intervals[e]!);
    }
    judge?.(basis, trials.specimens, block.verdicts);
  }
  return block;
}
