import { amount, decimalsToTell, plain, written } from '../../quantity/amount.ts';
import { decimalsFor } from '../../quantity/format.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import type { JudgedCriterion, Verdict } from '../../result/criterion.ts';
import { listed, quantityName, verdictWord } from './names.ts';
import { inVerdictColour, named, type Page, paragraph, sentence } from './page.ts';
import { table } from './table.ts';

/** Criteria beyond this many are counted only; the JSON has them all. */
const MOST = 40;

/** What the specification asks, what was found, and how it stands; under it the reason for each. */
export function criteria(page: Page, result: Pick<ImpactResult, 'criteria'>): string[] {
  const shown = result.criteria.slice(0, MOST);
  if (shown.length === 0) return [];
  const rows = shown.map((criterion) => [
    calledOf(criterion),
    `${askedFor(criterion)} ${limitText(criterion)}`,
    foundText(criterion),
    {
      text: verdictWord(criterion.verdict),
      ink: (text: string) => inVerdictColour(page, criterion.verdict, text),
    },
  ]);
  const reasons = shown.flatMap((criterion) => {
    const more = criterion.more === undefined ? '' : ` ${sentence(criterion.more.why)}`;
    const apart = criterion.counted ? '' : ' Not counted.';
    return paragraph(page, `${calledOf(criterion)}: ${sentence(criterion.why)}${more}${apart}`, 2, 4);
  });
  const rest = result.criteria.length - shown.length;
  return [
    ...table(
      page,
      [
        { head: 'criterion', align: 'left', least: 12 },
        { head: 'asks for', align: 'left', least: 24 },
        { head: 'found', align: 'right', least: 10 },
        { head: 'verdict', align: 'left' },
      ],
      rows,
    ),
    '',
    ...reasons,
    ...(rest > 0 ? paragraph(page, `and ${rest} more criteria; --json lists them`) : []),
  ];
}

/** The id, and the sample where several were judged. */
function calledOf({ id, sample }: JudgedCriterion): string {
  return sample === undefined ? named(id) : `${named(id)} (${named(sample)})`;
}

/** The verdict on a line of its own, and what it rests on. */
export function verdictLine(
  page: Page,
  result: Pick<ImpactResult, 'criteria' | 'verdict' | 'conformance'>,
): string[] {
  const { verdict } = result;
  if (verdict === null) {
    const why =
      result.conformance.status === 'invalid'
        ? `Verdict: none. ${sentence(result.conformance.why ?? 'the protocol was broken too far for one')}`
        : 'Verdict: none. No specification was given to judge against.';
    return ['', ...paragraph(page, why, 0)];
  }
  const word = verdictWord(verdict).toUpperCase();
  const line = page.ink.bold(inVerdictColour(page, verdict, `Verdict: ${word}`));
  return ['', line, ...paragraph(page, sentence(restingOn(result.criteria)))];
}

function restingOn(all: readonly JudgedCriterion[]): string {
  const counting = all.filter(({ counted }) => counted);
  if (counting.length === 0) return 'no criterion of the specification could be judged from this run';
  const words: Verdict[] = ['fail', 'invalid', 'inconclusive', 'not-tested', 'external', 'waived', 'pass'];
  const parts = words.flatMap((word) => {
    const ids = counting.filter(({ verdict }) => verdict === word).map(calledOf);
    return ids.length === 0 ? [] : [`${verdictWord(word)}: ${listed(ids, 6)}`];
  });
  const aside = all.length - counting.length;
  return `${parts.join('; ')}${aside > 0 ? ` (${aside} not counted)` : ''}`;
}

function askedFor(criterion: JudgedCriterion): string {
  return (
    quantityName({ ...criterion, unit: criterion.limit.unit }) +
    (criterion.measured === undefined ? '' : ' of each tyre')
  );
}

function limitText({ limit: { atLeast, atMost, within, unit } }: JudgedCriterion): string {
  if (within !== undefined) return `${plain(within.lower)} to ${written(within.upper, unit)}`;
  if (atLeast !== undefined) return `at least ${written(atLeast, unit)}`;
  return atMost === undefined ? '' : `at most ${written(atMost, unit)}`;
}

/** The estimate, or the ends of the single values; never rounded onto the limit that it misses. */
function foundText({ estimate, bounds, limit, measured }: JudgedCriterion): string {
  const { unit } = limit;
  if (measured !== undefined) {
    const ends = [measured.smallest, measured.largest].map((value) => plain(Number(value.toPrecision(6))));
    return `${ends[0] === ends[1] ? ends[0] : `${ends[0]} to ${ends[1]}`}${unit === '1' ? '' : ` ${unit}`}`;
  }
  if (estimate === null) return '—';
  const { lower, upper } = bounds;
  const scale =
    lower !== null && upper !== null
      ? (upper - lower) / 4
      : Math.abs(estimate - (lower ?? upper ?? estimate)) / 2;
  const beside = limit.atLeast ?? limit.atMost ?? estimate;
  return amount(estimate, decimalsToTell(estimate, beside, decimalsFor(scale)), unit);
}
