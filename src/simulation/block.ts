import { laws } from '../statistics/laws/laws.ts';
import type { ProfileBasis } from '../statistics/likelihood/constrained.ts';
import { randomStream } from '../statistics/random/random-stream.ts';
import { preparingOnce } from './alike.ts';
import type { Carrying } from './carry-out.ts';
import { emptyTrials, MOST_DROPS, type Trials } from './carry-out.ts';
import { carrying } from './carry-steps.ts';
import { type Design, type PostedDesign, received } from './design.ts';
import type { Estimator, IntervalTally } from './estimator.ts';
import { estimatorsFor, type Wanted } from './estimators.ts';
import { judging, type VerdictTally } from './judging.ts';
import { type LevelTable, levelTable } from './level-table.ts';
import { rises, singleLooks } from './sampling.ts';
import { type AssumedStrength, tyresOf } from './strength.ts';

/** A stretch of simulated tests, small enough that many threads have some: what a thread is asked for. */
export interface BlockTask {
  readonly design: PostedDesign;
  readonly assumed: AssumedStrength;
  readonly wanted: Wanted;
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

/** Everything that blocks of one design share; what it remembers changes no result. */
interface Workshop {
  readonly key: string;
  readonly design: Design;
  readonly carry: Carrying;
  readonly levels: LevelTable;
  basisOf(trials: Trials): ProfileBasis;
  readonly estimators: readonly Estimator[];
  readonly judge: ReturnType<typeof judging> | null;
}

let last: Workshop | null = null;

/** The workshop of the block before, where this one is of the same design. */
function workshopFor({ design: given, assumed, wanted }: BlockTask): Workshop {
  const key = `${assumed.law} ${assumed.anyOffset} ${JSON.stringify(wanted)} ${given.key}`;
  if (last?.key === key) return last;
  const design = received(given);
  const { protocol, specification, energyPerLevel } = design;
  const law = laws[protocol.distribution];
  const levels = levelTable(energyPerLevel, law.scale);
  const sampling = (protocol.method === 'rising-height' ? rises : singleLooks)(law.scale);
  const prepare = preparingOnce(law.standard);
  last = {
    key,
    design,
    carry: carrying(design),
    levels,
    basisOf(trials) {
      const { sample, key: counts } = sampling(trials, levels);
      return prepare(sample, counts);
    },
    estimators: estimatorsFor(design, assumed, wanted),
    judge: specification && judging(design, specification),
  };
  return last;
}

const trials = emptyTrials();

/** Carries out and evaluates a stretch of tests. */
export function simulateBlock(task: BlockTask): Block {
  const { assumed, seed, first, tests } = task;
  const { design, carry, levels, basisOf, estimators, judge } = workshopFor(task);
  const { protocol, energyPerLevel } = design;
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
    if (!carry(truth, assumed.between > 0, levels, stream, trials)) {
      block.endless += 1;
      block.drops[i] = MOST_DROPS;
      continue;
    }
    const basis = basisOf(trials);
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
