import { expect, test } from 'vitest';
import { dispersedRate } from '../../../src/statistics/rates/dispersed-rate.ts';
import { overDispersion } from '../../../src/statistics/rates/over-dispersion.ts';
import { countLimits, poissonRate } from '../../../src/statistics/rates/poisson-rate.ts';
import { shareLimits } from '../../../src/statistics/rates/proportion.ts';
import { rateRatio, rateScoreTest } from '../../../src/statistics/rates/rate-ratio.ts';
import garwood from '../../reference/cmp-10/CMP-10-garwood.json' with { type: 'json' };
import ratios from '../../reference/cmp-11/CMP-11-poisson-ratio.json' with { type: 'json' };
import { expectWhole, titleOf } from '../../reference/published.ts';
import quasi from '../../reference/rates/quasi-poisson.json' with { type: 'json' };
import shares from '../../reference/zf-03/ZF-03-clopper-pearson.json' with { type: 'json' };

test(titleOf(garwood), () => {
  const found: Record<string, number> = {};
  for (const { name } of garwood.expected) {
    const k = Number(/\d+/.exec(name)![0]);
    const { lower, upper } = countLimits(k, 0.95);
    if (name === `${k} lower`) found[name] = lower;
    else if (name === `${k} upper`) found[name] = upper;
    else found[name] = countLimits(0, 0.95, 1).upper;
  }
  expectWhole(garwood, found);
});

test(titleOf(shares), () => {
  const nist = shareLimits(shares.data.nist.x, shares.data.nist.n, shares.data.nist.conf);
  const found: Record<string, number> = {
    'NIST p_L': nist.lower,
    'NIST p_U': nist.upper,
    '0/22 one-sided 90 % upper = 1 - 0.1^(1/22)': shareLimits(0, 22, 0.9, 1).upper,
  };
  for (const [x, n] of shares.data.table as [number, number][]) {
    const { lower, upper } = shareLimits(x, n, 0.95);
    found[`${x}/${n} lower 95 %`] = lower;
    found[`${x}/${n} upper 95 %`] = upper;
  }
  expectWhole(shares, found);
});

const count = ([events, exposure]: number[]) => ({ events: events!, exposure: exposure! });

test(titleOf(ratios), () => {
  const { nickel, eba, gu, flats_own } = ratios.data;
  const rate = poissonRate(count(nickel), 0.95);
  const [a, b, c] = [eba, gu, flats_own].map((pair) => rateRatio(count(pair[0]!), count(pair[1]!), 0.95));
  const score = rateScoreTest(count(gu[0]!), count(gu[1]!));
  expectWhole(ratios, {
    'nickel rate': rate.rate,
    'nickel lower': rate.lower,
    'nickel upper': rate.upper,
    'eba ratio': a!.ratio,
    'eba lower': a!.lower,
    'eba upper': a!.upper,
    'eba p': a!.p,
    'Gu ratio': b!.ratio,
    'Gu conditional exact one-sided p': b!.pHigher,
    'Gu score z': score.z,
    'Gu score one-sided p': score.pHigher,
    'own: 9 flats in 12500 km vs 3 in 14000 km: ratio': c!.ratio,
    'own lower': c!.lower,
    'own upper': c!.upper,
    'own p': c!.p,
  });
});

test('without events on one side the ratio is unbounded, without any it is refused', () => {
  const found = rateRatio({ events: 4, exposure: 10 }, { events: 0, exposure: 10 }, 0.95);
  expect(found.ratio).toBeNull();
  expect(found.upper).toBeNull();
  // By hand: the upper tail of 4 of 4 at one half is 1/16; of 2 sides as likely, 2/16.
  expect(found.pHigher).toBeCloseTo(1 / 16, 12);
  expect(found.p).toBeCloseTo(2 / 16, 12);
  expect(() => rateRatio({ events: 0, exposure: 1 }, { events: 0, exposure: 1 }, 0.95)).toThrow(
    'neither side',
  );
  expect(() => poissonRate({ events: 1, exposure: 0 }, 0.95)).toThrow('exposure 0');
});

// By hand: 10, 20, 30 in equal exposure: 20 expected, (100 + 0 + 100)/20 = 10 with 2 degrees, p = exp(−5).
test('index of dispersion', () => {
  const found = overDispersion([10, 20, 30].map((events) => ({ events, exposure: 100 })));
  expect(found).toMatchObject({ statistic: 10, degrees: 2, ratio: 5, leastExpected: 20 });
  expect(found.p).toBeCloseTo(Math.exp(-5), 12);
  expect(() => overDispersion([{ events: 3, exposure: 1 }])).toThrow('two groups');
});

// tests/reference/scripts/quasi-poisson.R: glm, quasipoisson, limits by t with 5 degrees.
test('a rate of riders who differ, as R has it', () => {
  const groups = quasi.events.map((events, i) => ({ events, exposure: quasi.exposure[i]! }));
  const found = dispersedRate(groups, 0.95);
  for (const key of ['rate', 'dispersion', 'standardErrorOfLog', 'lower', 'upper'] as const)
    expect(Math.abs(found[key] / quasi[key] - 1), key).toBeLessThan(1e-9);
  const exact = poissonRate({ events: 25, exposure: 7250 }, 0.95);
  expect(found.lower).toBeLessThan(exact.lower);
  expect(found.upper).toBeGreaterThan(exact.upper);
});
