import { percent, plain } from '../../quantity/amount.ts';
import { decimalsFor, significant } from '../../quantity/format.ts';
import type {
  ComparedPair,
  ComparisonResult,
  NonInferiority,
  PercentileDifference,
} from '../../result/comparison.ts';

/** The median by the first model: calibrated where the tests can be repeated, else under a common spread. */
export function headlineOf({ differences }: ComparedPair): PercentileDifference {
  return differences.find(({ probability }) => probability === 0.5)!;
}

/** `C-115@1 survives 11 % less than C-114@2; 95 % interval 3 to 20 % less; 30 and 30 tyres`. */
export function headlineSentence(result: ComparisonResult, pair: ComparedPair): string {
  const [a, b] = [result.samples[pair.first]!, result.samples[pair.second]!];
  const { ratio } = headlineOf(pair);
  const tyres =
    a.specimens === b.specimens ? `${a.specimens} tyres each` : `${b.specimens} and ${a.specimens} tyres`;
  if (ratio.value === null) return `${b.label} against ${a.label}: no ratio (${ratio.why}); ${tyres}`;
  const interval = headlineOf(pair).interval === 'calibrated' ? 'calibrated interval' : 'interval';
  const level = `${percent(result.confidence)} ${interval}`;
  const [verb, noun] = result.kind === 'impact' ? ['survives', 'energy'] : ['lasts', 'distance'];
  const change = changeOf(ratio.value);
  const size = change === '0 %' ? `the same ${noun} as` : `${change} ${side(ratio.value)} ${noun} than`;
  return `${b.label} ${verb} ${size} ${a.label}; ${level} ${intervalWords(ratio.lower, ratio.upper)}; ${tyres}`;
}

/** What the numbers can say of the pair beside its ratio. */
export function standingSentence({ toldApart, smallestRatio }: ComparedPair, samples: number): string {
  if (toldApart === null) return 'No test: there is no estimate.';
  const many = samples > 2 ? ', adjusted for the number of pairs,' : '';
  const found = toldApart ? `The two are told apart${many}` : `The two are not told apart${many}`;
  if (smallestRatio === null) return `${found.replace(/,$/, '')}.`;
  const least = significant(100 * (smallestRatio - 1), 2);
  return `${found} by this test; these numbers would have shown a difference of ${least} % four times in five.`;
}

function intervalWords(lower: number | null, upper: number | null): string {
  if (lower === null && upper === null) return 'unbounded';
  if (lower === null) return `no lower end, ${changeOf(upper!)} ${side(upper!)} at most`;
  if (upper === null) return `from ${changeOf(lower)} ${side(lower)}, no upper end`;
  if (lower < 1 && upper <= 1) return `${number(upper)} to ${changeOf(lower)} less`;
  if (lower >= 1) return `${number(lower)} to ${changeOf(upper)} more`;
  return `${changeOf(lower)} less to ${changeOf(upper)} more`;
}

function number(ratio: number): string {
  const share = 100 * Math.abs(ratio - 1);
  return share < 1 ? share.toFixed(1) : String(Math.round(share));
}

function changeOf(ratio: number): string {
  return `${number(ratio).replace(/^0\.0$/, '0')} %`;
}

function side(ratio: number): string {
  return ratio < 1 ? 'less' : 'more';
}

/** `0.89 (0.80 to 0.97)`, or why not. */
export function withInterval(of: {
  value: number | null;
  lower: number | null;
  upper: number | null;
}): string {
  const { value, lower, upper } = of;
  if (value === null) return '';
  const width = lower !== null && upper !== null ? (upper - lower) / 4 : Math.abs(value) / 20;
  const decimals = decimalsFor(width);
  const end = (one: number | null) => (one === null ? 'unbounded' : one.toFixed(decimals));
  return `${value.toFixed(decimals)} (${end(lower)} to ${end(upper)})`;
}

/** `median` or `10 % point`. */
export function shareName(probability: number): string {
  return probability === 0.5 ? 'median' : `${plain(100 * probability)} % point`;
}

/** `median, calibrated`; `10 % point, one spread`. */
export function modelName({ probability, spreads, interval }: PercentileDifference): string {
  const spread = spreads === 'common' ? 'one spread' : 'own spreads';
  const own = interval === 'calibrated' ? interval : 'single hits';
  return `${shareName(probability)}, ${interval === 'profile-likelihood' ? spread : own}`;
}

/** `not inferior by more than 5 %: the ratio is 0.97, at least 0.955` with the one-sided bound that decides. */
export function marginSentence(
  second: string,
  first: string,
  { margin, ratio, lower, upper, verdict }: NonInferiority,
  confidence: number,
): string {
  const number = (value: number | null) => (value === null ? 'unbounded' : value.toFixed(3));
  const found =
    verdict === 'not-inferior'
      ? 'is not inferior to'
      : verdict === 'inferior'
        ? 'is inferior to'
        : 'is not shown to be inferior to, nor not inferior to,';
  const bounds = `one-sided ${percent(confidence)} bounds ${number(lower)} and ${number(upper)}`;
  return `${second} ${found} ${first} by a margin of ${percent(margin)}: ratio ${number(ratio)}, ${bounds}`;
}
