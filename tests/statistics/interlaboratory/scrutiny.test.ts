import { expect, test } from 'vitest';
import { laboratoryConsistency } from '../../../src/statistics/interlaboratory/consistency.ts';
import { scrutiniseLaboratories } from '../../../src/statistics/interlaboratory/scrutiny.ts';

// By hand: means 1, 2, 3 (h −1, 0, 1), variances 2, 2, 8 (pooled 4).
test("Mandel's h and k", () => {
  const found = laboratoryConsistency([
    [0, 2],
    [1, 3],
    [1, 5],
  ]);
  expect(found.map((one) => one.h)).toEqual([-1, 0, 1]);
  expect(found.map((one) => one.k)).toEqual([Math.sqrt(0.5), Math.sqrt(0.5), Math.sqrt(2)]);
  expect(laboratoryConsistency([[1], [2, 4]])[0]!.k).toBeNull();
});

// By hand: variances 0.5 six times and 32: C = 32/35 = 0.914; 0.727 at 5 % and 0.838 at 1 % for p = 7, n = 2 (ISO 5725-2, table 4,
// from memory).
test('a laboratory with a large scatter is told by its place', () => {
  const laboratories = [10, 11, 12, 13, 14, 15, 16].map((centre, i) =>
    i === 5 ? [centre - 4, centre + 4] : [centre - 0.5, centre + 0.5],
  );
  const { scatter, mean } = scrutiniseLaboratories(laboratories);
  expect(scatter).toMatchObject({ finding: 'outlier', test: { index: 5 } });
  expect(scatter!.test.statistic).toBeCloseTo(32 / 35, 12);
  expect(scatter!.test.critical).toBeCloseTo(0.727, 3);
  expect(scatter!.criticalOnePercent).toBeCloseTo(0.838, 3);
  expect(mean!.finding).toBe('none');
});

// Grubbs two-sided at 8 laboratories: 2.126 at 5 %, 2.274 at 1 % (ISO 5725-2 table 5; OUT-02).
test('a mean far out is a straggler or an outlier', () => {
  const at = (far: number) =>
    scrutiniseLaboratories([1, 2, 3, 4, 5, 6, 7, far].map((centre) => [centre, centre])).mean!;
  expect(at(8).finding).toBe('none');
  expect(at(60)).toMatchObject({ finding: 'outlier', test: { index: 7 } });
  const border = [13, 14, 15, 16, 17, 18, 20].map(at).filter((one) => one.finding === 'straggler');
  for (const { test: grubbs, criticalOnePercent } of border) {
    expect(grubbs.statistic).toBeGreaterThan(2.126);
    expect(grubbs.statistic).toBeLessThanOrEqual(2.2744);
    expect(criticalOnePercent).toBeCloseTo(2.274, 3);
  }
  expect(border.length).toBeGreaterThan(0);
});

test('where nothing can be said, nothing is', () => {
  expect(scrutiniseLaboratories([[1], [2], [3]]).scatter).toBeNull();
  expect(
    scrutiniseLaboratories([
      [1, 2],
      [1, 2],
    ]).mean,
  ).toBeNull();
});
