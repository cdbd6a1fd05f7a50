import { describe, expect, test } from 'vitest';
import { explainUntold } from '../../../src/statistics/specimen-effect/explain.ts';
import {
  fitKnownShare,
  fitSpecimenEffect,
  type SpecimenEffect,
} from '../../../src/statistics/specimen-effect/fit.ts';
import { gatherPatterns, type History } from '../../../src/statistics/specimen-effect/history.ts';
import { specimenQuantileInterval } from '../../../src/statistics/specimen-effect/profile.ts';
import { fitAtShare, type Problem, pose } from '../../../src/statistics/specimen-effect/share.ts';
import glmer from '../../reference/specimen-effect/glmer.json' with { type: 'json' };
import profile from '../../reference/specimen-effect/profile.json' with { type: 'json' };

function read(c: { histories: number[][][] }): History[] {
  return c.histories.map((h) =>
    h.map(([level, failed, earlier]) => ({ level: level!, failed: failed === 1, earlier: earlier! })),
  );
}

/** Outcomes of one specimen by rising levels, such as `300 325 350x`. */
function rising(text: string): History {
  return text
    .split(' ')
    .map((entry, earlier) => ({ level: Number.parseInt(entry, 10), failed: entry.endsWith('x'), earlier }));
}

// tests/reference/scripts/specimen-effect-glmer.R: lme4 1.1.31, probit, nAGQ = 25, two optimisers tightened, which agree with
// one another to 3e-6 to 9e-6.
describe('glmer (R script, computed) to 5 digits', () => {
  test.each(glmer.cases)('$name', (c) => {
    const fit = fitSpecimenEffect(read(c), { scale: 'identity', damage: c.damage }) as SpecimenEffect;
    expect(fit.kind).toBe('spreads-told');
    expect(Math.abs(fit.location / c.location - 1)).toBeLessThan(5e-6);
    expect(Math.abs(fit.between! / c.between - 1)).toBeLessThan(5e-6);
    expect(Math.abs(fit.within! / c.within - 1)).toBeLessThan(5e-6);
    expect(Math.abs(fit.standardError! / c.standardError - 1)).toBeLessThan(1e-4);
  });
  test.each(glmer.held)('$name, the share of the variance between specimens held at $share', (c) => {
    const problem = pose(gatherPatterns(read(c), 'identity', 0), 25) as Problem;
    const fit = fitAtShare(problem, c.share)!;
    expect(Math.abs(fit.location / c.location - 1)).toBeLessThan(5e-6);
    expect(Math.abs(fit.totalSpread / c.totalSpread - 1)).toBeLessThan(5e-6);
  });
});

// tests/reference/scripts/specimen-effect-profile.R: integrals by R's integrate, spreads by optim at each level.
test.each(profile.cases)('profile interval of the $probability point (R script, computed): $name', (c) => {
  const histories = read(glmer.cases.find((g) => g.name === c.name)!);
  const fit = fitSpecimenEffect(histories, { scale: 'identity' }) as SpecimenEffect;
  expect(Math.abs(fit.logLikelihood - c.logLikelihood)).toBeLessThan(1e-5);
  const interval = specimenQuantileInterval(histories, { scale: 'identity' }, c.probability);
  expect(interval).toMatchObject({ lower: expect.closeTo(c.lower, 1), upper: expect.closeTo(c.upper, 1) });
});

describe('what single series tell', () => {
  const series = read(glmer.held[0]!);
  const fit = fitSpecimenEffect(series, { scale: 'identity' }) as SpecimenEffect;
  test('one rising-height series a specimen does not tell the spreads apart, and says what the median would be', () => {
    expect(fit).toMatchObject({ kind: 'spreads-untold', between: null, within: null, standardError: null });
    expect(fit.shareInterval).toEqual({ lower: 0, upper: 1 });
    const sentence = explainUntold(fit, (level) => `${Math.round(level)} mm`);
    expect(sentence).toMatch(
      /the median is \d+ mm if all of it lies between specimens and \d+ mm if all of it lies from hit to hit/,
    );
    expect(fit.allWithin!.location).toBeGreaterThan(fit.allBetween!.location);
  });
  test('its interval for the median covers both extremes', () => {
    const { lower, upper } = specimenQuantileInterval(series, { scale: 'identity' }) as {
      lower: number;
      upper: number;
    };
    expect(lower).toBeLessThan(fit.allBetween!.location);
    expect(upper).toBeGreaterThan(fit.allWithin!.location);
  });
});

