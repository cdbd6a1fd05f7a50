import { expect, test } from 'vitest';
import {
  dropEnergyBudget,
  energyEfficiency,
  gateEnergyBudget,
  gateSpeedBudget,
  impactSpeed,
  type Sourced,
} from '../../../src/statistics/uncertainty/drop-energy.ts';
import { expand } from '../../../src/statistics/uncertainty/effective-degrees.ts';
import { propagateByDrawing } from '../../../src/statistics/uncertainty/monte-carlo.ts';
import { expectWhole, titleOf } from '../../reference/published.ts';
import reference from '../../reference/unc-07/UNC-07-drop-energy.json' with { type: 'json' };

const d = reference.data;
const sourced = (value: number, u: number, degrees = Infinity): Sourced => ({
  value,
  components: [{ name: 'stated', standardUncertainty: u, degrees, scope: 'common' }],
});
const exact = (value: number): Sourced => ({ value, components: [] });
const mass = sourced(d.m_kg, d.u_m);
const gravity = sourced(d.g, d.u_g);

test(titleOf(reference), () => {
  const budget = dropEnergyBudget({
    mass,
    gravity,
    height: sourced(d.h_m, d.u_h, d.dof.h),
    efficiency: sourced(d.eta, d.u_eta, d.dof.eta),
  });
  const flag = sourced(d.gate.flag_m, d.gate.u_flag);
  const time = sourced(d.gate.time_s, d.gate.u_time);
  const speed = gateSpeedBudget({ flag, time });
  const gate = gateEnergyBudget({ mass, flag, time });
  const drawn = propagateByDrawing(
    ([m, g, h, share]) => m! * g! * h! * share!,
    [
      { kind: 'normal', mean: d.m_kg, standardUncertainty: d.u_m },
      { kind: 'normal', mean: d.g, standardUncertainty: d.u_g },
      { kind: 'normal', mean: d.h_m, standardUncertainty: d.u_h },
      { kind: 'normal', mean: d.eta, standardUncertainty: d.u_eta },
    ],
    { trials: 1_000_000, seed: 1, level: 0.95 },
  );
  expectWhole(reference, {
    'E (J)': budget.value,
    'relative u': budget.whole.standardUncertainty / budget.value,
    'u(E) (J)': budget.whole.standardUncertainty,
    veff: budget.whole.degrees,
    t95: expand(budget.whole, 0.95).factor,
    'U95 (J)': expand(budget.whole, 0.95).expandedUncertainty,
    'impact speed sqrt(2 g h), eta=1': impactSpeed(d.g, d.h_m),
    'impact speed with eta': impactSpeed(d.g, d.h_m, d.eta),
    'gate speed': speed.value,
    'relative u of gate speed': speed.whole.standardUncertainty / speed.value,
    'gate energy (J)': gate.value,
    'relative u of gate energy': gate.whole.standardUncertainty / gate.value,
    'effective height E/(m g) from gate': gate.value / (d.m_kg * d.g),
    'efficiency from gate v^2/(2 g h)': energyEfficiency(speed.value, d.g, d.h_m),
    'Monte Carlo u(E) (all Gaussian)': drawn.standardUncertainty,
    'standard drop 9.80665, 1 kg, 1 m: E (J)': dropEnergyBudget({
      mass: exact(1),
      gravity: exact(9.80665),
      height: exact(1),
      efficiency: exact(1),
    }).value,
    'speed after 0.5 m at 9.80665': impactSpeed(9.80665, 0.5),
  });
});

// By hand: 8 kg · 10 m/s² · 0.5 m = 40 J; 1 mm of 0.5 m is 0.08 J, scale and setting alike; 8 g of 8 kg is 0.04 J.
test('what is common to all drops is kept apart from what scatters', () => {
  const budget = dropEnergyBudget({
    mass: sourced(8, 0.008),
    gravity: exact(10),
    height: {
      value: 0.5,
      components: [
        { name: 'scale', standardUncertainty: 0.001, degrees: Infinity, scope: 'common' },
        { name: 'setting', standardUncertainty: 0.001, degrees: 9, scope: 'scatter' },
      ],
    },
    efficiency: exact(1),
  });
  expect(budget.value).toBeCloseTo(40, 12);
  expect(budget.scatter.standardUncertainty).toBeCloseTo(0.08, 12);
  expect(budget.scatter.degrees).toBeCloseTo(9, 12);
  expect(budget.common.standardUncertainty).toBeCloseTo(Math.sqrt(0.08 ** 2 + 0.04 ** 2), 12);
  expect(budget.common.degrees).toBe(Infinity);
  expect(budget.whole.standardUncertainty).toBeCloseTo(Math.sqrt(2 * 0.08 ** 2 + 0.04 ** 2), 12);
});

// By hand: 2 J per 0.1 bar and a gauge good to 0.02 bar are 0.4 J beside 0.04 J of the mass.
test('a condition comes in by its slope', () => {
  const budget = dropEnergyBudget({
    mass: sourced(8, 0.008),
    gravity: exact(10),
    height: exact(0.5),
    efficiency: exact(1),
    effects: [
      {
        name: 'pressure',
        slope: 20,
        components: [{ name: 'gauge', standardUncertainty: 0.02, degrees: Infinity, scope: 'common' }],
      },
    ],
  });
  expect(budget.value).toBeCloseTo(40, 12);
  expect(budget.common.standardUncertainty).toBeCloseTo(Math.hypot(0.4, 0.04), 9);
});
