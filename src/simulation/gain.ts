import type { Simulated } from '../result/simulation.ts';
import { laws } from '../statistics/laws/laws.ts';
import type { Design } from './design.ts';
import { medianErrors } from './median-errors.ts';
import type { Simulating } from './precision.ts';
import { leastSize, withSize } from './sizes.ts';
import type { AssumedStrength } from './strength.ts';
import { share } from './summary.ts';

/** The chance to see a gain with two groups of one size. */
export interface GainSeen {
  readonly size: number;
  /** Gain of the second median over the first, as a fraction. */
  readonly gain: number;
  readonly power: Simulated;
  /** Drops and specimens of both groups together. */
  readonly drops: number;
  readonly specimens: number;
}

export interface GainQuestion {
  readonly power: number;
  /** Chance that two equal constructions are called different, 1 − confidence; two-sided. */
  readonly confidence: number;
}

/** Two groups of tests of one size: a difference counts as seen when chance alone seldom gives one as large. */
interface Groups {
  /** Chance to see a gain. */
  powerAt(gain: number): Simulated;
  readonly drops: number;
  readonly specimens: number;
}

/**
 * Two constructions, each tested by the protocol in as many drops. The difference of their medians is called seen when it
 * is larger than those that two equal constructions show in all but 1 − confidence of simulated pairs; tests whose median
 * runs off see nothing. Nothing is taken from a t table, nor from a law of large numbers.
 */
function groupsOf(
  design: Design,
  size: number,
  assumed: AssumedStrength,
  confidence: number,
  simulating: Simulating,
): Groups {
  const sized = { ...design, protocol: withSize(design.protocol, size) };
  const first = medianErrors(sized, assumed, simulating, 0);
  const second = medianErrors(sized, assumed, simulating, 1);
  const chance = first.errors.map((error, k) => {
    const difference = Math.abs(second.errors[k]! - error);
    return Number.isFinite(difference) ? difference : 0;
  });
  chance.sort();
  const critical = chance[Math.min(chance.length - 1, Math.ceil(confidence * chance.length) - 1)]!;
  const isLog = laws[design.protocol.distribution].scale === 'log';
  return {
    drops: first.drops + second.drops,
    specimens: first.specimens + second.specimens,
    powerAt(gain) {
      const better = { ...assumed, median: assumed.median * (1 + gain) };
      const { errors } = medianErrors(sized, better, simulating, 1);
      const moved = isLog ? Math.log1p(gain) : gain * assumed.median;
      let seen = 0;
      for (const [k, error] of errors.entries()) {
        const difference = error + moved - first.errors[k]!;
        if (Number.isFinite(difference) && difference > critical) seen += 1;
      }
      return share(seen, errors.length);
    },
  };
}

/** The least size of each group that sees a gain with the power asked for; null where not even the largest does. */
export function sizeForGain(
  design: Design,
  gain: number,
  assumed: AssumedStrength,
  { power, confidence }: GainQuestion,
  simulating: Simulating,
): GainSeen | null {
  const known = new Map<number, GainSeen>();
  const at = (size: number): GainSeen => {
    const before = known.get(size);
    if (before !== undefined) return before;
    const groups = groupsOf(design, size, assumed, confidence, simulating);
    const { drops, specimens } = groups;
    const found = { size, gain, power: groups.powerAt(gain), drops, specimens };
    known.set(size, found);
    return found;
  };
  const size = leastSize(3, (candidate) => at(candidate).power.value >= power);
  return size === null ? null : at(size);
}

/** Gains are sought from a hundredth to a doubling, and then to a thousandth. */
const LEAST_GAIN = 0.01;
const MOST_GAIN = 1;
const RATIO = 1.4;
const FINE = 1e-3;

/**
 * The smallest gain that two groups of one size see with the power asked for, null where not even a doubling is. It is
 * sought upwards: a series that starts far below a much better construction may not get there within its drops.
 */
export function visibleGain(
  design: Design,
  size: number,
  assumed: AssumedStrength,
  { power, confidence }: GainQuestion,
  simulating: Simulating,
): GainSeen | null {
  const groups = groupsOf(design, size, assumed, confidence, simulating);
  const { drops, specimens } = groups;
  const isSeen = (gain: number) => groups.powerAt(gain).value >= power;
  let low = 0;
  let high = LEAST_GAIN;
  while (!isSeen(high)) {
    if (high >= MOST_GAIN) return null;
    low = high;
    high = Math.min(MOST_GAIN, RATIO * high);
  }
  while (high - low > FINE) {
    const middle = 0.5 * (low + high);
    if (isSeen(middle)) high = middle;
    else low = middle;
  }
  return { size, gain: high, power: groups.powerAt(high), drops, specimens };
}
