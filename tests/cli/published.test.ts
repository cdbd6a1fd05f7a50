import { describe, expect, it } from 'vitest';
import fits from '../reference/likelihood/fits.json' with { type: 'json' };
import bottles from '../reference/sen-01/SEN-01-updown-bottle-staircase-1969.json' with { type: 'json' };
import hammer from '../reference/sen-02/SEN-02-updown-drop-hammer-2019.json' with { type: 'json' };
import { estimateOf, tirelab } from './command.ts';

/** J for a metre: 1 kg under standard gravity, as both protocols state it. */
const JOULE_PER_METRE = 9.80665;
/** Printed and recomputed intervals are those of large samples; the calibrated ones stand before them. */
const PROFILE = 'profile-likelihood';

interface Expected {
  readonly name: string;
  readonly value: unknown;
}

function expected(of: { readonly expected: readonly Expected[] }, name: string): number {
  return expectedAll(of, name)[0]!;
}

function expectedAll(of: { readonly expected: readonly Expected[] }, name: string): number[] {
  const found = of.expected.find((entry) => entry.name.startsWith(name));
  if (!found) throw new Error(`the case has no ${name}`);
  return [found.value].flat() as number[];
}

async function analysed(folder: string) {
  const files = ['--protocol', `fixtures/${folder}/protocol.yaml`, `fixtures/${folder}/drops.csv`];
  const { status, out } = await tirelab(['analyze', '--json', ...files]);
  expect(status).toBe(0);
  return { result: JSON.parse(out), text: (await tirelab(['analyze', ...files])).out };
}

// J. Soc. Cosmetic Chemists 20 (1969), no. 1, pp. 4–6, Table II: data read in print; values computed twice (R, Python).
describe('the whole command on SEN-01, 34 containers dropped up and down', () => {
  it('counts what the table counts', async () => {
    const { result } = await analysed('bottle-staircase');
    expect(result.sample).toMatchObject({ specimens: 34, drops: 34, validDrops: 34 });
    expect(result.sample.failures).toBe(expected(bottles, 'failures'));
    expect(result.conformance).toMatchObject({ status: 'conforming', deviations: [] });
  });

  it('agrees with the likelihood: median, spread, standard error, profile limits, 10 % point', async () => {
    const { result } = await analysed('bottle-staircase');
    const height = estimateOf(result, 'medianFailureHeight', 'censored-likelihood', undefined, PROFILE);
    expect(height.value).toBeCloseTo(1000 * expected(bottles, 'probit ML mu, linear height'), 7);
    // The case's own error is from the expected information (glm); printed is the observed one, as survreg gives it.
    expect(height.standardError).toBeCloseTo(
      1000 * Math.sqrt(fits.sets.bottles.fits.normal.covariance[0]!),
      6,
    );
    const [lower, upper] = expectedAll(bottles, 'profile-LR 95% for mu');
    expect(height.interval!.lower).toBeCloseTo(1000 * lower!, 2);
    expect(height.interval!.upper).toBeCloseTo(1000 * upper!, 2);
    const spread = estimateOf(result, 'energySpread', 'censored-likelihood');
    expect(spread.value! / JOULE_PER_METRE).toBeCloseTo(expected(bottles, 'probit ML sigma'), 9);
    const tail = estimateOf(result, 'failureEnergyQuantile', 'censored-likelihood', 0.1, PROFILE);
    const [point, low, high] = expectedAll(bottles, 'p=0.10 ML, LR95').map((h) => h * JOULE_PER_METRE);
    expect(tail.value).toBeCloseTo(point!, 6);
    expect(tail.interval!.lower).toBeCloseTo(low!, 3);
    expect(tail.interval!.upper).toBeCloseTo(high!, 3);
  });

  it('agrees with the count formula of Dixon and Mood (1948): m, s and their standard errors', async () => {
    const { result } = await analysed('bottle-staircase');
    const median = estimateOf(result, 'medianFailureEnergy', 'up-and-down-count');
    const spread = estimateOf(result, 'energySpread', 'up-and-down-count');
    expect(median.value! / JOULE_PER_METRE).toBeCloseTo(expected(bottles, 'DM m (m)'), 9);
    expect(spread.value! / JOULE_PER_METRE).toBeCloseTo(expected(bottles, 'DM s=1.62'), 7);
    expect(median.standardError! / JOULE_PER_METRE).toBeCloseTo(expected(bottles, 'se(m)'), 6);
    expect(spread.standardError! / JOULE_PER_METRE).toBeCloseTo(expected(bottles, 'se(s)'), 6);
  });

  it('prints the median height and its limits as far as they mean something', async () => {
    const { text } = await analysed('bottle-staircase');
    expect(text).toMatch(/median failure height\s+1336 mm\s+109 mm\s+1078 to 1657 mm/);
  });
});

// Hamada, Mang, Hoff (2019), doi 10.1080/08982112.2018.1551547, Table 1 and text: data and result read in print.
describe('the whole command on SEN-02, 25 trials on a drop hammer, levels equal on the log scale', () => {
  it('finds the printed median height, 34.0166 cm, and the spread of its logarithm', async () => {
    const { result } = await analysed('drop-hammer');
    const height = estimateOf(result, 'medianFailureHeight', 'censored-likelihood', undefined, PROFILE);
    expect(height.value! / 10).toBeCloseTo(expected(hammer, 'H50'), 6);
    expect(height.value! / 10).toBeCloseTo(34.01661, 3); // as printed, from a rounded logarithm
    const spread = estimateOf(result, 'energySpread', 'censored-likelihood');
    expect(spread.unit).toBe('1');
    expect(spread.value! / Math.LN10).toBeCloseTo(expected(hammer, 'sigma log10'), 8);
  });

  it('agrees on standard error, profile limits and the 10 % point', async () => {
    const { result } = await analysed('drop-hammer');
    const height = estimateOf(result, 'medianFailureHeight', 'censored-likelihood', undefined, PROFILE);
    const log10cm = (mm: number | null) => Math.log10(mm! / 10);
    // Observed information by survreg, 0.02089 on log10 height; the expected one (glm) is 0.02081.
    const observed = Math.sqrt(fits.sets.hammer.fits.lognormal.covariance[0]!);
    expect(height.standardError! / height.value!).toBeCloseTo(observed, 8);
    const [lower, upper] = expectedAll(hammer, 'profile-LR 95% mu');
    expect(log10cm(height.interval!.lower)).toBeCloseTo(lower!, 7);
    expect(log10cm(height.interval!.upper)).toBeCloseTo(upper!, 7);
    const tail = estimateOf(result, 'failureEnergyQuantile', 'censored-likelihood', 0.1, PROFILE);
    const heightOf = (joule: number) => Math.log10((100 * joule) / JOULE_PER_METRE);
    expect(heightOf(tail.value!)).toBeCloseTo(expected(hammer, 'p=0.10: est, delta se'), 7);
  });

  it('agrees with the count formula on the logarithm of height', async () => {
    const { result } = await analysed('drop-hammer');
    const median = estimateOf(result, 'medianFailureEnergy', 'up-and-down-count');
    const spread = estimateOf(result, 'energySpread', 'up-and-down-count');
    const [m, s] = expectedAll(hammer, 'Dixon-Mood (failures');
    expect(Math.log10((100 * median.value!) / JOULE_PER_METRE)).toBeCloseTo(m!, 8);
    expect(spread.value! / Math.LN10).toBeCloseTo(s!, 8);
  });
});
