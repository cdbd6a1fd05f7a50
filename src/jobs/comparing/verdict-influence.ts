import type { VerdictInfluence } from '../../result/comparison.ts';
import type { JudgedCriterion } from '../../result/criterion.ts';
import { analyzeSample } from '../analyze-sample.ts';
import type { ImpactSide } from './impact-sides.ts';

/**
 * Which criteria of a run's own specification turn when the drops on one specimen are left out. Both states are judged by
 * profile bounds, since the test without the specimen is none that could be carried out again.
 *
 * @param place of the side among the samples
 */
export function verdictInfluence(
  { test, scale, replayed, evidence }: ImpactSide,
  place: number,
): VerdictInfluence[] {
  if (test.specification === null || evidence.key.role !== 'candidate') return [];
  const context = { test, replayed, scale, asked: [], intervals: 'profile-likelihood' } as const;
  const judge = (specimen: string | null): readonly JudgedCriterion[] => {
    const drops = evidence.drops.filter(({ drop }) => drop.specimen !== specimen);
    return analyzeSample(context, { ...evidence, drops }).criteria;
  };
  const whole = new Map(judge(null).map(({ id, verdict }) => [id, verdict]));
  const specimens = [
    ...new Set(evidence.drops.filter(({ use }) => use === 'used').map(({ drop }) => drop.specimen)),
  ];
  return specimens.flatMap((specimen) =>
    judge(specimen)
      .filter(({ id, verdict }) => verdict !== whole.get(id))
      .map(({ id, verdict }) => ({
        sample: place,
        specimen,
        criterion: id,
        whole: whole.get(id)!,
        without: verdict,
      })),
  );
}
