import { expect, test } from 'vitest';
import { fittedValues, poolAdjacent } from '../../../src/statistics/isotonic/pool-adjacent.ts';
import sen22 from '../../reference/sen-22/SEN-22-isotonic-and-centred.json' with { type: 'json' };

test('SEN-22: the example of R’s isoreg (found in its help page)', () => {
  const y = sen22.data.isoreg_y;
  const fit = fittedValues(poolAdjacent(y, new Array(y.length).fill(1)));
  expect(fit).toEqual([0.5, 0.5, 3, 3, 3, 3, 3, 3, 3]);
});

test('counts are pooled without rounding: 1/3 and 2/6 tie exactly', () => {
  expect(poolAdjacent([1, 2], [3, 6])).toHaveLength(2);
  expect(poolAdjacent([1, 2], [3, 6], () => true)).toEqual([
    { from: 0, to: 1, value: 1 / 3, total: 3, weight: 9 },
  ]);
});

test('a tie that arises by pooling is joined backwards too', () => {
  // 1/2, then 3/4 and 1/4, whose pool is again 1/2.
  const blocks = poolAdjacent([1, 3, 1], [2, 4, 4], () => true);
  expect(blocks).toEqual([{ from: 0, to: 2, value: 0.5, total: 5, weight: 10 }]);
});
