import { describe, expect, it } from 'vitest';
import type { EstimatorName, ImpactProtocol } from '../../../src/documents/kinds.ts';
import { estimateImpact } from '../../../src/impact/estimates/impact-estimates.ts';
import type { Drop } from '../../../src/logs/drop.ts';
import type { Estimate } from '../../../src/result/estimate.ts';
import hammer from '../../reference/sen-02/SEN-02-updown-drop-hammer-2019.json' with { type: 'json' };
import sen09 from '../../reference/sen-09/SEN-09-mean-of-levels-identities.json' with { type: 'json' };
import sen21 from '../../reference/sen-21/SEN-21-spearman-karber.json' with { type: 'json' };
import sen22 from '../../reference/sen-22/SEN-22-isotonic-and-centred.json' with { type: 'json' };
import {
  dropOf,
  logOf,
  quantity,
  replayed,
  risesOf,
  risingProtocol,
  upAndDownProtocol,
} from '../invented.ts';

/** A mass for which a millimetre is a joule, so that published heights are energies. */
const UNIT_MASS = quantity(1000 / 9.80665, 'kg');

function estimatesOf(protocol: ImpactProtocol, drops: readonly Drop[], asked: readonly EstimatorName[] = []) {
  const replay = replayed(protocol, drops);
  return estimateImpact(
    {
      protocol,
      replay: replay.samples[0]!,
      energyOf: (drop) => (protocol.mass!.value * 9.80665 * drop.height) / 1000,
      energyPerHeight: (protocol.mass!.value * 9.80665) / 1000,
      refused: null,
      intervals: 'calibrated',
      asked,
      constructionOf: () => null,
      planned: { pressure: 2, temperature: null },
    },
    [],
  );
}

const by = (estimates: readonly Estimate[], method: string) =>
  estimates.filter((estimate) => estimate.method === method);
const expected = (reference: { expected: { name: string; value: unknown }[] }, start: string) =>
  reference.expected.find(({ name }) => name.startsWith(start))!.value as number[];

describe('estimators asked for in an up-and-down test', () => {
  const { levels, fail } = sen09.data.tyre;
  const drops = levels.map((height, i) =>
    dropOf({ line: i + 2, specimen: `T${i}`, height, outcome: fail[i] === 1 ? 'failed' : 'survived' }),
  );
  const protocol = upAndDownProtocol({ start: 400, mass: UNIT_MASS });

  it('gives the published mean of levels (SEN-09)', () => {
    const [mean] = by(estimatesOf(protocol, drops, ['mean-of-levels']).estimates, 'mean-of-levels');
    expect(mean!.value).toBeCloseTo(expected(sen09, 'BHR')[1]!, 8);
    expect(mean!.interval).toBeNull();
    expect(mean!.why).toContain('no standard error of its own');
  });

  it('says why where the path was not kept, or a law does not fit', () => {
    const skipped = drops.map((drop, i) => (i === 5 ? { ...drop, height: drop.height + 25 } : drop));
    const asked = ['mean-of-levels', 'small-sample', 'bias-corrected-spread', 'tolerance-factor'] as const;
    for (const estimate of estimatesOf(protocol, skipped, asked).estimates.filter(({ method }) =>
      (asked as readonly string[]).includes(method),
    )) {
      expect(estimate.value).toBeNull();
      expect(estimate.why).toMatch(/does not apply: .*line 7/u);
    }
    const weibull = { ...protocol, distribution: 'weibull' as const };
    expect(by(estimatesOf(weibull, drops, ['small-sample']).estimates, 'small-sample')[0]!.why).toContain(
      'not for weibull',
    );
  });

  it('prints the classical limit only with what it really covers', () => {
    const [limit] = by(estimatesOf(protocol, drops, ['tolerance-factor']).estimates, 'tolerance-factor');
    expect(limit).toMatchObject({ quantity: 'failureEnergyQuantile', probability: 0.1 });
    expect(limit!.interval).toMatchObject({ sides: 1, upper: null });
    expect(limit!.why).toContain('held in');
  });

  it('adds the small-sample median by itself where the likelihood has no best value', () => {
    const gap = estimatesOf(protocol, logOf('400o 425x 400o 425x'));
    expect(gap.estimates[0]!.value).toBeNull();
    // Dixon's table (1965), OXOX: k = 0.500 steps above the last level by symmetry: halfway between both levels.
    expect(by(gap.estimates, 'small-sample')[0]!.value).toBeCloseTo(412.5, 6);
    expect(by(estimatesOf(protocol, drops).estimates, 'small-sample')).toEqual([]);
  });
});

