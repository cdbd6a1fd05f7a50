import { expect, test } from 'vitest';
import {
  basquinLife,
  damageOfSchedule,
  equivalentDistance,
  equivalentDistanceInterval,
  equivalentLoad,
  exponentOfTwo,
  lifeAtLoad,
} from '../../../src/statistics/damage/inverse-power.ts';
import { minerSum } from '../../../src/statistics/damage/palmgren-miner.ts';
import { lifeAtShare } from '../../../src/statistics/demonstration/known-shape.ts';
import miner from '../../reference/dmg-01/DMG-01-miner-2block.json' with { type: 'json' };
import basquin from '../../reference/dmg-02/DMG-02-basquin-miner.json' with { type: 'json' };
import bearing from '../../reference/dmg-03/DMG-03-bearing-equivalent-load.json' with { type: 'json' };
import loads from '../../reference/dmg-04/DMG-04-load-equivalence.json' with { type: 'json' };
import fluid from '../../reference/lif-17/LIF-17-insulating-fluid.json' with { type: 'json' };
import { expectedOf, expectNumber, expectWhole, titleOf } from '../../reference/published.ts';

test(titleOf(miner), () => {
  const { n, N } = miner.data;
  const sum = minerSum(n.map((amount, i) => ({ amount, life: N[i]! })));
  expectWhole(miner, { 'damage per run': sum, 'runs to failure': 1 / sum });
});

test(titleOf(basquin), () => {
  const { sigma_f, b, S, n } = basquin.data;
  const lives = S.map((s) => basquinLife(s, sigma_f, b));
  const sum = minerSum(n.map((amount, i) => ({ amount, life: lives[i]! })));
  expectWhole(basquin, {
    'N at 250 MPa': lives[0],
    'N at 200 MPa': lives[1],
    'damage D': sum,
    'spectrum repetitions 1/D': 1 / sum,
  });
});

test(titleOf(bearing), () => {
  const { loads_kN, fractions, p, life_rev_at_95, b } = bearing.data;
  const duty = loads_kN.map((load, i) => ({ load, distance: fractions[i]! }));
  const equivalent = equivalentLoad(duty, p);
  // Life at another reliability by the Weibull law.
  const tenth = (life_rev_at_95 * lifeAtShare(1, b, 0.1)) / lifeAtShare(1, b, 0.05);
  // The rating: the load at which the life is a million revolutions.
  const rating = equivalent * (tenth / 1e6) ** (1 / p);
  const whole = duty.map(({ load, distance }) => ({ load, distance: tenth * distance }));
  const sum = damageOfSchedule(whole, { life: 1e6, load: rating }, p);
  expectWhole(bearing, {
    'equivalent load kN': equivalent,
    'L90 (rev)': tenth,
    'required C kN': rating,
    'Miner sum at that C over L90 (must be 1)': sum,
  });
});

test(titleOf(loads), () => {
  const { hours, load_fraction, speed_kmh, exponents } = loads.data;
  const schedule = hours.map((h, i) => ({ distance: h * speed_kmh, load: load_fraction[i]! }));
  const found: Record<string, number> = {
    'total distance km': equivalentDistance(schedule, 1, 0),
    'life ratio when load rises by 20 %, p=3': lifeAtLoad(1, 1, 1.2, 3),
    'exponent from two mean lives 12000 km at 1.0 and 5000 km at 1.3': exponentOfTwo(
      { life: 12000, load: 1 },
      { life: 5000, load: 1.3 },
    ),
  };
  for (const p of exponents) {
    found[`equivalent distance at 100 % load, p=${p}`] = equivalentDistance(schedule, 1, p);
    found[`equivalent constant load fraction, p=${p}`] = equivalentLoad(schedule, p);
  }
  expectWhole(loads, found);
});

test(`${fluid.id}: acceleration by the inverse power law`, () => {
  const exponent = -expectedOf(fluid, 'b1 (power)');
  expectNumber(fluid, 'acceleration factor 38 kV vs 30 kV', 1 / lifeAtLoad(1, 30, 38, exponent));
});

// By hand: 100 km at twice the load, exponent 3 ± 0.1: 800 km, slope 800·ln 2 = 554.5 a unit; at 3 ± 1.96·0.1: 698 and 916 km.
test('the uncertainty of the exponent is carried through', () => {
  const found = equivalentDistanceInterval(
    [{ distance: 100, load: 2 }],
    1,
    { value: 3, standardUncertainty: 0.1, degrees: Infinity },
    0.95,
  );
  expect(found.value).toBe(800);
  expect(found.standardUncertainty).toBeCloseTo(55.45, 2);
  expect(found.lower).toBeCloseTo(100 * 2 ** (3 - 0.195996), 2);
  expect(found.upper).toBeCloseTo(100 * 2 ** (3 + 0.195996), 2);
});

test('loads and lives that are none are refused', () => {
  expect(() => lifeAtLoad(1000, 0, 1, 3)).toThrow('load 0');
  expect(() => exponentOfTwo({ life: 1, load: 1 }, { life: 2, load: 1 })).toThrow('one load');
  expect(() => minerSum([{ amount: 1, life: 0 }])).toThrow('life 0');
});
