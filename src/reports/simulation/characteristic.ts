import { fixed } from '../../quantity/amount.ts';
import { significant } from '../../quantity/format.ts';
import type { SimulatedPoint } from '../../result/simulation.ts';
import { type Page, paragraph, section } from '../text/page.ts';
import { type Column, table } from '../text/table.ts';
import { chart } from './chart.ts';

/** The chances as a chart, then a line for each true median: chances of the verdicts (the operating characteristic), error, coverage, effort. */
export function characteristic(
  page: Page,
  points: readonly SimulatedPoint[],
  limit: number | null,
): string[] {
  const judged = points.some(({ verdicts }) => verdicts !== null);
  const right = (head: string): Column => ({ head, align: 'right' });
  const columns = [
    right('median'),
    ...(judged ? [right('pass'), right('fail'), right('undecided')] : []),
    right('bias'),
    right('std. dev.'),
    right('holds'),
    right('drops'),
    right('tyres'),
  ];
  const rows = points.map((point) => {
    const first = point.estimates[0]!;
    const two = first.intervals.find(({ sides }) => sides === 2);
    return [
      `${significant(point.median, 4)} J`,
      ...(judged ? ['pass', 'fail', 'inconclusive'].map((word) => chance(point, word)) : []),
      first.bias === null ? 'none' : fixed(first.bias.value, 2),
      first.standardDeviation === null ? 'none' : fixed(first.standardDeviation.value, 2),
      two === undefined ? '' : inPercent(two.coverage.value),
      fixed(point.drops.mean.value, 1),
      fixed(point.specimens.mean.value, 1),
    ];
  });
  const heading = judged ? 'Chance of each verdict over the true median' : 'Over the true median';
  return [
    ...section(page, heading, [...chart(page, points, limit), ...table(page, columns, rows)]),
    ...paragraph(page, legend(points, judged)),
  ];
}

function legend(points: readonly SimulatedPoint[], judged: boolean): string {
  const largest = (of: (point: SimulatedPoint) => number) => Math.max(...points.map(of));
  const ofBias = largest(({ estimates }) => estimates[0]!.bias?.error ?? 0);
  const ofShare = largest(({ verdicts, estimates }) =>
    Math.max(
      0,
      ...Object.values(verdicts?.overall ?? {}).map(({ error }) => error),
      ...estimates[0]!.intervals.map(({ coverage }) => coverage.error),
    ),
  );
  const chances = judged ? 'pass, fail, undecided: share of tests; ' : '';
  return `${chances}bias, std. dev.: of the likelihood's median, in J; holds: share of all tests whose two-sided interval holds the median; drops, tyres: mean. Monte Carlo error at most ${fixed(100 * ofShare, 1)} points of a share, ${significant(ofBias, 1)} J of a bias.`;
}

function chance({ verdicts }: SimulatedPoint, word: string): string {
  const found = Object.entries(verdicts?.overall ?? {}).find(([verdict]) => verdict === word)?.[1];
  return inPercent(found?.value ?? 0);
}

function inPercent(share: number): string {
  return `${fixed(100 * share, 1)} %`;
}
