import { problemLine } from '../../problem/problem.ts';
import { percent, plain } from '../../quantity/amount.ts';
import { significant } from '../../quantity/format.ts';
import type { Aliasing, ComparisonResult, WithInterval } from '../../result/comparison.ts';
import { named } from '../text/page.ts';
import { marginSentence, withInterval } from './words.ts';

/** A section of sentences: those of a comparison beside its ratios. */
export interface Sentences {
  readonly heading: string;
  readonly lines: readonly string[];
}

/** What goes together with the construction, margins, references, covariates, masses and single tyres, in words. */
export function sectionsOf(result: ComparisonResult): Sentences[] {
  return [
    { heading: 'Not read', lines: result.unread.flatMap(({ path, problems }) => unread(path, problems)) },
    { heading: 'What may go together with the construction', lines: result.aliasing.map(aliasingLine) },
    { heading: 'Against a margin', lines: margins(result) },
    { heading: 'Ratio to the reference of the same day', lines: references(result) },
    { heading: 'Allowing for covariates', lines: adjusted(result) },
    { heading: 'Log-rank test, no law assumed', lines: logRanks(result) },
    { heading: tradeHeading(result), lines: trade(result) },
    { heading: 'Verdicts that turn without one tyre', lines: verdicts(result) },
  ];
}

function nameOf({ samples }: ComparisonResult, place: number): string {
  return named(samples[place]!.label);
}

function unread(path: string, problems: ComparisonResult['unread'][number]['problems']): string[] {
  return [`${named(path)}: ${problems.map(problemLine).join('; ')}`];
}

const STATES: Readonly<Record<Aliasing['state'], string>> = {
  constant: 'constant',
  crossed: 'mixed',
  partly: 'partly aliased',
  aliased: 'ALIASED',
  unknown: 'unknown',
};

function aliasingLine({ factor, state, why }: Aliasing): string {
  return `${factor}: ${STATES[state]}; ${why}`;
}

function margins(result: ComparisonResult): string[] {
  const ofPairs = result.pairs.flatMap(({ first, second, nonInferiority }) =>
    nonInferiority === null || first !== 0
      ? []
      : marginSentence(nameOf(result, second), nameOf(result, first), nonInferiority, result.confidence),
  );
  const ofDays = result.relative.flatMap(({ sample, reference, nonInferiority }) =>
    nonInferiority === null || (reference === 0 && result.pairs.length > 0)
      ? []
      : marginSentence(nameOf(result, sample), nameOf(result, reference), nonInferiority, result.confidence),
  );
  return [...ofPairs, ...ofDays];
}

function references(result: ComparisonResult): string[] {
  const level = percent(result.confidence);
  const ratio = (of: WithInterval) =>
    of.value === null ? `none: ${of.why}` : `${withInterval(of)}, ${level}`;
  const own = result.relative.map(
    ({ sample, reference, ratio: of }) =>
      `${nameOf(result, sample)} / ${nameOf(result, reference)}: ${ratio(of)}`,
  );
  const across = result.ratiosOfRatios.map(
    ({ first, second, ...of }) =>
      `${nameOf(result, second)} / ${nameOf(result, first)}, each by its reference: ${ratio(of)}`,
  );
  return [...own, ...across];
}

function adjusted({ adjusted: found, samples }: ComparisonResult): string[] {
  if (found === null) return [];
  const names = found.covariates.join(', ');
  if (found.why !== null) return [`${names}: ${found.why}`];
  const unit = found.unit === '1' ? ' of the logarithm' : ` ${found.unit}`;
  const lines = found.differences.map(({ label, value, lower, upper, ratio }) => {
    const size = (one: number) => significant(one, 3);
    const also = ratio === null ? '' : `, ratio ${ratio.toFixed(3)}`;
    return `${named(label)} less ${named(samples[0]!.label)}: ${size(value)} (${size(lower)} to ${size(upper)})${unit}${also}`;
  });
  const test =
    found.test === null
      ? []
      : [
          `all equal, ${names} allowed for: likelihood ratio ${found.test.statistic.toFixed(2)} on ${found.test.degrees}, p = ${significant(found.test.p, 2)}`,
        ];
  return [...lines, ...test];
}

function logRanks(result: ComparisonResult): string[] {
  return result.pairs.flatMap(({ first, second, logRank }) => {
    if (logRank === null) return [];
    const pair = `${nameOf(result, second)} and ${nameOf(result, first)}`;
    return logRank.p === null
      ? `${pair}: no test (${logRank.why})`
      : `${pair}: ${logRank.statistic!.toFixed(2)} on 1, p = ${significant(logRank.p, 2)}`;
  });
}

function tradeHeading({ kind }: ComparisonResult): string {
  return kind === 'impact'
    ? 'Energy against tyre mass, lightest first'
    : 'Life against tyre mass, lightest first';
}

function trade(result: ComparisonResult): string[] {
  return result.tradeOff.map(({ sample, mass, median, dominatedBy, isToldApart }) => {
    const worth = result.kind === 'impact' ? `, ${significant((1000 * median) / mass, 3)} J/kg` : '';
    const by = dominatedBy.map((place) => nameOf(result, place)).join(', ');
    const standing =
      dominatedBy.length === 0
        ? ''
        : `; dominated by ${by}${isToldApart ? '' : ', though their medians are not told apart'}`;
    return `${nameOf(result, sample)}: ${plain(Number(mass.toPrecision(4)))} g, ${significant(median, 3)} ${result.unit}${worth}${standing}`;
  });
}

function verdicts(result: ComparisonResult): string[] {
  return result.verdictInfluence.map(
    ({ sample, specimen, criterion, whole, without }) =>
      `${named(specimen)} (${nameOf(result, sample)}): ${named(criterion)} turns from ${whole} to ${without} by profile bounds`,
  );
}