describe('the extremes are the fits that they should be', () => {
  test('hits that agree as if independent: share 0 is the most likely, the spread between specimens is at its boundary', () => {
    // Every specimen has as many failures, spread over the levels more evenly than chance would spread them.
    const even = ['460 480x 500 520x 540x', '460x 480 500x 520 540x', '460 480 500x 520x 540x'].map(rising);
    const fit = fitSpecimenEffect(even, { scale: 'identity' }) as SpecimenEffect;
    expect(fit.share).toBe(0);
    expect(fit.between).toBe(0);
    expect(fit.within).toBeCloseTo(fit.totalSpread, 12);
  });
  test('repeated series that end at the same height on each specimen: nothing from hit to hit', () => {
    const fixed = [450, 475, 500, 500, 525, 550].flatMap((top) => [
      [0, 1, 2].flatMap((site) => {
        const levels = Array.from({ length: (top - 400) / 25 + 1 }, (_, k) => 400 + 25 * k);
        return levels.map((level) => ({ level, failed: level === top, earlier: site }));
      }),
    ]);
    const fit = fitSpecimenEffect(fixed, { scale: 'identity' }) as SpecimenEffect;
    expect(fit).toMatchObject({ kind: 'spreads-told', share: 1, within: 0 });
    expect(fit.location).toBe(fit.allBetween!.location);
  });
});

describe('no estimate, for the reasons of single drops', () => {
  const reason = (histories: History[]) => fitSpecimenEffect(histories, { scale: 'identity' }).kind;
  test('all fail at the same level; two neighbouring levels; nothing fails', () => {
    expect(reason([rising('300 325 350x'), rising('300 325 350x')])).toBe('gap');
    expect(reason([rising('300 325 350x'), rising('300 325x')])).toBe('common-level');
    expect(reason([rising('300 325'), rising('300')])).toBe('no-failure');
    expect(specimenQuantileInterval([rising('300 325 350x')], { scale: 'identity' })).toMatchObject({
      kind: 'gap',
    });
  });
  test('weak specimens that fail early put failures below survivals on average, which alone is no obstacle', () => {
    const mixed = ['300 325x', '300x', '300 325 350 375 400 425 450x', '300 325 350 375 400 425x'].map(
      rising,
    );
    const fit = fitSpecimenEffect(mixed, { scale: 'identity' });
    expect(['spreads-told', 'spreads-untold']).toContain(fit.kind);
  });
});

describe('damage per hit as an input', () => {
  test('levels are taken to those of a fresh specimen (by hand)', () => {
    const [pattern] = gatherPatterns([rising('300 400x')], 'identity', 0.2);
    expect(pattern!.levels).toEqual(Float64Array.of(300, 500));
    const [onLog] = gatherPatterns([rising('300 400x')], 'log', 0.2);
    expect(onLog!.levels[1]).toBeCloseTo(Math.log(500), 14);
  });
  test('like histories are joined; an impossible share is refused', () => {
    expect(
      gatherPatterns([rising('300 350x'), rising('300 350x'), rising('300x')], 'identity', 0),
    ).toHaveLength(2);
    expect(() => gatherPatterns([rising('300x')], 'identity', 1)).toThrow('damage 1 is not a share');
  });
});

describe('regressions', () => {
  test('one hit a specimen: a flat profile, the fit of single drops, spreads untold', () => {
    const single = ['300', '325x', '350', '375x', '325', '350x', '375x', '400x'].map(rising);
    const fit = fitSpecimenEffect(single, { scale: 'identity' }) as SpecimenEffect;
    expect(fit.kind).toBe('spreads-untold');
    expect(fit.location).toBeCloseTo(fit.allWithin!.location, 4);
    expect(fit.location).toBeCloseTo(fit.allBetween!.location, 4);
    expect(fit.totalSpread).toBeCloseTo(fit.allWithin!.totalSpread, 4);
  });
  test('small steps and specimens that survive them all: the quadrature at the largest share still settles', () => {
    const flat = [
      ...new Array(6).fill('485 490 495 500 505 510'),
      '485 490 495 500 505x',
      '485 490 495x',
    ].map(rising);
    const problem = pose(gatherPatterns(flat, 'identity', 0), 25) as Problem;
    const shares = [0.8, 0.9, 0.95, 1].map((share) => fitAtShare(problem, share)!.location);
    for (let i = 1; i < shares.length; i++) expect(shares[i]!).toBeLessThan(shares[i - 1]!);
  });
});

test('a known share of the variance is taken as it is', () => {
  const c = glmer.held[0]!;
  const fit = fitKnownShare(read(c), { scale: 'identity' }, c.share);
  expect(Math.abs((fit as { location: number }).location / c.location - 1)).toBeLessThan(5e-6);
  expect(() => fitKnownShare(read(c), { scale: 'identity' }, 0.97)).toThrow(
    'a share is from 0 to 0.95, or 1, found 0.97',
  );
});
