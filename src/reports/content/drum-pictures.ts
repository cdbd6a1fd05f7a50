import type { EnduranceEstimate } from '../../result/endurance.ts';
import type { ReportedDrum } from '../../result/report.ts';
import type { Figure } from '../charts/figure.ts';
import { livesFigure } from '../charts/lives.ts';
import { timelineFigure } from '../charts/timeline.ts';
import { wearFigure } from '../charts/wear.ts';
import { weibullFigure } from '../charts/weibull.ts';
import { share } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';

/** The bars of the lives, with the distance at which a reliability is asked for. */
export function lives({ result }: ReportedDrum, id: string, language: Language, most: number): Figure | null {
  const bars = result.lives.map(({ specimen, outcome, lower, upper, cause }) => ({
    specimen,
    survived: lower ?? 0,
    failed: outcome === 'failed' ? upper : null,
    cause,
  }));
  return livesFigure(
    bars,
    result.criteria.find(({ at }) => at !== undefined)?.at ?? null,
    id,
    language,
    most,
  );
}

/** Probability plot of the lives whose order is known; nothing for a law that is no Weibull. */
export function weibull(
  { result, band, confidence }: ReportedDrum,
  id: string,
  language: Language,
): Figure | null {
  if (result.protocol.distribution !== 'weibull' || result.lives.length < 2) return null;
  const value = (quantity: string) =>
    result.estimates.find((own: EnduranceEstimate) => own.quantity === quantity && own.variant === undefined)
      ?.value ?? null;
  const [shape, characteristicLife] = [value('weibullShape'), value('characteristicLife')];
  return weibullFigure(
    {
      points: result.lives.flatMap(({ medianRank, upper, lower }) =>
        medianRank === null || upper === null
          ? []
          : [{ life: lower === null ? upper : (lower + upper) / 2, share: medianRank }],
      ),
      suspensions: result.lives.flatMap(({ outcome, lower }) =>
        outcome === 'suspended' ? (lower ?? []) : [],
      ),
      fit: shape === null || characteristicLife === null ? null : { shape, characteristicLife },
      band,
      level: share(language, confidence),
    },
    id,
    language,
  );
}

/** Tread depths with the limit and, of one tyre, the interval of the distance at which it is reached. */
export function wear({ result, wear: own }: ReportedDrum, id: string, language: Language): Figure | null {
  const crossings = result.estimates.filter(({ quantity }) => quantity === 'wearLife');
  const only = crossings.length === 1 ? crossings[0]! : null;
  const crossing =
    only === null || only.value === null
      ? null
      : { value: only.value, lower: only.interval?.lower ?? null, upper: only.interval?.upper ?? null };
  return wearFigure({ ...own, crossing }, id, language);
}

/** The channels over their time, with the nights where they are known. */
export function timelines(
  { timelines: all, nights }: ReportedDrum,
  id: string,
  language: Language,
): Figure[] {
  return all.flatMap((own, i) => timelineFigure({ ...own, nights }, `${id}-${i + 1}`, language) ?? []);
}

/** The picture that says most of a drum test on one page. */
export function drumChief(test: ReportedDrum, id: string, language: Language): Figure | null {
  return lives(test, id, language, 10) ?? timelines(test, id, language)[0] ?? wear(test, id, language);
}
