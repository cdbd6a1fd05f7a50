import { describe, expect, it } from 'vitest';
import { blockTasks, runInline } from '../../src/simulation/blocks.ts';
import { estimatorsFor, WHOLE } from '../../src/simulation/estimators.ts';
import { tyresOf } from '../../src/simulation/strength.ts';
import { summarise } from '../../src/simulation/summary.ts';
import { designWith, simulated, staircase } from './designs.ts';

describe('the estimators of simulate', () => {
  it('are those of analyze for an up-and-down test, each near the median that it is for', async () => {
    const { design, assumed } = staircase({ drops: 40 }, 1, 0);
    const point = await simulated(design, assumed, 1000);
    const medians = point.estimates.filter(({ quantity }) => quantity === 'medianFailureEnergy');
    expect(medians.map(({ method }) => method)).toEqual([
      'censored-likelihood',
      'up-and-down-count',
      'mean-of-levels',
      'small-sample',
      'isotonic',
      'centred-isotonic',
      'spearman-karber',
    ]);
    for (const { bias, exists, standardDeviation } of medians) {
      expect(exists).toBeGreaterThan(0.85);
      // sd(m) is near 1.42 σ/√n for all that have the same levels (SEN-11): 0.22; the isotonic ones scatter somewhat more.
      expect(standardDeviation!.value).toBeGreaterThan(0.18);
      expect(standardDeviation!.value).toBeLessThan(0.4);
      expect(Math.abs(bias!.value)).toBeLessThan(0.05 + 4 * bias!.error);
    }
    const corrected = point.estimates.find(({ method }) => method === 'bias-corrected-spread')!;
    const counted = point.estimates.find(
      ({ method, quantity }) => method === 'up-and-down-count' && quantity === 'energySpread',
    )!;
    // s is low at d = σ, and n/(n − 3) mends most of it (SEN-11: 0.90 at 40 drops; times 40/37, 0.97).
    expect(counted.bias!.value).toBeLessThan(-0.05);
    expect(Math.abs(corrected.bias!.value)).toBeLessThan(Math.abs(counted.bias!.value));
  });

  it('say that order limits hold at least as often as they promise, whatever the law', async () => {
    const design = designWith({
      method: 'fixed-level',
      levels: [997, 999, 1001, 1003],
      perLevel: 12,
      stop: null,
    });
    const assumed = {
      law: 'logistic',
      median: 1000,
      spread: 1,
      between: 0,
      damage: 0,
      anyOffset: false,
    } as const;
    const point = await simulated(design, assumed, 1000);
    for (const method of ['isotonic', 'centred-isotonic']) {
      const [limits] = point.estimates.find((estimate) => estimate.method === method)!.intervals;
      expect(limits!.method).toBe('order-limits');
      expect(limits!.coverage.value).toBeGreaterThan(0.94);
    }
    const karber = point.estimates.find(({ method }) => method === 'spearman-karber')!;
    expect(Math.abs(karber.bias!.value)).toBeLessThan(0.1 + 4 * karber.bias!.error);
  });

  it('fit the specimen effect where it is asked for, and find the median of fresh tyres', async () => {
    const design = designWith({
      start: 1000,
      step: { kind: 'additive', size: 1 },
      stop: { drops: 48 },
      afterFailure: 'new-site',
      sites: { perSpecimen: 6, spacing: null, each: 'new-spot', avoid: [] },
    });
    const assumed = {
      law: 'normal',
      median: 1000,
      spread: 1.5,
      between: 0.5,
      damage: 0,
      anyOffset: false,
    } as const;
    const wanted = { ...WHOLE, withIntervals: false, specimenEffect: true };
    const blocks = await runInline(blockTasks(design, assumed, { tests: 40, seed: 2, wanted }), () => {});
    const tyres = tyresOf(assumed, design.protocol.step, 1, 0);
    const point = summarise(blocks, estimatorsFor(design, assumed, wanted), tyres);
    const median = point.estimates.find(({ method }) => method === 'specimen-effect')!;
    expect(median.exists).toBeGreaterThan(0.8);
    expect(Math.abs(median.bias!.value)).toBeLessThan(4 * median.bias!.error);
    expect(estimatorsFor(design, assumed).some(({ method }) => method === 'specimen-effect')).toBe(false);
  });
});
