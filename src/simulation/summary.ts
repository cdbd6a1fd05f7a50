import type { Verdict } from '../result/criterion.ts';
import type {
  Simulated,
  SimulatedCount,
  SimulatedEstimate,
  SimulatedInterval,
  SimulatedPoint,
} from '../result/simulation.ts';
import type { Block } from './block.ts';
import type { Estimator, IntervalTally } from './estimator.ts';
import type { TrueStrength } from './strength.ts';

/**
 * What the blocks of one true median add up to. The blocks stand in the order of their tests, whoever carried them out,
 * so that sums of doubles come out the same.
 */
export function summarise(
  blocks: readonly Block[],
  estimators: readonly Estimator[],
  truth: TrueStrength,
): SimulatedPoint {
  const tests = blocks.reduce((sum, block) => sum + block.tests, 0);
  const joined = (of: (block: Block) => Float64Array) => join(blocks.map(of), tests);
  const existence = addUp(blocks.map((block) => block.existence));
  return {
    median: truth.median,
    drops: countOf(joined((block) => block.drops)),
    specimens: countOf(joined((block) => block.specimens)),
    existence: Object.fromEntries(
      Object.entries(existence)
        .sort(([a], [b]) => (a < b ? -1 : 1))
        .map(([kind, count]) => [kind, count / tests]),
    ),
    estimates: estimators.map((estimator, e) => ({
      ...estimateOf(
        estimator,
        truth,
        joined((block) => block.errors[e]!),
      ),
      intervals: estimator.intervals.map((kind, k) => ({
        ...kind,
        ...intervalOf(
          blocks.map((block) => block.intervals[e]![k]!),
          tests,
        ),
      })),
    })),
    verdicts: verdictsOf(blocks, tests),
  };
}

/** A share of tests with its binomial error. */
export function share(count: number, tests: number): Simulated {
  const value = count / tests;
  return { value, error: Math.sqrt((value * (1 - value)) / tests) };
}

function estimateOf(
  { quantity, probability, method, unit }: Estimator,
  truth: TrueStrength,
  all: Float64Array,
): Omit<SimulatedEstimate, 'intervals'> {
  const errors = all.filter((error) => !Number.isNaN(error));
  const of = quantity === 'energySpread' ? truth.spread : truth.quantile(probability ?? 0.5);
  const head = {
    quantity,
    ...(probability === undefined ? {} : { probability }),
    method,
    unit,
    truth: of,
    exists: errors.length / all.length,
  };
  if (errors.length < 2) {
    return { ...head, bias: null, standardDeviation: null, medianError: null, middle: null };
  }
  const { mean, deviation, deviationError } = momentsOf(errors);
  const sorted = errors.sort();
  return {
    ...head,
    bias: { value: mean, error: deviation / Math.sqrt(errors.length) },
    standardDeviation: { value: deviation, error: deviationError },
    medianError: quantileOf(sorted, 0.5),
    middle: { lower: quantileOf(sorted, 0.025), upper: quantileOf(sorted, 0.975) },
  };
}

/** Mean, standard deviation and the error of the latter by the fourth moment: var(s²) ≈ (m₄ − s⁴)/n. */
function momentsOf(values: Float64Array): { mean: number; deviation: number; deviationError: number } {
  const n = values.length;
  let sum = 0;
  for (const value of values) sum += value;
  const mean = sum / n;
  let second = 0;
  let fourth = 0;
  for (const value of values) {
    const square = (value - mean) ** 2;
    second += square;
    fourth += square * square;
  }
  const variance = second / (n - 1);
  const deviation = Math.sqrt(variance);
  const ofVariance = Math.sqrt(Math.max(0, fourth / n - variance * variance) / n);
  return { mean, deviation, deviationError: deviation > 0 ? ofVariance / (2 * deviation) : 0 };
}

function countOf(counts: Float64Array): SimulatedCount {
  const { mean, deviation } = momentsOf(counts);
  const sorted = counts.slice().sort();
  return {
    mean: { value: mean, error: counts.length > 1 ? deviation / Math.sqrt(counts.length) : 0 },
    mostly: sorted[Math.min(sorted.length - 1, Math.ceil(0.95 * sorted.length) - 1)]!,
    most: sorted.at(-1)!,
  };
}

/** Quantile of sorted values, straight between neighbours (Hyndman and Fan 1996, type 7). */
function quantileOf(sorted: Float64Array, p: number): number {
  const place = p * (sorted.length - 1);
  const below = sorted[Math.floor(place)]!;
  const above = sorted[Math.ceil(place)]!;
  return below + (place - Math.floor(place)) * (above - below);
}

function intervalOf(
  tallies: readonly IntervalTally[],
  tests: number,
): Pick<SimulatedInterval, 'coverage' | 'unbounded' | 'absent'> {
  const total = (of: (tally: IntervalTally) => number) => tallies.reduce((sum, tally) => sum + of(tally), 0);
  return {
    coverage: share(
      total(({ held }) => held),
      tests,
    ),
    unbounded: total(({ unbounded }) => unbounded) / tests,
    absent: total(({ absent }) => absent) / tests,
  };
}

function verdictsOf(blocks: readonly Block[], tests: number): SimulatedPoint['verdicts'] {
  const ids = Object.keys(blocks[0]?.verdicts ?? {});
  if (ids.length === 0) return null;
  const of = (id: string) => {
    const counts = addUp(blocks.map(({ verdicts }) => verdicts[id] ?? {}));
    return Object.fromEntries(
      ORDER.flatMap((verdict) =>
        counts[verdict] === undefined ? [] : [[verdict, share(counts[verdict], tests)]],
      ),
    );
  };
  return { overall: of(''), criteria: ids.filter((id) => id !== '').map((id) => ({ id, verdicts: of(id) })) };
}

const ORDER: readonly Verdict[] = [
  'pass',
  'fail',
  'inconclusive',
  'not-tested',
  'invalid',
  'waived',
  'external',
];

function addUp(counts: readonly Readonly<Record<string, number | undefined>>[]): Record<string, number> {
  const total: Record<string, number> = {};
  for (const each of counts) {
    for (const [key, count] of Object.entries(each)) total[key] = (total[key] ?? 0) + (count ?? 0);
  }
  return total;
}

function join(parts: readonly Float64Array[], length: number): Float64Array {
  const whole = new Float64Array(length);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
