import { expect, test } from 'vitest';
import { analyseBalanced } from '../../../src/statistics/analysis-of-variance/balanced.ts';
import reference from '../../reference/cmp-06/CMP-06-tyre-brands-blocked.json' with { type: 'json' };
import { expectWhole, titleOf } from '../../reference/published.ts';

const { rows_position_cols_car: rows, brand } = reference.data;
const values = rows.flat();
const brands = { name: 'brand', levels: brand.flat() };
const cars = { name: 'car', levels: rows.flatMap((row) => row.map((_, car) => String(car))) };
const positions = { name: 'position', levels: rows.flatMap((row, at) => row.map(() => String(at))) };

test(titleOf(reference), () => {
  const latin = analyseBalanced(values, [brands, cars, positions]);
  const blocks = analyseBalanced(values, [brands, cars]);
  const free = analyseBalanced(values, [brands]);
  const sum = (i: number) => latin.factors[i]!.line.sumOfSquares;
  const meanOf = (level: string) => latin.factors[0]!.means.find((one) => one.level === level)!.mean;
  expectWhole(reference, {
    'SS brands': sum(0),
    'SS cars': sum(1),
    'SS positions': sum(2),
    'SS error Latin': latin.error.sumOfSquares,
    'SS total': latin.total.sumOfSquares,
    'SS error RCB': blocks.error.sumOfSquares,
    'F brands Latin (3, 6)': latin.factors[0]!.test!.f,
    'F brands RCB (3, 9)': blocks.factors[0]!.test!.f,
    'p brands RCB': blocks.factors[0]!.test!.p,
    'F brands unblocked (3, 12)': free.factors[0]!.test!.f,
    'mean brand A': meanOf('A'),
    'mean brand B': meanOf('B'),
    'mean brand C': meanOf('C'),
    'mean brand D': meanOf('D'),
  });
  expect([latin.error.degrees, blocks.error.degrees, free.error.degrees]).toEqual([6, 9, 12]);
});

test('a layout that is not balanced is refused by name', () => {
  const loose = { name: 'brand', levels: ['A', 'A', 'A', 'B'] };
  const car = { name: 'car', levels: ['1', '1', '2', '2'] };
  expect(() => analyseBalanced([1, 2, 3, 4], [loose, car])).toThrow(
    'brand A and car 1 do not meet in proportion',
  );
});
