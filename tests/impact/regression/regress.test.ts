import { describe, expect, it } from 'vitest';
import type { Regression } from '../../../src/documents/kinds.ts';
import type { StrengthObservation } from '../../../src/impact/observations.ts';
import { adjustedEstimates } from '../../../src/impact/regression/adjust.ts';
import { regress } from '../../../src/impact/regression/regress.ts';
import type { Drop } from '../../../src/logs/drop.ts';
import cmp13 from '../../reference/cmp-13/CMP-13-lr-probit.json' with { type: 'json' };
import { dropOf, upAndDownProtocol } from '../invented.ts';

const look = (energy: number, failed: boolean, drop: Partial<Drop> = {}): StrengthObservation => {
  const of = [dropOf({ height: energy, outcome: failed ? 'failed' : 'survived', ...drop })];
  const [lower, upper] = failed ? [-Infinity, energy] : [energy, Infinity];
  return { lower, upper, count: 1, specimen: of[0]!.specimen, drops: 1, of, why: null };
};
const regression = (changes: Partial<Regression>): Regression => ({
  covariates: [],
  interactions: [],
  adjust: [],
  ...changes,
});
const protocol = upAndDownProtocol();

/** Invented: strength 500 J and 20 J more a bar, spread 25 J; outcomes set by the places of a fixed list. */
const PRESSED = Array.from({ length: 60 }, (_, i) => {
  const pressure = [1.8, 2, 2.2][i % 3]!;
  const energy = 450 + 25 * (i % 5);
  const strength = 500 + 60 * (pressure - 2) + [-40, -12, 5, 18, 35, -25, 28][i % 7]!;
  return look(energy, strength <= energy, { pressure, specimen: `T${i}` });
});

describe('regression on conditions', () => {
  it('refuses a covariate that is missing, constant or aliased, by its name and with what settles it', () => {
    const refusal = (covariates: Regression['covariates'], observations = PRESSED) =>
      regress(protocol, regression({ covariates }), observations, () => 'A').result.why;
    expect(refusal(['temperature'])).toBe(
      'the log has no temperature for 60 of 60 observations; record it, or leave temperature out',
    );
    expect(refusal(['construction'])).toMatch(
      /^construction has the same value throughout.*test at another value$/u,
    );
    const aliased = PRESSED.map((one) => ({
      ...one,
      of: [{ ...one.of[0]!, temperature: 10 * one.of[0]!.pressure! }],
    }));
    expect(refusal(['pressure', 'temperature'], aliased)).toMatch(
      /temperature goes together with .*pressure.*test them apart/u,
    );
    const split = PRESSED.map((one) => ({
      ...one,
      of: [{ ...one.of[0]!, operator: one.of[0]!.pressure! > 2 ? 'T1' : 'T2' }],
    }));
    expect(refusal(['operator'], split)).toBeNull();
  });

  it.each([
    ['normal', 'probit'],
    ['logistic', 'logit'],
  ] as const)(
    'tests a factor by %s strength as the published comparison of two groups does (CMP-13)',
    (distribution, link) => {
      const { log2_dose, dead_of_20, male } = cmp13.data;
      const observations = log2_dose.flatMap((dose, i) =>
        Array.from({ length: 20 }, (_, k) =>
          look(dose, k < dead_of_20[i]!, { specimen: male[i] === 1 ? 'male' : 'female' }),
        ),
      );
      const { result } = regress(
        { ...protocol, distribution },
        regression({ covariates: ['construction'] }),
        observations,
        (specimen) => specimen,
      );
      const published = (name: string) => cmp13.expected.find((one) => one.name === `${link} ${name}`)!.value;
      expect(result.tests).toHaveLength(1);
      expect(result.tests[0]).toMatchObject({ term: 'construction', degrees: 1, why: null });
      expect(result.tests[0]!.statistic).toBeCloseTo(published('LR equal location'), 6);
      expect(result.tests[0]!.p).toBeCloseTo(published('p equal location'), 8);
      expect(result.effects.map(({ name, per }) => [name, per])).toEqual([['construction female', null]]);
    },
  );

  it('adjusts to the planned pressure when asked, and says at what', () => {
    const asked = regression({ covariates: ['pressure'], adjust: ['pressure'] });
    const regressed = regress(protocol, asked, PRESSED, () => null);
    const observations = { observations: PRESSED, specimens: 60, drops: 60, censored: null, mostDrops: 1 };
    const adjusted = (pressure: number | null) =>
      adjustedEstimates(
        { ...protocol, regression: asked },
        regressed,
        { pressure, temperature: null },
        observations,
      );
    const [low] = adjusted(1.8);
    const [high] = adjusted(2.2);
    // A straight line in pressure: the difference is 0.4 bar times the effect per bar.
    expect(high!.value! - low!.value!).toBeCloseTo(0.4 * regressed.result.effects[0]!.value, 8);
    expect(low).toMatchObject({ method: 'regression', variant: 'adjusted-to-pressure', drops: 60 });
    expect(low!.why).toContain('at pressure 1.800 bar');
    // Its numbers: tests/statistics/regression/profile.test.ts.
    const { lower, upper, method } = low!.interval!;
    expect(method).toBe('profile-likelihood');
    expect(lower!).toBeLessThan(low!.value!);
    expect(upper!).toBeGreaterThan(low!.value!);
    expect(adjusted(null)[0]!.why).toContain('states no pressure');
    expect(
      adjustedEstimates(
        { ...protocol, regression: regression({ covariates: ['pressure'] }) },
        regressed,
        { pressure: 2, temperature: null },
        observations,
      ),
    ).toEqual([]);
  });
});