describe('failure curves', () => {
  it('gives the published isotonic and centred medians (SEN-22, on the logarithm)', () => {
    const { height, fail } = hammer.data;
    const protocol = upAndDownProtocol({
      start: 25.4,
      step: { kind: 'ratio', ratio: 10 ** 0.05 - 1 },
      heightTolerance: 0.5,
      limits: { min: null, max: null },
      distribution: 'lognormal',
      mass: UNIT_MASS,
    });
    const drops = height.map((h, i) =>
      dropOf({ line: i + 2, specimen: `T${i}`, height: h, outcome: fail[i] === 1 ? 'failed' : 'survived' }),
    );
    const { estimates } = estimatesOf(protocol, drops, ['isotonic', 'centred-isotonic', 'nonparametric']);
    const { ir_median, cir_median } = sen22.data.sets.iso_hamada;
    expect(Math.log10(by(estimates, 'isotonic')[0]!.value!)).toBeCloseTo(ir_median, 8);
    expect(Math.log10(by(estimates, 'centred-isotonic')[0]!.value!)).toBeCloseTo(cir_median, 8);
    // The non-parametric estimate of single looks is the isotonic one: it passes ½ between 35.9 and 40.3 mm.
    expect(by(estimates, 'nonparametric')[0]!.why).toContain('from 35.90 J to 40.30 J');
  });

  it('gives the published Spearman–Kärber mean of a fixed-level test by custom (SEN-21)', () => {
    const { dose, n, r } = sen21.data.sets[0]!;
    const protocol = upAndDownProtocol({
      method: 'fixed-level',
      start: null,
      step: null,
      levels: dose,
      limits: { min: null, max: null },
      distribution: 'lognormal',
      mass: UNIT_MASS,
    });
    const drops = dose.flatMap((height, level) =>
      Array.from({ length: n as number }, (_, i) =>
        dropOf({
          line: 100 * level + i + 2,
          specimen: `T${level}-${i}`,
          height,
          outcome: i < r[level]! ? 'failed' : 'survived',
        }),
      ),
    );
    const [mean] = by(estimatesOf(protocol, drops).estimates, 'spearman-karber');
    const [ld50, gsd, lower, upper] = expected(sen21, 'decade');
    expect(mean!.value).toBeCloseTo(ld50!, 6);
    // Printed with 1.96 for the normal quantile.
    expect(Math.exp(mean!.standardError! / mean!.value!)).toBeCloseTo(gsd!, 6);
    expect(mean!.interval!.lower).toBeCloseTo(lower!, 2);
    expect(mean!.interval!.upper).toBeCloseTo(upper!, 2);
    expect(mean!.why).toBeNull();
  });

  it('leaves rises to the estimator that can read them', () => {
    const { estimates } = estimatesOf(risingProtocol(), risesOf('350o 375x / 350o 375o 400x'), [
      'isotonic',
      'spearman-karber',
    ]);
    for (const method of ['isotonic', 'spearman-karber']) {
      expect(by(estimates, method)[0]).toMatchObject({ value: null });
      expect(by(estimates, method)[0]!.why).toContain('nonparametric');
    }
  });

  it('names the share that a transformed rule aims at', () => {
    const protocol = upAndDownProtocol({ method: 'transformed-up-and-down', survivalsToRaise: 2 });
    const { estimates } = estimatesOf(
      protocol,
      logOf('500o 500o 525x 500o 500x 475o 475o 500o 500o 525x 500x 475x'),
    );
    const aimed = estimates.filter(
      ({ probability }) => probability !== undefined && Math.abs(probability - 0.2929) < 1e-4,
    );
    expect(new Set(aimed.map(({ method }) => method))).toEqual(
      new Set(['censored-likelihood', 'centred-isotonic']),
    );
    expect(aimed[0]!.probability).toBeCloseTo(1 - Math.SQRT1_2, 12);
    expect(by(estimates, 'up-and-down-count')).toEqual([]);
  });
});

describe('goodness of fit', () => {
  it('is given when asked for, with how little the drops tell of the law', () => {
    const protocol = upAndDownProtocol();
    const drops = logOf('500o 525x 500x 475o 500o 525x 500x 475x 450o 475o 500o 525o 550x');
    expect(estimatesOf(protocol, drops).goodness).toBeNull();
    const goodness = estimatesOf(protocol, drops, ['goodness-of-fit']).goodness!;
    expect(goodness.laws.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
    expect(goodness.grouped).toMatchObject({ pDeviance: null, pPearson: null });
    expect(goodness.caveat).toContain('a law is chosen beforehand, not by fit');
  });
});
