import type { ComparisonResult } from '../../result/comparison.ts';
import type { JudgedCriterion } from '../../result/criterion.ts';
import { type ComparedConstruction, comparisonFigure } from '../charts/comparison.ts';
import { criteriaFigure } from '../charts/criteria.ts';
import { dropsFigure } from '../charts/drops.ts';
import type { Figure } from '../charts/figure.ts';
import { type MassPoint, massEnergyFigure } from '../charts/mass-energy.ts';
import { type CurveLimit, responseFigure } from '../charts/response.ts';
import { tyresFigure } from '../charts/tyres.ts';
import { standingOf } from '../text/levels.ts';
import { named } from '../text/page.ts';
import { rangeText, share, valueText } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';
import { groupLetters } from './comparison.ts';
import { massesOf, type Subject } from './subject.ts';

export function drops({ test, sample }: Subject, id: string, language: Language): Figure | null {
  return dropsFigure({ protocol: test.result.protocol, path: sample.path }, id, language);
}

export function response(subject: Subject, id: string, language: Language): Figure | null {
  const { sample, first } = subject;
  if (sample.curve === null) return null;
  const value = first === null ? null : valueText(language, first, 2);
  return responseFigure(
    {
      curve: sample.curve,
      path: sample.path,
      median: value === null || first === null ? null : { text: value, range: rangeText(language, first, 2) },
      limit: curveLimit(subject, language),
      level: share(language, sample.curve.level),
    },
    id,
    language,
  );
}

export function tyres(
  { sample, first, criteria }: Subject,
  id: string,
  language: Language,
  most: number,
): Figure | null {
  const value = first?.value ?? null;
  const { lower = null, upper = null } = first?.interval ?? {};
  const limit = criteria.find(({ quantity }) => quantity === 'medianFailureEnergy')?.limit.atLeast ?? null;
  const median = value === null ? null : { value, lower, upper };
  return tyresFigure(sample.tyres, { limit, median }, id, language, most);
}

export function criteria(subject: Subject, id: string, language: Language): Figure | null {
  return criteriaFigure(subject.criteria, id, language);
}

/** The picture that says most of one subject on one page. */
export function chief(subject: Subject, id: string, language: Language): Figure | null {
  const isRising = subject.test.result.protocol.method === 'rising-height';
  return (
    (isRising ? tyres(subject, id, language, 14) : response(subject, id, language)) ??
    drops(subject, id, language)
  );
}

/** Mass of each tyre and the energies of its drops that count. */
export function massOfDrops({ sample }: Subject, id: string, language: Language): Figure | null {
  const masses = new Map(
    sample.tyres.flatMap(({ specimen, mass }) => (mass === null ? [] : [[specimen, mass]])),
  );
  const points = sample.path.flatMap((drop): MassPoint[] => {
    const mass = masses.get(drop.specimen);
    if (mass === undefined || drop.energy === null || !drop.used) return [];
    return [{ name: drop.specimen, mass, energy: drop.energy, standing: standingOf(drop) }];
  });
  return massEnergyFigure(points.slice(0, 400), language.words.charts.energy, id, language);
}

/** Subjects against each other by their medians; where they were compared, with the groups that are not told apart. */
export function comparison(
  subjects: readonly Subject[],
  compared: ComparisonResult | null,
  id: string,
  language: Language,
): Figure | null {
  const letters = compared === null ? [] : groupLetters(compared);
  /** Where a subject stands among those compared; -1 where it does not. */
  const placeOf = (name: string | null) =>
    compared === null ? -1 : compared.samples.findIndex(({ label }) => named(label) === name);
  const rows = subjects.map(
    ({ name, first, sample, test }): ComparedConstruction => ({
      name: name ?? test.result.run ?? '—',
      value: first?.value ?? null,
      lower: first?.interval?.lower ?? null,
      upper: first?.interval?.upper ?? null,
      group: letters[placeOf(name)],
      reference: sample.isReference || placeOf(name) === 0,
    }),
  );
  const title = language.words.charts.medianEnergy;
  return comparisonFigure(rows, { title, unit: 'J' }, id, language);
}

/** Median energy of each subject over the median mass of its tyres. */
export function massOfSubjects(subjects: readonly Subject[], id: string, language: Language): Figure | null {
  const points = subjects.flatMap((subject): MassPoint[] => {
    const masses = massesOf(subject);
    const { name, first } = subject;
    if (masses === null || first === null || first.value === null) return [];
    const { lower = null, upper = null } = first.interval ?? {};
    return [{ name: name ?? '—', mass: masses.median, energy: first.value, lower, upper }];
  });
  return massEnergyFigure(points, language.words.charts.medianEnergy, id, language);
}

/** The first limit on the curve, that of the median before any other, with the bound that decides on it. */
function curveLimit({ criteria: own }: Subject, language: Language): CurveLimit | null {
  const isOnCurve = ({ quantity, limit }: JudgedCriterion) =>
    limit.atLeast !== undefined &&
    (quantity === 'medianFailureEnergy' || quantity === 'failureEnergyQuantile');
  const onCurve = own.filter(isOnCurve);
  const found = onCurve.find(({ quantity }) => quantity === 'medianFailureEnergy') ?? onCurve[0];
  if (found === undefined) return null;
  return {
    probability: found.probability ?? 0.5,
    limit: found.limit.atLeast!,
    bound: found.verdict === 'fail' ? found.bounds.upper : found.bounds.lower,
    confidence: share(language, found.confidence),
  };
}
