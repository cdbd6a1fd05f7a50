import { fixed, percent } from '../../quantity/amount.ts';
import { decimalsFor } from '../../quantity/format.ts';
import type { SimulatedEstimate, SimulatedInterval, SimulatedPoint } from '../../result/simulation.ts';
import { methodName } from '../text/names.ts';
import { type Page, paragraph, section } from '../text/page.ts';
import { type Column, table } from '../text/table.ts';
import { percentText, shareText, withError } from './numbers.ts';

/** Effort, errors of the estimates and coverage of the intervals at one true median. */
export function accuracy(page: Page, point: SimulatedPoint): string[] {
  return [
    ...section(page, 'Effort', effort(page, point)),
    ...section(page, 'Errors of the estimates (estimate less truth)', errors(page, point)),
    ...section(page, 'Intervals: share of all tests that hold the truth, %', intervals(page, point)),
    ...section(page, 'Tests by what their likelihood has', existence(page, point)),
  ];
}

function effort(page: Page, { drops, specimens }: SimulatedPoint): string[] {
  const right = (head: string): Column => ({ head, align: 'right' });
  const row = (name: string, { mean, mostly, most }: SimulatedPoint['drops']) => [
    name,
    mean.error === 0 ? `${mean.value}` : withError(mean),
    `${mostly}`,
    `${most}`,
  ];
  return table(
    page,
    [{ head: '', align: 'left' }, right('mean'), right('95 % need at most'), right('most')],
    [row('drops', drops), row('tyres', specimens)],
  );
}

function errors(page: Page, { estimates }: SimulatedPoint): string[] {
  const columns: Column[] = [
    { head: '', align: 'left', least: 20 },
    { head: 'truth', align: 'right' },
    { head: 'bias', align: 'right' },
    { head: 'std. dev.', align: 'right' },
    { head: 'middle 95 %', align: 'right' },
    { head: 'exists', align: 'right' },
  ];
  return table(
    page,
    columns,
    estimates.map((estimate) => [
      nameOf(estimate),
      estimate.truth === null ? '' : truthText(estimate),
      withError(estimate.bias),
      withError(estimate.standardDeviation),
      middleText(estimate),
      percentText(estimate.exists),
    ]),
  );
}

function intervals(page: Page, { estimates }: SimulatedPoint): string[] {
  const columns: Column[] = [
    { head: '', align: 'left', least: 20 },
    { head: 'promised', align: 'left' },
    { head: 'held', align: 'right' },
    { head: 'open', align: 'right' },
    { head: 'none', align: 'right' },
  ];
  const rows = estimates.flatMap((estimate) =>
    estimate.intervals.map((interval) => [
      nameOf(estimate),
      promise(interval),
      shareText(interval.coverage),
      percentText(interval.unbounded),
      percentText(interval.absent),
    ]),
  );
  return rows.length === 0 ? [] : table(page, columns, rows);
}

function existence(page: Page, { existence: shares }: SimulatedPoint): string[] {
  const words = Object.entries(shares)
    .sort(([, a], [, b]) => b - a)
    .map(
      ([kind, share]) =>
        `${kind === 'exists' ? 'a best fit' : kind.replaceAll('-', ' ')} ${percentText(share)}`,
    );
  return paragraph(page, words.join('; '));
}

function promise({ level, sides, method }: SimulatedInterval): string {
  const how = SHORT[method] ?? methodName(method);
  return `${percent(level)} ${sides === 2 ? 'two-sided' : 'lower bound'}, ${how}`;
}

function nameOf({ quantity, probability, method }: SimulatedEstimate): string {
  const short =
    quantity === 'energySpread'
      ? 'spread'
      : probability === undefined
        ? 'median'
        : `${percent(probability)} point`;
  return `${short}, ${SHORT[method] ?? methodName(method)}`;
}

/** The tables have many columns: what everybody knows the method by is enough. */
const SHORT: Readonly<Record<string, string>> = {
  'censored-likelihood': 'likelihood',
  'up-and-down-count': 'count',
  'mean-of-levels': 'mean of levels',
  'mean-of-noted-heights': 'noted heights',
  'small-sample': 'small sample',
  'bias-corrected-spread': 'corrected',
  'tolerance-factor': 'classical limit',
  isotonic: 'isotonic',
  'centred-isotonic': 'centred isotonic',
  'specimen-effect': 'specimen effect',
  'profile-likelihood': 'profile',
};

function truthText({ truth, unit }: SimulatedEstimate): string {
  const text = `${Number(truth!.toPrecision(4))}`;
  return unit === '1' ? text : `${text} ${unit}`;
}

function middleText({ middle }: SimulatedEstimate): string {
  if (middle === null) return 'none';
  const decimals = decimalsFor((middle.upper - middle.lower) / 4);
  return `${fixed(middle.lower, decimals)} to ${middle.upper > 0 ? '+' : ''}${fixed(middle.upper, decimals)}`;
}
