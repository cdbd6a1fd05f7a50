import { expect, test } from 'vitest';
import { pearson } from '../../../src/statistics/straight-line/correlation.ts';
import { fitLine, fitThroughOrigin } from '../../../src/statistics/straight-line/fit.ts';
import { inversePrediction } from '../../../src/statistics/straight-line/inverse-prediction.ts';
import { fitPolynomial } from '../../../src/statistics/straight-line/polynomial.ts';
import arsenic from '../../reference/cal-01/CAL-01-arsenic-inverse.json' with { type: 'json' };
import cell from '../../reference/cal-02/CAL-02-nist-loadcell.json' with { type: 'json' };
import { expectWhole, titleOf } from '../../reference/published.ts';
import norris from '../../reference/reg-01/REG-01-strd-norris.json' with { type: 'json' };
import origin from '../../reference/reg-03/REG-03-strd-noint1.json' with { type: 'json' };
import tread from '../../reference/reg-04/REG-04-natrella-tyre-tread.json' with { type: 'json' };
import young from '../../reference/reg-05/REG-05-natrella-young.json' with { type: 'json' };

test(titleOf(norris), () => {
  const line = fitLine(norris.data.x, norris.data.y);
  expectWhole(norris, {
    B0: line.intercept,
    B1: line.slope,
    'se B0': line.interceptError,
    'se B1': line.slopeError,
    'residual SD': line.residualDeviation,
    'R-squared': line.rSquared,
    'residual SS': line.residualSum,
    F: line.f,
  });
});

test(titleOf(origin), () => {
  const line = fitThroughOrigin(origin.data.x, origin.data.y);
  expectWhole(origin, {
    B1: line.slope,
    'se B1': line.slopeError,
    'residual SD': line.residualDeviation,
    'R-squared (about 0)': line.rSquared,
  });
});

test(titleOf(tread), () => {
  const { x_weight_method_100miles: x, y_groove_method_100miles: y } = tread.data;
  const line = fitLine(x, y);
  const back = fitLine(y, x);
  expectWhole(tread, {
    intercept: line.intercept,
    slope: line.slope,
    'residual SD': line.residualDeviation,
    Sxx: line.sumXX,
    xbar: line.meanX,
    ybar: line.meanY,
    'se intercept': line.interceptError,
    'se slope': line.slopeError,
    correlation: pearson(x, y),
    'X on Y intercept': back.intercept,
    'X on Y slope': back.slope,
  });
});

test(titleOf(young), () => {
  const line = fitLine(young.data.x, young.data.y);
  const crossing = inversePrediction(line, young.data.y0, 'reading', 0.95);
  expectWhole(young, {
    intercept: line.intercept,
    slope: line.slope,
    'residual SD': line.residualDeviation,
    'x0 at 4500': crossing.value,
    'calibration lower': crossing.lower,
    'calibration upper': crossing.upper,
  });
});

test(titleOf(arsenic), () => {
  const { x_actual, y_measured, y0 } = arsenic.data;
  const line = fitLine(x_actual, y_measured);
  const reading = inversePrediction(line, y0, 'reading', 0.95);
  const mean = inversePrediction(line, y0, 'mean-line', 0.95);
  expectWhole(arsenic, {
    x0: reading.value,
    'calibration lower': reading.lower,
    'calibration upper': reading.upper,
    'mean-response (regulation) lower': mean.lower,
    'mean-response upper': mean.upper,
    'Wald SE individual': reading.standardError,
    'Wald SE mean response': mean.standardError,
    'g = (t s/b)^2/Sxx': reading.g,
    intercept: line.intercept,
    slope: line.slope,
    'residual SD': line.residualDeviation,
  });
});

test(titleOf(cell), () => {
  const { coefficients, standardErrors, residualDeviation } = fitPolynomial(cell.data.x, cell.data.y, 2);
  expectWhole(cell, {
    a: coefficients[0],
    b: coefficients[1],
    c: coefficients[2],
    'se a': standardErrors[0],
    'se b': standardErrors[1],
    'se c': standardErrors[2],
    'residual SD': residualDeviation,
  });
});

test('what gives no line is refused', () => {
  expect(() => fitLine([1, 1, 1], [1, 2, 3])).toThrow('one x');
  expect(() => fitLine([1, 2], [1])).toThrow('2 values of x against 1 of y');
  expect(() => fitPolynomial([1, 1, 1, 2], [1, 2, 3, 4], 2)).toThrow('too few different x');
  expect(() => inversePrediction(fitLine([0, 1], [0, 1]), 3, 'reading', 0.95)).toThrow('three points');
});
