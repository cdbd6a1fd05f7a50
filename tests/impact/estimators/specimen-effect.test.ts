import { describe, expect, it } from 'vitest';
import type { ImpactProtocol } from '../../../src/documents/kinds.ts';
import { estimateImpact } from '../../../src/impact/estimates/impact-estimates.ts';
import type { Drop } from '../../../src/logs/drop.ts';
import glmer from '../../reference/specimen-effect/glmer.json' with { type: 'json' };
import {
  dropOf,
  logOf,
  quantity,
  replayed,
  risesOf,
  risingProtocol,
  upAndDownProtocol,
} from '../invented.ts';

const MASS = quantity(1000 / 9.80665, 'kg');

function effectOf(protocol: ImpactProtocol, drops: readonly Drop[]) {
  const perMillimetre = (protocol.mass!.value * 9.80665) / 1000;
  const replay = replayed(protocol, drops);
  const { estimates } = estimateImpact(
    {
      protocol,
      replay: replay.samples[0]!,
      energyOf: (drop) => perMillimetre * drop.height,
      energyPerHeight: perMillimetre,
      refused: null,
      intervals: 'calibrated',
      asked: [],
      constructionOf: () => null,
      planned: { pressure: null, temperature: null },
    },
    [],
  );
  return estimates.filter(({ method }) => method === 'specimen-effect');
}

const RISES =
  '350o 375x / 350o 375o 400o 425x / 350o 375o 400x / 350x / 350o 375o 400o 425o 450x / 350o 375o 400x';

describe('the specimen effect in a result', () => {
  it('stands beside a rising-height test as the median of a single hit on a fresh tyre', () => {
    const [median, ...spreads] = effectOf(risingProtocol(), risesOf(RISES));
    expect(median).toMatchObject({
      quantity: 'medianFailureEnergy',
      variant: 'single-hit-on-a-fresh-tyre',
      distribution: 'normal',
      specimens: 6,
    });
    expect(median!.value).not.toBeNull();
    expect(median!.why).toContain('no damage per hit is assumed');
    expect(spreads.map(({ quantity: name, variant }) => [name, variant])).toEqual([
      ['energySpread', 'single-hit-on-a-fresh-tyre'],
      ['energySpread', 'between-tyres'],
      ['energySpread', 'from-hit-to-hit'],
    ]);
  });

  it('says what can be said where the data cannot tell the spreads apart, and gives no spread then', () => {
    const [median, , between, within] = effectOf(risingProtocol(), risesOf(RISES));
    expect(median!.why).toMatch(
      /cannot tell the spread between specimens from that from hit to hit: the median is/u,
    );
    expect(median!.standardError).toBeNull();
    expect(between!.value).toBeNull();
    expect(within!.value).toBeNull();
  });

  it('takes damage per hit as stated, and does not estimate it from one start and one step', () => {
    const plain = effectOf(risingProtocol(), risesOf(RISES))[0]!;
    const stated = effectOf(risingProtocol({ damagePerHit: 0.02 }), risesOf(RISES))[0]!;
    expect(stated.why).toContain('each hit is taken to cost a tyre 2.0 % of its strength');
    expect(Math.abs(stated.value! - plain.value!)).toBeGreaterThan(0.1);
    const estimated = effectOf(risingProtocol({ damagePerHit: 'estimated' }), risesOf(RISES))[0]!;
    expect(estimated.why).toMatch(/could not be estimated.*a second start or step would settle it/u);
  });

  it('is absent where each tyre was hit once, and refuses laws that it is not made for', () => {
    expect(effectOf(upAndDownProtocol(), logOf('500o 525x 500x 475o'))).toEqual([]);
    const [refused] = effectOf(risingProtocol({ distribution: 'weibull' }), risesOf(RISES));
    expect(refused).toMatchObject({ value: null });
    expect(refused!.why).toContain('not for weibull');
  });

  it('agrees with lme4 where drops are given as a log (glmer, probit, 25 nodes)', () => {
    // One case: the fits themselves are held to all of them in tests/statistics/specimen-effect.
    const cases = glmer.cases.filter(({ damage }) => damage === 0).slice(0, 1);
    expect(cases).toHaveLength(1);
    for (const one of cases) {
      const drops = one.histories.flatMap((history, tyre) =>
        history.map(([level, failed], i) =>
          dropOf({
            line: 100 * tyre + i + 2,
            specimen: `T${tyre}`,
            height: level!,
            outcome: failed === 1 ? 'failed' : 'survived',
          }),
        ),
      );
      const sites = { perSpecimen: 10, spacing: null, each: 'new-spot', avoid: [] } as const;
      const levels = [...new Set(drops.map(({ height }) => height))].sort((a, b) => a - b);
      const protocol = upAndDownProtocol({
        method: 'fixed-level',
        start: null,
        step: null,
        levels,
        limits: { min: null, max: null },
        afterFailure: 'new-site',
        sites,
        mass: MASS,
      });
      const [median, , between, within] = effectOf(protocol, drops);
      expect(median!.value! / one.location).toBeCloseTo(1, 5);
      expect(between!.value! / one.between).toBeCloseTo(1, 4);
      expect(within!.value! / one.within).toBeCloseTo(1, 4);
    }
  }, 120_000);
});
