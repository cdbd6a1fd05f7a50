import { amount, decimalsToTell, plain } from '../../quantity/amount.ts';
import { decimalsFor } from '../../quantity/format.ts';
import type { JudgedCriterion } from '../../result/criterion.ts';
import type { Block } from '../document/blocks.ts';
import { share, stated } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';

/** Criterion by criterion: what is asked, what was found, how sure and how far from the limit, and the verdict. */
export function criteriaTable(
  criteria: readonly JudgedCriterion[],
  most: number,
  language: Language,
): Block[] {
  const { words } = language;
  if (criteria.length === 0) return [];
  const rows = criteria.slice(0, most);
  const rest = criteria.length - rows.length;
  return [
    {
      kind: 'table',
      caption: words.headings.criteria,
      columns: [
        { head: words.criteria.criterion },
        { head: words.criteria.asks },
        { head: words.criteria.found, align: 'right' },
        { head: words.criteria.distance },
        { head: words.criteria.verdict },
      ],
      rows: rows.map((criterion) => [
        { text: criterion.id },
        { text: `${quantityOf(criterion, language)}: ${limitText(criterion, language)}` },
        { text: foundText(criterion, language) },
        { text: distanceText(criterion, language) },
        { text: words.verdict[criterion.verdict], verdict: criterion.verdict },
      ]),
      below: rest > 0 ? words.criteria.more(rest) : undefined,
    },
  ];
}

/** The quantity of a criterion in words. */
export function quantityOf({ limit, measured, ...of }: JudgedCriterion, language: Language): string {
  const { words } = language;
  const name = words.quantity(
    { ...of, unit: limit.unit },
    of.probability === undefined ? '' : share(language, of.probability),
  );
  return measured === undefined ? name : words.criteria.eachTyre(name);
}

export function limitText(
  { limit: { atLeast, atMost, within, unit } }: JudgedCriterion,
  language: Language,
): string {
  const { words } = language;
  if (within !== undefined) {
    return words.between(language.number(plain(within.lower)), stated(language, within.upper, unit));
  }
  if (atLeast !== undefined) return words.criteria.atLeast(stated(language, atLeast, unit));
  return atMost === undefined ? '' : words.criteria.atMost(stated(language, atMost, unit));
}

/** The estimate, or the ends of the single values; never rounded onto the limit that it misses. */
function foundText(criterion: JudgedCriterion, language: Language): string {
  const { estimate, limit, measured } = criterion;
  if (measured !== undefined) {
    const [least, most] = [measured.smallest, measured.largest].map((value) =>
      language.number(plain(Number(value.toPrecision(6)))),
    );
    const unit = limit.unit === '1' ? '' : ` ${limit.unit}`;
    return least === most ? `${least}${unit}` : `${language.words.between(least!, most!)}${unit}`;
  }
  return estimate === null ? '—' : near(estimate, criterion, language);
}

/** The bound that decides, and how far from the limit it stands. */
function distanceText(criterion: JudgedCriterion, language: Language): string {
  const { bounds, limit, verdict, measured, counted } = criterion;
  const words = language.words.criteria;
  if (measured !== undefined) {
    return words.measured({ ...measured, beyond: measured.beyond.length });
  }
  if (!counted) return words.notCounted;
  const at = limit.atLeast ?? limit.atMost;
  if (at === undefined || (bounds.lower === null && bounds.upper === null)) return '';
  const confidence = share(language, criterion.confidence);
  const wantsMore = limit.atLeast !== undefined;
  if (verdict === 'pass' || verdict === 'fail') {
    // A lower bound passes what is to be at least so much, an upper one fails it; the other way for at most.
    const isLower = (verdict === 'pass') === wantsMore;
    const deciding = isLower ? bounds.lower : bounds.upper;
    if (deciding === null) return '';
    const bound = near(deciding, criterion, language);
    const distance = near(Math.abs(deciding - at), criterion, language);
    const said = isLower ? words.atLeastBound(bound) : words.atMostBound(bound);
    return (verdict === 'pass' ? words.spare : words.short)({ bound: said, confidence, distance });
  }
  const end = (value: number | null) => (value === null ? words.open : near(value, criterion, language));
  return words.across({ lower: end(bounds.lower), upper: end(bounds.upper), confidence });
}

/** A value as fine as the bounds are apart, and finer where it would otherwise look like the limit. */
function near(value: number, { estimate, bounds, limit }: JudgedCriterion, language: Language): string {
  const { lower, upper } = bounds;
  const scale =
    lower !== null && upper !== null
      ? (upper - lower) / 2
      : Math.abs((estimate ?? value) - (lower ?? upper ?? estimate ?? value));
  const beside = limit.atLeast ?? limit.atMost ?? value;
  return language.number(
    amount(value, decimalsToTell(value, beside, Math.max(0, decimalsFor(scale) - 1)), limit.unit),
  );
}
