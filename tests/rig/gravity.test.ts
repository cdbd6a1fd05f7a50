import { describe, expect, it } from 'vitest';
import { localGravity, normalGravity } from '../../src/rig/gravity.ts';
import { quantity, rigOf, upAndDownProtocol } from '../impact/invented.ts';
import reference from '../reference/gravity.json' with { type: 'json' };

/** Values of tests/reference/gravity.json (Moritz, GRS 80; NIMA TR8350.2), by name. */
const value = (name: string) => reference.expected.find((entry) => entry.name === name)!.value;

describe('normal gravity (Somigliana, GRS 80)', () => {
  it.each([0, 45, 90])('at %i° as published', (latitude) => {
    expect(normalGravity(latitude, 0)).toBeCloseTo(value(`GRS80 ${latitude} deg`), 9);
    expect(normalGravity(-latitude, 0)).toBeCloseTo(value(`GRS80 ${latitude} deg`), 9);
  });

  it.each([15, 30, 50, 52, 60, 75])('at %i° within 1.5e-6 m/s² of the other two formulas', (latitude) => {
    expect(Math.abs(normalGravity(latitude, 0) - value(`WGS84 ${latitude} deg`))).toBeLessThan(1.5e-6);
    expect(Math.abs(normalGravity(latitude, 0) - value(`IGF80 ${latitude} deg`))).toBeLessThan(1.5e-6);
  });

  it.each([100, 500, 1000, 2000])(
    'at %i m within 6e-6 m/s² of the second-order free-air term',
    (altitude) => {
      const difference = normalGravity(45, altitude) - value(`WGS84 45 deg h=${altitude} m (2nd order)`);
      expect(Math.abs(difference)).toBeLessThan(6e-6);
    },
  );
});

describe('local gravity', () => {
  const protocol = upAndDownProtocol({ gravity: quantity(9.81, 'm/s2') });
  const site = { latitude: 51, altitude: 300 };

  it("takes the rig's value, its site, the protocol's value, the standard, in this order (CONTRACT)", () => {
    const both = rigOf({ gravity: quantity(9.812, 'm/s2'), site });
    expect(localGravity(both, protocol)).toEqual({ value: 9.812, from: 'rig' });
    expect(localGravity(rigOf({ site }), protocol)).toEqual({
      value: normalGravity(51, 300),
      from: 'rig site',
    });
    expect(localGravity(rigOf(), protocol)).toEqual({ value: 9.81, from: 'protocol' });
    expect(localGravity(null, upAndDownProtocol())).toEqual({
      value: value('standard gravity'),
      from: 'standard',
    });
  });
});
