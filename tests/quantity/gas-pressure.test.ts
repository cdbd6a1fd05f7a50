import { expect, test } from 'vitest';
import { gaugePressureAt } from '../../src/quantity/gas-pressure.ts';
import { convert } from '../../src/quantity/units.ts';
import gas from '../reference/ari-02/ARI-02-gas-pressure.json' with { type: 'json' };
import units from '../reference/ari-03/ARI-03-units.json' with { type: 'json' };
import { expectWhole, titleOf } from '../reference/published.ts';

test(titleOf(gas), () => {
  const found = gas.data.gauge_kPa_20C.flatMap((kPa) => {
    const at = (to: number) => 100 * gaugePressureAt(kPa / 100, 20, to);
    return [
      [`${kPa} kPa gauge at 20 C -> gauge at 40 C`, at(40)],
      [`${kPa} kPa gauge at 20 C -> gauge at 60 C`, at(60)],
      [`${kPa} kPa: kPa per kelvin`, at(21) - kPa],
      [`${kPa} kPa: rise for +10 K`, at(30) - kPa],
    ];
  });
  const psi = (bar: number) => convert(bar, 'bar', 'psi');
  const flat = convert(87, 'psi', 'bar');
  expectWhole(gas, {
    ...Object.fromEntries(found),
    // The mistake that the absolute pressure is there to avoid: the case gives it to show how far off it is.
    '600 kPa, +20 K, wrong (gauge only)': (600 * 20) / 293.15,
    '600 kPa, +20 K, right': 100 * gaugePressureAt(6, 20, 40) - 600,
    '87 psi gauge in kPa': convert(87, 'psi', 'kPa'),
    'psi rise per +10 K at 87 psi': psi(gaugePressureAt(flat, 20, 30)) - 87,
    'bar to psi': psi(1),
  });
});

test('a gas below absolute zero or below no pressure is refused', () => {
  expect(() => gaugePressureAt(2, -300, 20)).toThrow(RangeError);
  expect(() => gaugePressureAt(-1.1, 20, 20)).toThrow(RangeError);
  expect(() => gaugePressureAt(2, 20, Number.NaN)).toThrow(RangeError);
});

test(titleOf(units), () => {
  expectWhole(units, {
    'lbf to N': convert(1, 'lbf', 'N'),
    'inch to mm': convert(1, 'in', 'mm'),
    'mile to km': convert(1, 'mi', 'km'),
    'kgf to N': convert(1, 'kgf', 'N'),
    'psi to kPa': convert(1, 'psi', 'kPa'),
    'ft lbf to J': convert(1, 'ft·lbf', 'J'),
  });
});
