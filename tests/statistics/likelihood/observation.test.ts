import { expect, test } from 'vitest';
import { fromScale, gatherObservations, toScale } from '../../../src/statistics/likelihood/observation.ts';

const failed = (x: number, count = 1) => ({ lower: -Infinity, upper: x, count });
const survived = (x: number, count = 1) => ({ lower: x, upper: Infinity, count });

test('equal observations are merged, also where levels differ in the last digits only', () => {
  expect(0.1 + 0.2).not.toBe(0.3);
  const sample = gatherObservations([failed(0.1 + 0.2), survived(0.3, 2), failed(0.3)], 'identity');
  expect([...sample.lower]).toEqual([-Infinity, 0.3]);
  expect([...sample.upper]).toEqual([0.3, Infinity]);
  expect([...sample.count]).toEqual([2, 2]);
  expect(sample.size).toBe(2);
});

test('levels that differ by more than 1e-9 of their size stay apart', () => {
  expect(gatherObservations([failed(500), failed(500.00001)], 'identity').size).toBe(2);
  expect(gatherObservations([failed(500), failed(500 + 1e-8)], 'identity').size).toBe(1);
});

test('ends of an interval that are the same level make an exact value', () => {
  const sample = gatherObservations([{ lower: 0.3, upper: 0.1 + 0.2, count: 1 }], 'identity');
  expect(sample.lower[0]).toBe(sample.upper[0]);
});

test('the order of observations makes no difference', () => {
  const rows = [
    failed(3),
    survived(2),
    { lower: 1, upper: 2, count: 1 },
    survived(1),
    failed(2, 4),
    failed(3),
  ];
  expect(gatherObservations([...rows].reverse(), 'identity')).toEqual(gatherObservations(rows, 'identity'));
});

test('on the log scale ends are logarithms, 0 is open below, and exact values carry the Jacobian', () => {
  const sample = gatherObservations(
    [
      { lower: 0, upper: 300, count: 1 },
      { lower: 300, upper: 325, count: 1 },
      { lower: 400, upper: 400, count: 2 },
    ],
    'log',
  );
  expect([...sample.lower]).toEqual([-Infinity, Math.log(300), Math.log(400)]);
  expect([...sample.upper]).toEqual([Math.log(300), Math.log(325), Math.log(400)]);
  expect(sample.logJacobian).toBeCloseTo(-2 * Math.log(400), 12);
});

test('0 is an ordinary lower end on the identity scale', () => {
  expect(gatherObservations([{ lower: 0, upper: 300, count: 1 }], 'identity').lower[0]).toBe(0);
});

test('an observation that says nothing is left out', () => {
  expect(gatherObservations([{ lower: -Infinity, upper: Infinity, count: 3 }], 'identity').size).toBe(0);
  expect(gatherObservations([survived(0)], 'log').size).toBe(0);
});

test.each([
  [{ lower: Number.NaN, upper: 1, count: 1 }, 'identity'],
  [{ lower: 2, upper: 1, count: 1 }, 'identity'],
  [{ lower: 1, upper: 2, count: 0 }, 'identity'],
  [{ lower: 1, upper: 2, count: Number.NaN }, 'identity'],
  [{ lower: Infinity, upper: Infinity, count: 1 }, 'identity'],
  [{ lower: -Infinity, upper: 0, count: 1 }, 'log'],
] as const)('%o on the %s scale is refused', (observation, scale) => {
  expect(() => gatherObservations([observation], scale)).toThrow(RangeError);
});

test('to the fitted scale and back', () => {
  expect(toScale(-3, 'log')).toBe(-Infinity);
  expect(fromScale(toScale(450, 'log'), 'log')).toBeCloseTo(450, 10);
  expect(fromScale(toScale(-3, 'identity'), 'identity')).toBe(-3);
});
