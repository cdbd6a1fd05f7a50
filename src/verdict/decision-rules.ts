import type { Criterion, DecisionRule } from '../documents/kinds.ts';
import { fixed, percent, written } from '../quantity/amount.ts';
import { conformanceProbability, guardWidth } from './conformance-probability.ts';
import type { Evidence } from './evidence.ts';
import { type Acceptance, acceptanceOf, accepts, guarded, limitInWords, reaches } from './limit.ts';
import { said } from './words.ts';

/** What a rule decides, and the half sentence that says on what. */
export interface Decision {
  readonly verdict: 'pass' | 'fail' | 'inconclusive';
  readonly why: string;
}

/** The rules by which the estimate of a quantity is judged (CONTRACT: verdicts). */
export const decisionRules: Readonly<Record<DecisionRule, (c: Criterion, e: Evidence) => Decision>> = {
  'lower-bound': byBounds,
  'simple-acceptance': byEstimate,
  'guard-band': byGuardBand,
};

/** Pass where the bounds lie within the limit, fail where they lie wholly beyond it, else undecided. */
function byBounds(criterion: Criterion, evidence: Evidence): Decision {
  const range = acceptanceOf(criterion.limit);
  const { unit } = criterion.limit;
  const { lower, upper } = evidence;
  const level = percent(criterion.confidence);
  const say = (value: number, beside: number) => said(value, beside, evidence, unit);
  const limit = (value: number) => `the limit of ${written(value, unit)}`;

  if (range.lower !== null && upper !== null && !reaches(upper, range.lower)) {
    const bound = `the upper ${level} bound, ${say(upper, range.lower)}, is below ${limit(range.lower)}`;
    return { verdict: 'fail', why: `${bound} (${apart(range.lower - upper, evidence, unit)} short)` };
  }
  if (range.upper !== null && lower !== null && !reaches(range.upper, lower)) {
    const bound = `the lower ${level} bound, ${say(lower, range.upper)}, is above ${limit(range.upper)}`;
    return { verdict: 'fail', why: `${bound} (${apart(lower - range.upper, evidence, unit)} over)` };
  }
  const lowerHolds = range.lower === null || (lower !== null && reaches(lower, range.lower));
  const upperHolds = range.upper === null || (upper !== null && reaches(range.upper, upper));
  if (!lowerHolds || !upperHolds) {
    const nearest = lowerHolds ? range.upper! : range.lower!;
    const ends = [
      lower === null ? `no lower ${level} bound` : `a lower ${level} bound of ${say(lower, nearest)}`,
      upper === null ? 'no upper one' : `an upper one of ${say(upper, nearest)}`,
    ];
    return {
      verdict: 'inconclusive',
      why: `the limit, ${limitInWords(range, unit)}, is not decided by ${ends.join(' and ')}`,
    };
  }
  if (range.lower !== null && range.upper !== null) {
    const ends = `${say(lower!, range.lower)} and ${say(upper!, range.upper)}`;
    return {
      verdict: 'pass',
      why: `both ${level} bounds, ${ends}, lie within ${limitInWords(range, unit)}`,
    };
  }
  const [side, bound, at, place] =
    range.lower === null
      ? (['upper', upper!, range.upper!, 'at or below'] as const)
      : (['lower', lower!, range.lower, 'at or above'] as const);
  const spare = apart(Math.abs(bound - at), evidence, unit);
  return {
    verdict: 'pass',
    why: `the ${side} ${level} bound, ${say(bound, at)}, is ${place} ${limit(at)} (${spare} to spare)`,
  };
}

/** The estimate alone: at the limit the risk of a wrong decision is one half. */
function byEstimate(criterion: Criterion, evidence: Evidence): Decision {
  const range = acceptanceOf(criterion.limit);
  const { unit } = criterion.limit;
  const { estimate } = evidence;
  if (estimate === null) return noEstimate(evidence);
  const met = accepts(range, estimate);
  const at = nearestEnd(range, estimate);
  const how = met ? 'meets' : 'does not meet';
  const risk = 'decided on the estimate alone, with a risk of up to one half near the limit';
  return {
    verdict: met ? 'pass' : 'fail',
    why: `the estimate, ${said(estimate, at, evidence, unit)}, ${how} ${limitInWords(range, unit)} (${risk})`,
  };
}

/** The estimate against the limit moved inwards by the guard band: guarded acceptance of JCGM 106:2012. */
function byGuardBand(criterion: Criterion, evidence: Evidence): Decision {
  const range = acceptanceOf(criterion.limit);
  const { unit } = criterion.limit;
  const { estimate, standardError } = evidence;
  if (estimate === null) return noEstimate(evidence);
  if (criterion.guard === null && standardError === null) {
    return {
      verdict: 'inconclusive',
      why: 'the guard band is a multiple of the uncertainty, and none is stated',
    };
  }
  const width = criterion.guard ?? guardWidth(criterion.confidence, standardError!);
  const moved = guarded(range, width);
  if (moved.lower !== null && moved.upper !== null && moved.lower > moved.upper) {
    const bands = `guard bands of ${written(width, unit)} on both sides`;
    return { verdict: 'inconclusive', why: `${bands} leave nothing of ${limitInWords(range, unit)}` };
  }
  const met = accepts(moved, estimate);
  const at = nearestEnd(moved, estimate);
  const inGuard = !met && accepts(range, estimate) ? ': it lies inside the guard band' : '';
  const chance =
    standardError !== null && standardError > 0
      ? `; chance that the limit is truly met ${fixed(conformanceProbability(range, estimate, standardError), 3)}`
      : '';
  const rig = criterion.guard === null && evidence.includesRig ? ' (uncertainty of the rig included)' : '';
  const limit = `${limitInWords(range, unit)} less a guard band of ${said(width, 0, evidence, unit)}${rig}`;
  const how = met ? 'meets' : 'does not meet';
  return {
    verdict: met ? 'pass' : 'fail',
    why: `the estimate, ${said(estimate, at, evidence, unit)}, ${how} ${limit}${inGuard}${chance}`,
  };
}

function noEstimate(evidence: Evidence): Decision {
  return {
    verdict: 'inconclusive',
    why: `there is no estimate${evidence.why === null ? '' : ` (${evidence.why})`}`,
  };
}

function nearestEnd(range: Acceptance, value: number): number {
  if (range.lower === null) return range.upper ?? value;
  if (range.upper === null) return range.lower;
  return Math.abs(value - range.lower) <= Math.abs(range.upper - value) ? range.lower : range.upper;
}

function apart(distance: number, evidence: Evidence, unit: string): string {
  return said(distance, 0, evidence, unit);
}
