import { describe, expect, test } from 'vitest';
import { analyseOneWay, type OneWay } from '../../../src/statistics/analysis-of-variance/one-way.ts';
import sirstv from '../../reference/ano-01/ANO-01-strd-sirstv.json' with { type: 'json' };
import smls01 from '../../reference/ano-02/ANO-02-strd-smls01.json' with { type: 'json' };
import smls02 from '../../reference/ano-03/ANO-03-strd-smls02.json' with { type: 'json' };
import smls03 from '../../reference/ano-04/ANO-04-strd-smls03.json' with { type: 'json' };
import smls06 from '../../reference/ano-07/ANO-07-strd-smls06.json' with { type: 'json' };
import smls07 from '../../reference/ano-08/ANO-08-strd-smls07.json' with { type: 'json' };
import exact from '../../reference/ano-08/rounded-to-doubles.json' with { type: 'json' };
import smls08 from '../../reference/ano-09/ANO-09-strd-smls08.json' with { type: 'json' };
import smls09 from '../../reference/ano-10/ANO-10-strd-smls09.json' with { type: 'json' };
import atomic from '../../reference/ano-11/ANO-11-strd-atmwtag.json' with { type: 'json' };
import { expectedOf, expectWhole, titleOf } from '../../reference/published.ts';

const numbersOf = ({ between, within, test, rSquared, residualStandardDeviation }: OneWay) => ({
  'SS between': between.sumOfSquares,
  'MS between': between.meanSquare,
  F: test!.f,
  'SS within': within.sumOfSquares,
  'MS within': within.meanSquare,
  'R-squared': rSquared,
  'residual SD': residualStandardDeviation,
});

/** SmLs01 to SmLs09: each group a value and then pairs a tenth below and above it, the last digit alone differing. */
function simulated(pairs: number, leading: number): number[][] {
  return Object.values(smls01.data.groups).map((group) => {
    const repeated = [group[0]!, ...Array.from({ length: pairs }, () => group.slice(1, 3)).flat()];
    return repeated.map((value) =>
      Number(
        (BigInt(leading) * 10n + BigInt(Math.round(10 * (value - 1)))).toString().replace(/(\d)$/, '.$1'),
      ),
    );
  });
}

test('the rule of the simulated sets gives the sets that are printed whole', () => {
  expect(simulated(10, 1)).toEqual(Object.values(smls01.data.groups));
  expect(simulated(10, 1e12)).toEqual(Object.values(smls07.data.groups));
});

test.each(
  [
    [sirstv, Object.values(sirstv.data.groups)],
    [smls01, simulated(10, 1)],
    [smls02, simulated(100, 1)],
    [smls03, simulated(1000, 1)],
    [atomic, Object.values(atomic.data.groups)],
  ].map(([reference, groups]) => [titleOf(reference as typeof sirstv), reference, groups] as const),
)('%s', (_, reference, groups) => {
  expectWhole(reference as typeof sirstv, numbersOf(analyseOneWay(groups as number[][])));
});

describe('leading digits that no double holds with nine digits behind them', () => {
  // 1000000.4 is rounded to 1.2e-10, one part in 10⁹ of the tenths that matter; 1000000000000.4 to 1.2e-4, one part in 10³.
  test.each([
    [smls06, 1000, 1e6, 8],
    [smls07, 10, 1e12, 2],
    [smls08, 100, 1e12, 2],
    [smls09, 1000, 1e12, 2],
  ] as const)(
    '%#: as far as the rounded inputs allow, and to nine digits once the constant is taken off in decimals',
    (reference, pairs, leading, digits) => {
      const found = numbersOf(analyseOneWay(simulated(pairs, leading)));
      for (const [name, value] of Object.entries(found))
        expect(Math.abs(value / expectedOf(reference, name) - 1), name).toBeLessThan(10 ** -digits);
      const tenths = simulated(pairs, leading).map((group) =>
        group.map((value) => Number(BigInt(String(value).replace('.', '')) - BigInt(leading) * 10n) / 10),
      );
      expectWhole(reference, numbersOf(analyseOneWay(tenths)));
    },
  );

  // The same doubles in exact rational arithmetic: tests/reference/scripts/anova-of-doubles.py.
  test('the analysis loses nothing beyond the rounding of its inputs', () => {
    const found = numbersOf(analyseOneWay(simulated(10, 1e12))) as Record<string, number>;
    for (const [name, value] of Object.entries(exact.expected))
      expect(Math.abs(found[name]! / value - 1), name).toBeLessThan(1e-12);
  });
});

test('too little to analyse is refused; nothing within groups leaves no test', () => {
  expect(() => analyseOneWay([[1, 2]])).toThrow('two groups');
  expect(() => analyseOneWay([[1], [2]])).toThrow('more values than groups');
  expect(
    analyseOneWay([
      [1, 1],
      [2, 2],
    ]).test,
  ).toBeNull();
});
