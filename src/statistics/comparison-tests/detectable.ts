import { noncentralStudentLaw } from '../laws/noncentral-student.ts';
import { studentLaw } from '../laws/student.ts';
import { bracketRoot, findRoot } from '../root.ts';

/** What a two-sided test of two means can show. */
export interface TestPlan {
  readonly n1: number;
  readonly n2: number;
  /** Of a single value. */
  readonly standardDeviation: number;
  /** Chance of a false finding, such as 0.05. */
  readonly significance: number;
}

/** The chance that the test finds a true difference: both tails of the noncentral t. */
export function powerOfTest(
  difference: number,
  { n1, n2, standardDeviation, significance }: TestPlan,
): number {
  const degrees = n1 + n2 - 2;
  if (!(degrees >= 1 && standardDeviation > 0))
    throw new RangeError('a test needs three values and a spread');
  const critical = studentLaw(degrees).quantileOfSf(0.5 * significance);
  const law = noncentralStudentLaw(degrees, difference / (standardDeviation * Math.sqrt(1 / n1 + 1 / n2)));
  return law.sf(critical) + law.cdf(-critical);
}

/** The smallest difference that the test would have found with that chance: what "no difference" can mean at most. */
export function detectableDifference(power: number, plan: TestPlan): number {
  if (!(power > plan.significance && power < 1)) throw new RangeError(`power ${power} is out of range`);
  const unit = plan.standardDeviation * Math.sqrt(1 / plan.n1 + 1 / plan.n2);
  const excess = (difference: number) => powerOfTest(difference, plan) - power;
  const bracket = bracketRoot(excess, unit, unit, { min: 0 });
  if (bracket === null) throw new RangeError(`no difference reaches power ${power}`);
  return findRoot(excess, ...bracket);
}
