import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/problem/problem.ts';
import { energyScale, impactSpeed, kineticEnergy, massUsed, potentialEnergy } from '../../src/rig/energy.ts';
import { dropOf, quantity, rigOf, upAndDownProtocol } from '../impact/invented.ts';

describe('energies and speeds', () => {
  // TRADE (computed there by hand): 10 kg from 350 mm = 34.3 J; 10.4 kg from 392 mm = 39.98 J;
  // v(350) = 2.620, v(500) = 3.132, v(1000) = 4.429 m/s. UNC-07: 1 kg from 1 m = 9.80665 J; 3.1315571206669692 m/s.
  it('E = m·g·h', () => {
    expect(potentialEnergy(10, 9.80665, 350)).toBeCloseTo(34.323275, 9);
    expect(potentialEnergy(10.4, 9.80665, 392)).toBeCloseTo(39.98, 2);
    expect(potentialEnergy(1, 9.80665, 1000)).toBe(9.80665);
  });

  it('v = √(2·g·h) and E = ½·m·v²', () => {
    expect(impactSpeed(9.80665, 350)).toBeCloseTo(2.62, 3);
    expect(impactSpeed(9.80665, 500)).toBeCloseTo(3.1315571206669692, 12);
    expect(impactSpeed(9.80665, 1000)).toBeCloseTo(4.429, 3);
    // UNC-07: a gate speed of 3.395585738539898 m/s at 8 kg is 46.12001003110218 J.
    expect(kineticEnergy(8, 3.395585738539898)).toBeCloseTo(46.12001003110218, 11);
  });
});

describe('the energy of a series', () => {
  const none = new Set<string>();
  const drop = dropOf({ height: 500 });
  const weighed = dropOf({ height: 500, mass: 8.1 });

  it("takes the log's mass before the rig's before the protocol's (CONTRACT)", () => {
    const rig = rigOf({ mass: quantity(8.02, 'kg') });
    const scale = energyScale(upAndDownProtocol(), rig, [drop, weighed], none);
    expect(scale.of(weighed)).toBeCloseTo((8.1 * 9.80665) / 2, 12);
    expect(scale.of(drop)).toBeCloseTo((8.02 * 9.80665) / 2, 12);
    expect(energyScale(upAndDownProtocol(), null, [drop], none).of(drop)).toBeCloseTo((8 * 9.80665) / 2, 12);
    expect(massUsed(scale, [drop])).toEqual({ mass: 8.02, massFrom: 'rig' });
    expect(massUsed(scale, [weighed])).toEqual({ mass: 8.1, massFrom: 'log' });
    expect(massUsed(scale, [drop, weighed])).toEqual({ mass: null, massFrom: 'log and rig' });
  });

  it('refuses a drop without any mass, at its line', () => {
    const attempt = () =>
      energyScale(upAndDownProtocol({ mass: null }), null, [weighed, { ...drop, line: 7 }], none);
    expect(attempt).toThrow(InputError);
    expect(attempt).toThrow(/^drops\.csv:7: /u);
    expect(energyScale(upAndDownProtocol({ mass: null }), null, [weighed], none).statedMass).toBeNull();
  });

  it('is kinetic as a whole, or not at all', () => {
    const kinetic = upAndDownProtocol({ energy: 'kinetic' });
    const scale = energyScale(kinetic, null, [drop], new Set(['velocity']));
    expect(scale.of(dropOf({ height: 500, velocity: 3 }))).toBe(36);
    expect(scale.of(drop)).toBeNull();
    expect(() => energyScale(kinetic, null, [drop], none)).toThrow(/velocity \[m\/s\]/u);
  });

  it('refuses a compression travel that nobody measured', () => {
    const attempt = () =>
      energyScale(upAndDownProtocol({ energy: 'potential-with-compression' }), null, [drop], none);
    expect(attempt).toThrow(/compression travel/u);
  });
});
